import { cellValue, createEngine } from '../../calc/engine.ts'
import { rowBlocks } from '../../calc/row-blocks.ts'
import { engineFormula, engineName } from '../../calc/translate.ts'
import { isCellError, type CellValue } from '../../calc/values.ts'
import { parseReference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import type { Content } from './argument-parts.ts'
import { COLUMNS_BEFORE, HEADER_ROWS, type CallBook, type CallRow, type FunctionRows } from './call-book.ts'
import { stepValue, type StepValue } from './step-values.ts'
import { TABLE_BLOCKS } from './table-blocks.ts'

type Values = readonly (readonly CellValue[])[]

/**
 * The values of all workings, by sheet, a row a call, without the columns before: what any program computes from the values of the workbook.
 * Calls are in the order of their making, in which the calls in an argument come before the one that has it.
 * @param values of the workbook's own sheets, by name
 * @param report told from time to time how many calls are done
 */
export function workingsValues(book: CallBook, values: ReadonlyMap<string, Values>, names: ReadonlyMap<string, string>, report: (calls: number) => void): ReadonlyMap<string, Values> {
  const found = new Map(book.functions.map((rows) => [rows.sheet, [] as CellValue[][]]))
  const steps = new Map(book.functions.map((rows) => [rows.sheet, stepValues(rows)]))
  const at = cellReader(values, found)
  const expressions = new Expressions(values, names, at)
  try {
    for (const [index, { sheet, row }] of book.inOrder.entries()) {
      found.get(sheet)?.push(rowValues(row, steps.get(sheet) ?? [], (content) => contentValue(content, at, expressions)))
      if (index % REPORT_CALLS === 0) report(index)
    }
    return found
  } finally {
    expressions.end()
  }
}

const REPORT_CALLS = 500

function stepValues({ definition }: FunctionRows): readonly (StepValue | undefined)[] {
  return definition.workings.columns.map(({ formula }) => (formula === undefined ? undefined : stepValue(formula, TABLE_BLOCKS)))
}

function rowValues({ given }: CallRow, steps: readonly (StepValue | undefined)[], valueOf: (content: Content) => CellValue): CellValue[] {
  const row: CellValue[] = []
  let next = 0
  for (const step of steps) row.push(step === undefined ? valueOf(given[next++] ?? '') : step(row))
  return row
}

type CellReader = (reference: string) => CellValue | undefined

/** What a cell of the workbook or of the workings holds, by a reference to it alone with its sheet; undefined where the text is another. */
function cellReader(values: ReadonlyMap<string, Values>, found: ReadonlyMap<string, Values>): CellReader {
  const own = new Map([...values].map(([name, rows]) => [foldCase(name), rows]))
  return (text) => {
    const reference = parseReference(text)
    if (!reference || reference.to !== null || reference.sheet === null) return undefined
    const { row, column } = reference.from
    const workings = found.get(reference.sheet)
    if (row === null || column === null) return undefined
    return (workings ? workings[row - HEADER_ROWS]?.[column - COLUMNS_BEFORE] : own.get(foldCase(reference.sheet))?.[row]?.[column]) ?? null
  }
}

const IF_NUMBER = /^IF\(ISNUMBER\((.+)\),\1,NA\(\)\)$/
const IF_EMPTY = /^IF\((.+)="",(?:""|NA\(\)),\1\)$/
const NOT_AVAILABLE: CellValue = { error: '#N/A', message: '' }

/** Most arguments are a cell, or a cell with a question before it; the engine is asked for the rest. */
function contentValue(content: Content, at: CellReader, expressions: Expressions): CellValue {
  if (typeof content !== 'object') return content === '' ? null : content
  const { formula } = content
  const cell = at(formula)
  if (cell !== undefined) return cell ?? 0
  const number = IF_NUMBER.exec(formula)?.[1]
  const asked = number === undefined ? undefined : at(number)
  if (asked !== undefined) return typeof asked === 'number' || isCellError(asked) ? asked : NOT_AVAILABLE
  const text = IF_EMPTY.exec(formula)?.[1]
  const unit = text === undefined ? undefined : at(text)
  if (unit === undefined) return expressions.value(formula)
  return unit !== null && unit !== '' ? unit : formula.includes('NA()') ? NOT_AVAILABLE : ''
}

/** Expressions of the user's own in arguments, worked out by the engine among the values of the workbook. */
class Expressions {
  readonly #engine = createEngine()
  readonly #at: CellReader
  readonly #own: ReadonlySet<string>
  readonly #names: ReadonlyMap<string, string>
  readonly #known = new Map<string, CellValue>()

  constructor(values: ReadonlyMap<string, Values>, names: ReadonlyMap<string, string>, at: CellReader) {
    this.#at = at
    this.#names = new Map([...names].map(([name, refersTo]) => [foldCase(name), refersTo]))
    this.#own = new Set([...values.keys()].map(foldCase))
    for (const name of values.keys()) this.#engine.addSheet(name)
    this.#engine.batch(() => {
      for (const [name, refersTo] of names) this.#engine.addNamedExpression(name, engineName(name, refersTo))
      for (const [name, rows] of values) {
        for (const { top, end } of rowBlocks(rows, Infinity)) {
          this.#engine.setCellContents({ sheet: this.#engine.getSheetId(name) ?? 0, row: top, col: 0 }, rows.slice(top, end).map((row) => row.map(engineValue)))
        }
      }
    })
  }

  value(expression: string): CellValue {
    const formula = `=${this.#withResults(expression)}`
    const known = this.#known.get(formula)
    if (known !== undefined) return known
    const result = this.#engine.calculateFormula(engineFormula(formula), 0)
    const value = Array.isArray(result) ? cellValue(result[0]?.[0]) : cellValue(result)
    this.#known.set(formula, value)
    return value
  }

  end(): void {
    this.#engine.destroy()
  }

  /** The results of other calls, which the engine has no cells for, as they are; behind a name as well. */
  #withResults(expression: string): string {
    return tokenise(expression).map(({ kind, text }) => {
      const named = kind === 'name' ? this.#names.get(foldCase(text)) : undefined
      if (named !== undefined && named !== text) return `(${this.#withResults(named)})`
      const sheet = kind === 'reference' ? parseReference(text)?.sheet : undefined
      return sheet == null || this.#own.has(foldCase(sheet)) ? text : literal(this.#at(text) ?? null)
    }).join('')
  }
}

function literal(value: CellValue): string {
  if (isCellError(value)) return 'NA()'
  if (typeof value === 'number') return `(${value})`
  return typeof value === 'string' ? `"${value.replaceAll('"', '""')}"` : String(value ?? 0).toUpperCase()
}

/** An error of a cell comes in as one of any kind: workings only ask whether there is one. */
function engineValue(value: CellValue): number | string | boolean | null {
  if (isCellError(value)) return '=NA()'
  return typeof value === 'string' ? `'${value}` : value
}
