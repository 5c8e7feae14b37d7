import { isFault } from '../../../functions/fault.ts'
import { outside } from '../../../functions/range.ts'
import { formatQuantity } from '../../../functions/units/format.ts'
import { printAddress } from '../../workbook/address.ts'
import { samePlace, type CellPlace } from '../../workbook/cell-place.ts'
import { sheetByName } from '../../workbook/document.ts'
import { argumentValues, type ArgumentValue } from '../argument-values.ts'
import { formulaValues } from '../derivation/formula-values.ts'
import { referredCells } from '../derivation/formula-source.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellsWords, listed } from '../finding-words.ts'
import { merge } from '../merge.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { handedOn, inputsUpstream, sourceOfValue } from '../value-source.ts'

/** Values with which a function of the catalogue is asked outside of the range of its method, or close to the end of it. */
export const methodRanges: FindingKind = {
  kind: 'method-ranges',
  heading: 'Outside a method’s range, or near its edge',
  about:
    'Each number that a function is given is held to the range that the function states. Near is within 2 % of a limit, of a temperature within 2 % of the range: a small change or an error of the input would leave the method there. Limits that are none of a method, such as 0 or the whole of a share, count only when they are broken; limits that a function states in words alone are not looked at.',
  find(survey) {
    const troubles = new Map<string, Trouble>()
    for (const formula of survey.formulas) for (const [key, trouble] of troublesOf(survey, formula)) {
      const known = troubles.get(key)
      if (known === undefined) troubles.set(key, trouble)
      else {
        known.users.push(...trouble.users)
        for (const name of trouble.functions) known.functions.add(name)
      }
    }
    return merge([...troubles.values()].map((trouble) => ({ found: found(survey, trouble), alike: `${trouble.isOutside ? 'outside' : 'near'} ${trouble.bound}` })))
  },
}

/** What is out of range, or near its edge, and all who ask with it. */
interface Trouble {
  /** The input, or the cell that computes the value. */
  readonly source: CellPlace
  readonly isOutside: boolean
  readonly words: string
  /** Which limit. */
  readonly bound: string
  readonly users: CellPlace[]
  readonly functions: Set<string>
}

function* troublesOf(survey: Survey, { formula, sheet: home, row, column }: FormulaCell): Generator<readonly [string, Trouble]> {
  const tree = survey.tree(formula)
  if (tree === undefined) return
  const values = formulaValues({ workbook: survey.workbook, home, at: { row, column }, value: (sheet, ...at) => survey.value(sheet, ...at) })
  for (const argument of argumentValues(tree, values)) {
    const trouble = troubleOf(argument)
    if (trouble === undefined) continue
    const at: CellPlace = { sheet: home.name, row, column }
    const source = sourceOf(survey, argument, at)
    yield [`${source.sheet}!${source.row}:${source.column} ${trouble.bound}`, { ...trouble, source, users: [at], functions: new Set([argument.definition.name]) }]
  }
}

function troubleOf({ label, range, dimension, sitePa, value }: ArgumentValue): Pick<Trouble, 'isOutside' | 'words' | 'bound'> | undefined {
  const bound = `${label} ${range.limit ?? ''}`
  if (isFault(value)) return { isOutside: true, words: value.message, bound }
  const fault = outside(value.si, value.unit, label, range, sitePa)
  if (fault !== undefined) return { isOutside: true, words: fault.message, bound }
  const edge = edgeNear(value.si, range, dimension)
  if (edge === undefined) return undefined
  const show = (si: number): string => formatQuantity(si, value.unit, sitePa)
  return { isOutside: false, words: `${label} is ${show(value.si)}, close to ${show(edge)}, the ${edge === lowest(range) ? 'least' : 'most'} that is accepted${range.limit === undefined ? '' : ` (${range.limit})`}`, bound: `${bound} ${edge}` }
}

const NEAR = 0.02

const lowest = ({ min, above }: ArgumentValue['range']): number | undefined => min ?? above
const highest = ({ max, below }: ArgumentValue['range']): number | undefined => max ?? below

/** The limit in SI that a value within the range comes close to. */
function edgeNear(si: number, range: ArgumentValue['range'], dimension: ArgumentValue['dimension']): number | undefined {
  const [low, high] = [lowest(range), highest(range)]
  return [low, high].find((bound) => {
    if (bound === undefined || bound === 0 || (dimension === 'share' && (Math.abs(bound) === 1 || bound === 2))) return false
    // Kelvins from absolute zero say nothing of how near a temperature is.
    const reach = dimension === 'temperature' && low !== undefined && high !== undefined ? high - low : Math.abs(bound)
    return Math.abs(si - bound) <= NEAR * reach
  })
}

function sourceOf(survey: Survey, { node, blockRow }: ArgumentValue, at: CellPlace): CellPlace {
  const home = sheetByName(survey.workbook, at.sheet)
  if (home === undefined) return at
  if (blockRow !== undefined) {
    const block = referredCells(node, { workbook: survey.workbook, home })
    return block === undefined ? at : sourceOfValue(survey, { sheet: block.sheet.name, row: block.area.top + blockRow, column: block.area.left })
  }
  const handed = handedOn(node, survey.workbook, home)
  return handed === undefined ? at : sourceOfValue(survey, handed)
}

function found(survey: Survey, { source, isOutside, words, bound, users, functions }: Trouble): Found {
  const { sheet, row, column } = source
  const askers = users.filter((one) => !samePlace(one, source))
  const inputs = inputsUpstream(survey, source, MOST_INPUTS)
  const asked = askers.length === 0 ? '' : ` in ${cellsWords(askers, sheet)}`
  const from = inputs.length === 0 ? '' : ` ${printAddress(row, column)} comes from ${cellsWords(inputs, sheet)}.`
  return {
    severity: isOutside ? 'error' : 'remark', sheet, area: { top: row, bottom: row, left: column, right: column },
    reason: `${listed([...functions])}${asked}: ${words}.${from}`,
    key: `${isOutside ? 'outside' : 'near'}: ${bound}`,
    causes: [...inputs, ...askers].slice(0, MOST_CAUSES),
  }
}

const MOST_INPUTS = 5
const MOST_CAUSES = 10
