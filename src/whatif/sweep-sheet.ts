import type { Cell, Row, Sheet, Workbook } from '../workbook/document.ts'
import { literalContent } from '../workbook/entry.ts'
import type { Edit } from '../workbook/edits.ts'
import { MAX_ROWS } from '../workbook/limits.ts'
import { newSheetNames } from '../workbook/new-sheet-name.ts'
import { isCellError, type CellValue } from '../calc/values.ts'
import type { HeldInput, SweepBegun } from './messages.ts'
import { printCellPlace } from '../workbook/cell-place.ts'
import type { SweepLimit, SweepPoint } from './sweep.ts'
import { calledCell } from './place.ts'
import { sweepWords } from './sweep-words.ts'

export interface SweepToKeep {
  readonly begun: SweepBegun
  readonly points: readonly SweepPoint[]
  readonly limits: readonly SweepLimit[]
}

const MOST_HELD = 500

/**
 * A sweep as a new sheet after the last one: what was varied and when, the limits, every point, and below them the inputs that were held.
 * Its numbers are what came out then; they follow nothing.
 */
export function keepSweep(workbook: Workbook, kept: SweepToKeep, date: Date): { readonly name: string; readonly edits: Edit[] } {
  const name = newSheetNames(workbook.sheets.map((sheet) => sheet.name))('Sweep')
  const { begun, points } = kept
  const rows = [...headRows(kept, date), ...pointRows(begun, points), [], ...heldRows(begun.held)].slice(0, MAX_ROWS)
  const columns = [24, Math.max(96, 180), ...Array.from({ length: begun.axes.length + begun.watched.length - 1 }, () => 130)]
  const sheet: Sheet = { name, columns, frozen: [0, 0], rows: withoutEnds(rows) }
  return { name, edits: [{ kind: 'addSheet', at: workbook.sheets.length, sheet }] }
}

function headRows({ begun, points, limits }: SweepToKeep, date: Date): Row[] {
  const varied = begun.axes.map(({ input, numbers, unitText }) => `${input.label ?? printCellPlace(input)} (${printCellPlace(input)}) from ${numbers[0]} to ${numbers.at(-1)}${unitText === undefined ? '' : ` ${unitText}`}, ${numbers.length} values`)
  const whole = points.length < begun.count ? ` Stopped after ${points.length} of ${begun.count} points.` : ''
  return [
    beside(text('title', `Sweep of ${begun.axes.map(({ input }) => input.label ?? printCellPlace(input)).join(' and ')}`)),
    beside(text('note', `Varied: ${varied.join('; ')}. Computed on ${dateWords(date)}; the numbers are those of that day and follow no cell.${whole}`)),
    [],
    ...limitRows(begun, points, limits),
  ]
}

function limitRows(begun: SweepBegun, points: readonly SweepPoint[], limits: readonly SweepLimit[]): Row[] {
  const words = sweepWords(begun, points, limits)
  return words.length === 0 ? [] : [beside(text('heading', 'Where checks turn')), ...words.map((one) => beside(text('text', one))), []]
}

function pointRows({ axes, watched }: SweepBegun, points: readonly SweepPoint[]): Row[] {
  const heads = [...axes.map(({ input }) => input.label ?? printCellPlace(input)), ...watched.map(calledCell)]
  const units = [...axes.map(({ unitText }) => unitText), ...watched.map((one) => (one.isCheck ? undefined : one.unitText))]
  return [
    beside(...heads.map((one): Cell => ({ ...text('heading', one), wrap: true }))),
    beside(...units.map((one) => (one === undefined ? undefined : text('unit', one)))),
    ...points.map(({ given, readings }) => beside(...given.map((one): Cell => ({ content: one, role: 'result' })), ...readings.map(({ value }) => valueCell(value)))),
  ]
}

function heldRows(held: readonly HeldInput[]): Row[] {
  if (held.length === 0) return []
  const left = held.length - MOST_HELD
  return [
    beside(text('heading', 'Inputs held'), text('heading', 'Value'), text('heading', 'Unit'), text('heading', 'Cell')),
    ...held.slice(0, MOST_HELD).map((one) => beside(
      text('label', one.label ?? printCellPlace(one)), { content: typeof one.value === 'string' ? literalContent(one.value) : one.value, role: 'result' },
      one.unitText === undefined ? undefined : text('unit', one.unitText), text('text', printCellPlace(one)),
    )),
    ...(left > 0 ? [beside(text('note', `${left} more inputs were held.`))] : []),
  ]
}

function valueCell(value: CellValue): Cell | undefined {
  if (value === null || value === '') return undefined
  if (typeof value === 'number') return { content: value, role: 'result' }
  if (typeof value === 'boolean') return text('result', value ? 'met' : 'not met')
  return text('result', isCellError(value) ? `${value.error}: ${value.message}` : value)
}

const text = (role: Cell['role'], content: string): Cell => ({ content: literalContent(content), role })

/** From column B on, as in every template. */
const beside = (...cells: readonly (Cell | undefined)[]): Row => [undefined, ...cells]

/** No row ends with nothing, as the document wants it. */
const withoutEnds = (rows: readonly Row[]): Row[] => rows.map((row) => {
  const last = row?.findLastIndex((cell) => cell !== undefined) ?? -1
  return last < 0 ? undefined : row?.slice(0, last + 1)
})

const dateWords = (date: Date): string => date.toLocaleDateString('en-GB', { day: 'numeric', month: 'long', year: 'numeric' })
