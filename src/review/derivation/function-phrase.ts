import { argumentLabel, type FunctionDefinition } from '../../../functions/define.ts'
import { parseQuantity } from '../../../functions/units/quantity.ts'
import { isFault } from '../../../functions/fault.ts'
import { findUnit } from '../../../functions/units/units.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'

/** Longer words, and words for more arguments, give way to the function's name. */
const LONGEST_WORDS = 48
const MOST_ARGUMENTS = 3

/**
 * A function with what it is given, in its own words where they are short: `saturation pressure at 20 °F`,
 * `least inside diameter of a vertical drum for vapour flow 126.2 cfm, velocity 167 ft/min`; else by its name. The unit of the result is left to the result.
 * @param isNames whether cells are written by their names: those stand in brackets, so that the argument's own name can be told from them
 */
export function functionPhrase({ name, gives, arguments: named }: FunctionDefinition, given: readonly (FormulaNode | undefined)[], write: (node: FormulaNode) => string, isNames: boolean): string {
  const written = Object.entries(named).flatMap(([key, argument], at) => {
    const node = given[at]
    return node === undefined || argument.kind === 'unit' ? [] : [{ key, argument, text: write(node) }]
  })
  const list = written.map(({ key, text }) => `${argumentLabel(key)} ${isNames ? `(${text})` : text}`).join(', ')
  const words = gives.replace(/^the /, '').replace(/, or .*$/, '')
  if (words.length > LONGEST_WORDS || written.length > MOST_ARGUMENTS) return `${name}(${list})`
  const [only, ...others] = written.filter(({ key }) => key !== 'site')
  const dimension = only?.argument.dimensions[0]
  if (only !== undefined && others.length === 0 && (dimension === 'temperature' || dimension === 'pressure')) {
    const site = written.find(({ key }) => key === 'site')
    return `${words.replace(/ at an? (?:temperature|pressure)$/, '')} at ${only.text}${site === undefined ? '' : `, site ${isNames ? `(${site.text})` : site.text}`}`
  }
  return list === '' ? words : `${words} for ${list}`
}

/** Whether a quantity, as it is written, and a unit count from different zeros: the one from the atmosphere, the other from nothing. */
export function conversionNeedsSite(written: string, wanted: string): boolean {
  const from = parseQuantity(written)
  const to = findUnit(wanted)
  return !isFault(from) && to !== undefined && from.unit.dimension === 'pressure' && from.unit.gauge !== to.gauge
}
