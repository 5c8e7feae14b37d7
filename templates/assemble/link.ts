import { printReference, type CellAddress, type Corner } from '../../src/workbook/address.ts'
import { withCells } from '../../src/workbook/cells.ts'
import { sheetByName, type Cell, type Sheet, type Workbook } from '../../src/workbook/document.ts'
import type { CellChange } from '../../src/workbook/edits.ts'
import { namesIn, referencesIn } from '../../src/workbook/formula/references.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { unitOfValue } from '../../src/workbook/unit-scope.ts'
import { inputsCalled, valuesCalled } from './called.ts'

/** An input of a template that comes from another sheet in the plant. */
export interface Link {
  readonly sheet: string
  /** The words beside the input, or at the head of the column of inputs. */
  readonly input: string
  /**
   * `{Zones: Load}` is what goes by those words on that sheet, with its unit. Where that is a column, or several values beside a label, they go
   * to as many inputs, each to its own. `{unit}` is the unit cell of the input. All else stands as it is.
   */
  readonly formula: string
  /** Where in the column of inputs the linked ones begin, 1 being its first; several where the rows come again. */
  readonly from?: readonly number[]
}

export interface Linked {
  readonly workbook: Workbook
  /** Links whose sheet, or what they read, is not there yet. */
  readonly waiting: readonly Link[]
}

/** The workbook with its links made: inputs become formulas. @throws WorkbookProblem for a link that does not fit its sheets. */
export function applyLinks(workbook: Workbook, links: readonly Link[]): Linked {
  const waiting = links.filter((link) => !isReady(workbook, link))
  const sheets = workbook.sheets.map((sheet) =>
    withCells(sheet, links.filter((link) => link.sheet === sheet.name && !waiting.includes(link)).flatMap((link) => linkedCells(workbook, sheet, link))))
  return { workbook: { ...workbook, sheets }, waiting }
}

const PLACEHOLDER = /\{([^{}]+)\}/g
const UNIT = 'unit'

interface Source {
  readonly sheet: string
  readonly words: string
}

const sourceOf = (text: string): Source => {
  const [, sheet = '', words = ''] = /^([^:]+): (.+)$/.exec(text) ?? []
  if (words === '') throw new WorkbookProblem(`{${text}} in a link; accepted: {unit}, or a sheet and words as in {Zones: Load}`)
  return { sheet, words }
}

const sourceTexts = (formula: string): string[] => [...formula.matchAll(PLACEHOLDER)].map(([, text = '']) => text).filter((text) => text !== UNIT)

function isReady(workbook: Workbook, { sheet, formula }: Link): boolean {
  const tokens = tokenise(formula.replaceAll(PLACEHOLDER, '0'))
  const sheets = [sheet, ...sourceTexts(formula).map((text) => sourceOf(text).sheet), ...referencesIn(tokens).flatMap(({ reference }) => reference.sheet ?? [])]
  return namesIn(tokens).every((name) => workbook.names.has(name)) && sheets.every((name) => sheetByName(workbook, name) !== undefined)
}

function linkedCells(workbook: Workbook, sheet: Sheet, { input, formula, from = [1] }: Link): CellChange[] {
  const where = `${sheet.name}, ${input}`
  const inputs = inputsCalled(sheet, input)
  const sources = new Map(sourceTexts(formula).map((text) => [text, valuesOf(workbook, sourceOf(text))]))
  const lengths = new Set([...sources.values()].map((values) => values.length).filter((length) => length > 1))
  if (lengths.size > 1) throw new WorkbookProblem(`${where}: what it reads has not as many rows as each other`)
  const [rows = 1] = inputs.length === 1 ? [1] : lengths
  return from.flatMap((start) => Array.from({ length: rows }, (_, index): CellChange => {
    const at = inputs[start - 1 + index]
    const cell = at && sheet.rows[at.row]?.[at.column]
    if (!at || !cell) throw new WorkbookProblem(`${where}: there are ${inputs.length} inputs; ${start - 1 + rows} are to be linked`)
    const written = (text: string) => (text === UNIT ? unitWritten(sheet, at, where) : sourceWritten(sources.get(text) ?? [], index))
    return { ...at, cell: linkedCell(cell, formula.replaceAll(PLACEHOLDER, (_whole, text: string) => written(text))) }
  }))
}

/** As many as the results of the templates show. */
const DIGITS = 4

function linkedCell(cell: Cell, content: string): Cell {
  const shown = cell.digits === undefined && cell.decimals === undefined ? { digits: DIGITS } : {}
  return { ...cell, ...shown, content, role: 'result' }
}

function valuesOf(workbook: Workbook, { sheet: name, words }: Source): readonly string[] {
  const sheet = sheetByName(workbook, name)
  return sheet === undefined ? [] : valuesCalled(sheet, words).map((at) => {
    const unit = unitOfValue(sheet, at)
    // Columns stay, rows move on as the formula is filled down; a unit at the head of a table stays.
    const value = reference(name, at, { columnAbsolute: true, rowAbsolute: false })
    return unit === undefined ? value : `${value}&${reference(name, unit, { columnAbsolute: true, rowAbsolute: unit.row !== at.row })}`
  })
}

const sourceWritten = (values: readonly string[], index: number): string => values[Math.min(index, values.length - 1)] ?? ''

function unitWritten(sheet: Sheet, at: CellAddress, where: string): string {
  const unit = unitOfValue(sheet, at)
  if (unit === undefined) throw new WorkbookProblem(`${where}: no unit stands beside it or at the head of its column`)
  return reference(null, unit, { columnAbsolute: false, rowAbsolute: unit.row !== at.row })
}

const reference = (sheet: string | null, { row, column }: CellAddress, absolute: Pick<Corner, 'rowAbsolute' | 'columnAbsolute'>): string =>
  printReference({ sheet, from: { row, column, ...absolute }, to: null })
