import type { Unit } from '../../../functions/units/units.ts'
import { columnLetters } from '../../workbook/address.ts'
import type { ReadCell, ReadSheet } from '../reading/contents.ts'
import { headingParts, unitOfTrade, type HeadingParts } from './source-units.ts'

/** A sheet of someone's file as a list. Rows and columns from 0. */
export interface SourceTable {
  readonly sheet: ReadSheet
  /** Undefined where there are no headings: columns go by their letters. */
  readonly headingRow: number | undefined
  readonly unitRow: number | undefined
  readonly firstRow: number
  readonly lastRow: number
  readonly columns: readonly SourceColumn[]
}

export interface SourceColumn extends HeadingParts {
  readonly column: number
  /** What the column goes by, no two the same: its heading, or else its letter. */
  readonly name: string
  readonly unit: Unit | undefined
  /** The column beside it that holds a unit in each row. */
  readonly unitColumn: number | undefined
}

/** Headings are looked for this far down, the kind of what stands below them in so many rows. */
const ROWS_LOOKED_AT = 60
const EXAMPLES = 40

/**
 * The list on a sheet. `headingRow` says where its headings stand, `null` that there are none; left out, they are looked for, and `isKnown`
 * tells which headings would be welcome.
 */
export function sourceTable(sheet: ReadSheet, headingRow: number | null | undefined, isKnown: (heading: string) => boolean = () => false): SourceTable {
  const heading = headingRow === null ? undefined : headingRow ?? likeliestHeading(sheet, isKnown)
  const below = (heading ?? -1) + 1
  const unitRow = heading !== undefined && isUnitRow(sheet, below) ? below : undefined
  const firstRow = firstFilled(sheet, unitRow === undefined ? below : unitRow + 1)
  const width = Array.from({ length: Math.min(EXAMPLES, Math.max(0, sheet.rows.length - below)) }, (_, index) => sheet.rows[below + index]?.length ?? 0)
    .reduce((most, length) => Math.max(most, length), heading === undefined ? 0 : (sheet.rows[heading]?.length ?? 0))
  const names = new Set<string>()
  const columns: SourceColumn[] = []
  for (let column = 0; column < width; column++) {
    const text = heading === undefined ? '' : sourceText(sheet.rows[heading]?.[column])
    const examples = examplesOf(sheet, column, firstRow)
    if (text === '' && examples.length === 0) continue
    const parts = headingParts(text)
    const below_ = unitRow === undefined ? undefined : unitOfTrade(bare(sourceText(sheet.rows[unitRow]?.[column])))
    columns.push({
      ...parts, column,
      name: unique(names, text === '' ? `column ${columnLetters(column)}` : text.replace(/\s+/g, ' ')),
      unit: parts.unit ?? below_,
      unitColumn: undefined,
    })
  }
  return { sheet, headingRow: heading, unitRow, firstRow, lastRow: lastFilled(sheet), columns: withUnitColumns(sheet, firstRow, columns) }
}

/** What a cell shows, without blanks around it; of an error its code. */
export function sourceText(cell: ReadCell | undefined): string {
  const value = cell?.value ?? null
  if (value === null) return ''
  if (typeof value === 'object') return value.error
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE'
  return String(value).trim()
}

export const isBlankRow = (sheet: ReadSheet, row: number): boolean => (sheet.rows[row] ?? []).every((cell) => sourceText(cell) === '')

/** Written for "nothing" in lists. */
export const isDash = (text: string): boolean => /^(?:-+|–|—|n\/?a|nil|none)$/i.test(text)

/** The texts of a column in the first rows of the list, blanks and dashes left out. */
export function examplesOf(sheet: ReadSheet, column: number, firstRow: number, most = EXAMPLES): string[] {
  const found: string[] = []
  for (let row = firstRow; row < sheet.rows.length && row < firstRow + 4 * most && found.length < most; row++) {
    const text = sourceText(sheet.rows[row]?.[column])
    if (text !== '' && !isDash(text)) found.push(text)
  }
  return found
}

/** Many texts of few letters side by side, all different, with as many cells below them, and of those some numbers. */
function likeliestHeading(sheet: ReadSheet, isKnown: (heading: string) => boolean): number | undefined {
  let best: { readonly row: number; readonly score: number } | undefined
  for (let row = 0; row < Math.min(ROWS_LOOKED_AT, sheet.rows.length); row++) {
    const texts = (sheet.rows[row] ?? []).map((cell) => (typeof cell?.value === 'string' ? sourceText(cell) : '')).filter((text) => text !== '' && text.length <= 80)
    const numbers = (sheet.rows[row] ?? []).filter((cell) => typeof cell?.value === 'number' || /^[\d.,/ ]+$/.test(sourceText(cell)) && sourceText(cell) !== '').length
    if (texts.length < 2 || numbers >= texts.length) continue
    const next = (sheet.rows[row + 1] ?? []).filter((cell) => sourceText(cell) !== '').length
    const known = texts.filter(isKnown).length
    const score = new Set(texts).size + 4 * known - 3 * numbers + Math.min(next, texts.length) - (texts.length - new Set(texts).size) * 2 - row * 0.1
    if (!best || score > best.score) best = { row, score }
  }
  return best?.row
}

function isUnitRow(sheet: ReadSheet, row: number): boolean {
  const texts = (sheet.rows[row] ?? []).map(sourceText).filter((text) => text !== '')
  const units = texts.filter((text) => !/^-$/.test(text) && unitOfTrade(bare(text)) !== undefined).length
  return units > 0 && units + texts.filter((text) => text === '-').length >= texts.length * 0.6 && !texts.some((text) => /^\d/.test(text))
}

const bare = (text: string): string => text.replace(/^[[({]\s*(.*?)\s*[\])}]$/, '$1')

/** A column that holds nothing but units speaks of the one on its left. */
function withUnitColumns(sheet: ReadSheet, firstRow: number, columns: readonly SourceColumn[]): SourceColumn[] {
  const isOfUnits = columns.map(({ column }) => {
    const examples = examplesOf(sheet, column, firstRow)
    return examples.length > 0 && examples.every((text) => !/\d/.test(text.replace(/[a-z][23]$/i, '')) && unitOfTrade(bare(text)) !== undefined)
  })
  return columns.map((one, index) => {
    const next = columns[index + 1]
    return next && isOfUnits[index + 1] && !isOfUnits[index] ? { ...one, unitColumn: next.column } : one
  })
}

function unique(names: Set<string>, name: string): string {
  let free = name
  for (let number = 2; names.has(free); number++) free = `${name} (${number})`
  names.add(free)
  return free
}

function firstFilled(sheet: ReadSheet, from: number): number {
  let row = from
  while (row < sheet.rows.length && isBlankRow(sheet, row)) row++
  return Math.min(row, sheet.rows.length)
}

function lastFilled(sheet: ReadSheet): number {
  let row = sheet.rows.length - 1
  while (row >= 0 && isBlankRow(sheet, row)) row--
  return row
}
