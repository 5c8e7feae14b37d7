import type { Argument } from '../../../functions/arguments.ts'
import type { FunctionDefinition } from '../../../functions/define.ts'
import type { FormulaNode } from '../../workbook/formula/tree.ts'
import type { CallNode } from './function-rules.ts'
import { isDimensionless, isPressure } from './dimension.ts'
import { say } from './fault.ts'
import type { Inference } from './infer.ts'
import { unitQuantity } from './known-unit.ts'
import { ANY_ZERO, countOf, sameFactor, UNKNOWN, type Meaning, type Quantity } from './meaning.ts'
import { misfit } from './misfit.ts'
import { misfitKey, misfitWords } from './misfit-words.ts'
import { unitWords } from './unit-words.ts'

/** What a function of the catalogue gives: in the unit that it is asked for. What it refuses itself is an error there, and none of these faults. */
export function ownCallMeaning(node: CallNode, definition: FunctionDefinition, inference: Inference): Meaning {
  const wanted = Object.entries(definition.arguments)
  let unit: Quantity | undefined
  let converted: Quantity | undefined
  let gauges = 0
  for (const [index, argument] of node.arguments.entries()) {
    const [key, held] = wanted[index] ?? []
    if (argument === undefined) continue
    const meaning = inference.meaning(argument)
    const pair = unitOfPair(meaning)
    if (held?.kind === 'quantity' && meaning.kind === 'range') lookAtPair(argument, meaning, inference)
    if (index === 0) converted = pair
    if (isGauge(pair)) gauges++
    if (key === 'unit') unit = unitOf(argument, meaning)
    if (held?.kind === 'number') lookAtNumber(argument, meaning, held, inference)
  }
  if (isGauge(unit)) gauges++
  if (gauges % 2 === 1 || (gauges > 0 && definition.result !== 'as asked')) lookAtSite(node, definition, inference)
  if (definition.result === 'text') return { kind: 'text', text: undefined, unit: undefined }
  if (!('unit' in definition.arguments)) return definition.result === 'number' ? countOf() : UNKNOWN
  if (unit === undefined) return UNKNOWN
  if (!isPressure(unit.dimension) || unit.zero.gauge !== 0) return unit
  const isAtmosphere = definition.name === 'SITE.PRESSURE'
  return { ...unit, zero: { ...ANY_ZERO, points: pointsOf(definition, converted), atmospheric: isAtmosphere || converted?.zero.atmospheric === true } }
}

const isGauge = (unit: Quantity | undefined): boolean => unit !== undefined && isPressure(unit.dimension) && unit.zero.gauge !== 0

/** Without the pressure of its site a call turns gauge into absolute by that of the standard atmosphere. */
function lookAtSite(node: CallNode, definition: FunctionDefinition, inference: Inference): void {
  const { sitePressure, siteMatters } = inference.surroundings
  const at = Object.keys(definition.arguments).indexOf('site')
  if (sitePressure === undefined || at < 0 || node.arguments[at] !== undefined) return
  const last = node.arguments.at(-1)
  inference.report({
    kind: 'gauge-without-site', severity: siteMatters ? 'warning' : 'remark',
    words: say`${definition.name} converts a gauge pressure here with the standard atmosphere, 101.325 kPa; the workbook has its own site pressure, ${sitePressure}${siteMatters ? ', which is another' : ''}.`,
    key: definition.name, causes: [node],
    ...(last !== undefined && node.arguments.length === at && { mend: { words: say`Give ${sitePressure} as well`, replace: last, by: [last, `,${sitePressure}`] } }),
  })
}

/** Whether a pressure counts from vacuum: converted, it counts from where it did; else by what the function gives. NaN where it cannot be told. */
function pointsOf({ result, arguments: { unit: asked } }: FunctionDefinition, converted: Quantity | undefined): number {
  if (result === 'as asked') return converted?.zero.points ?? NaN
  return asked?.gaugeRefused === 'difference' ? NaN : 1
}

/** A number whose column has one unit, taken together with another one beside it. */
function lookAtPair(argument: FormulaNode, { columns }: Meaning & { readonly kind: 'range' }, inference: Inference): void {
  const [[number, ...numbers] = [], [unit] = [], ...others] = columns
  if (number?.kind !== 'quantity' || unit?.kind !== 'text' || unit.unit === undefined || numbers.length + others.length > 0) return
  const wrong = misfit(number, unit.unit)
  if (wrong === undefined) return
  const [is, taken] = [unitWords(number), unitWords(unit.unit)]
  inference.report({
    kind: 'joined-unit', severity: 'warning',
    words: say`Takes ${argument} as a number in ${taken}, and the number is in ${is}: ${misfitWords(wrong, number, unit.unit, taken)}.`,
    key: misfitKey(wrong, number, taken), causes: [argument],
  })
}

/** Of a number with its unit, as a text or in two cells. */
function unitOfPair(meaning: Meaning): Quantity | undefined {
  if (meaning.kind === 'pair') return meaning.unit
  const [, [second] = []] = meaning.kind === 'range' && meaning.columns.length === 2 ? meaning.columns : []
  return second?.kind === 'text' ? second.unit : undefined
}

/** The unit that an argument names, as a text or by its cell. */
function unitOf(argument: FormulaNode, meaning: Meaning): Quantity | undefined {
  if (argument.kind === 'text') return unitQuantity(argument.text)
  return meaning.kind === 'text' ? meaning.unit : undefined
}

/** Where a plain number is wanted, a cell alone comes without its unit: of 25 % there arrives 25. */
function lookAtNumber(argument: FormulaNode, meaning: Meaning, { words }: Argument<unknown>, inference: Inference): void {
  if (meaning.kind !== 'quantity' || meaning.loose) return
  if (isDimensionless(meaning.dimension) && (sameFactor(meaning.factor, 1) || meaning.constants.length > 0)) return
  const unit = unitWords(meaning)
  inference.report({
    kind: isDimensionless(meaning.dimension) ? 'percent-as-share' : 'unlike-units', severity: 'warning',
    words: say`Gives ${argument}, in ${unit}, for a plain number (${words}): only its number arrives, without the unit.`,
    key: `${unit} for a number`, causes: [argument],
  })
}
