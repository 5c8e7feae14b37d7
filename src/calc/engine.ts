import { DetailedCellError, HyperFormula } from 'hyperformula'
import { MAX_COLUMNS, MAX_ROWS } from '../workbook/limits.ts'
import { registerCatalogue } from './catalogue-plugin.ts'
import { makeDependentsLinear } from './linear-dependents.ts'
import { registerStandardFunctions } from './standard-functions.ts'
import type { CellValue } from './values.ts'

registerStandardFunctions()
registerCatalogue()

/** An empty engine with the settings under which its results are right (array arithmetic, rounding) and nothing is guessed (dates, currencies). */
export function createEngine(): HyperFormula {
  const engine = HyperFormula.buildEmpty({
    licenseKey: 'gpl-v3',
    useArrayArithmetic: true,
    precisionRounding: 14,
    dateFormats: [],
    timeFormats: [],
    currencySymbol: [],
    maxRows: MAX_ROWS,
    maxColumns: MAX_COLUMNS,
    undoLimit: 0,
  })
  makeDependentsLinear(engine)
  return engine
}

/** What an engine's value is on our side. */
export function cellValue(value: unknown): CellValue {
  if (value instanceof DetailedCellError) return { error: value.value, message: errorWords(value) }
  if (typeof value === 'number') return Number.isFinite(value) ? value : beyondRounding(value)
  return typeof value === 'string' || typeof value === 'boolean' ? value : null
}

/** The engine rounds to 15 digits by a power of ten that overflows for numbers at either end of what a double holds. */
const beyondRounding = (value: number): number => (Number.isNaN(value) ? 0 : Math.sign(value) * Number.MAX_VALUE)

const ERROR_WORDS: Readonly<Record<string, string>> = {
  '#DIV/0!': 'division by zero, or by an empty cell',
  '#VALUE!': 'a value is not of the kind that the formula needs',
  '#NUM!': 'the result is no finite number, or a number is outside what the function accepts',
  '#N/A': 'nothing was found, or a value that is not available was used',
  '#REF!': 'a cell that the formula refers to is not there any more',
  '#CYCLE!': 'the formula depends on its own result',
  '#SPILL!': 'the result is a block of cells, and there is something in its way',
  '#ERROR!': 'the formula cannot be read: look at its brackets, commas and references',
}

/** The engine's own wordings that are more technical than helpful. */
const REWORDED: readonly (readonly [RegExp, (found: string) => string])[] = [
  [/^Function name (.*) not recognized\.$/, (name) => `there is no function ${name}: the guide lists them`],
  [/^Named expression (.*) not recognized\.$/, (name) => `nothing here is called ${name}: a text stands in quotes, a unit too`],
  [/^Parsing error\./, () => ''],
]

function errorWords({ value, message }: DetailedCellError): string {
  for (const [pattern, words] of REWORDED) {
    const found = pattern.exec(message)
    if (found !== null) return words(found[1] ?? '') || (ERROR_WORDS[value] ?? value)
  }
  return message || (ERROR_WORDS[value] ?? value)
}
