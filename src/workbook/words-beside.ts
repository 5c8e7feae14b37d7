import type { CellAddress } from './address.ts'
import type { Cell, Role, Sheet } from './document.ts'
import { meantText } from './entry.ts'

/** Further up than this, a text is no header of the cell. */
const ROWS_LOOKED_AT = 1000

/** What a cell is called: the label nearest on its left, and where its row has several values, or no label, the header above it. */
export const labelOf = (sheet: Sheet, at: CellAddress): string | undefined => labelWith(sheet, at, headerAbove)

/** {@link labelInRow} for many cells of a sheet: each column is walked down once, where it goes up from every cell. @param textAt what a cell shows */
export function labelFinder(sheet: Sheet, textAt = ({ row, column }: CellAddress): string | undefined => meantText(sheet.rows[row]?.[column]?.content)): (at: CellAddress) => string | undefined {
  const columns = new Map<number, readonly (number | undefined)[]>()
  const header: typeof headerAbove = (_, { row, column }) => {
    const known = columns.get(column) ?? labelsAbove(sheet, column)
    columns.set(column, known)
    const at = known[Math.min(row, known.length - 1)]
    return at === undefined || row - at > ROWS_LOOKED_AT ? undefined : meantText(sheet.rows[at]?.[column]?.content)
  }
  return (at) => withFirstText(at, labelWith(sheet, at, header), (column) => textAt({ row: at.row, column }))
}

/** By row, and once more for all below: the row of the nearest label above it. */
function labelsAbove({ rows }: Sheet, column: number): readonly (number | undefined)[] {
  const found: (number | undefined)[] = [undefined]
  for (let row = 0; row < rows.length; row++) found.push(isLabel(rows[row]?.[column]) ? row : found.at(-1))
  return found
}

function labelWith(sheet: Sheet, at: CellAddress, header: (sheet: Sheet, at: CellAddress) => string | undefined): string | undefined {
  const left = firstLabel(columnsBefore(at.column), (column) => sheet.rows[at.row]?.[column])
  const above = left === undefined || isOneOfSeveral(sheet, at.row) ? header(sheet, at) : undefined
  return left === undefined || above === undefined ? (left ?? above) : `${left}: ${above}`
}

const headerAbove = (sheet: Sheet, { row, column }: CellAddress): string | undefined => firstLabel(rowsBefore(row), (at) => sheet.rows[at]?.[column])

export interface Remark {
  /** The heading of its column. */
  readonly heading: string | undefined
  readonly text: string
}

/** The texts that stand further on in a cell's row: its method, its source. */
export function remarksOf(sheet: Sheet, { row, column }: CellAddress): Remark[] {
  return (sheet.rows[row] ?? []).flatMap((cell, at) => {
    const text = cell && at > column && (cell.role === 'text' || cell.role === 'note') ? meantText(cell.content) : undefined
    return text === undefined ? [] : [{ heading: firstLabel(rowsBefore(row), (above) => sheet.rows[above]?.[at]), text }]
  })
}

const columnsBefore = (column: number): number[] => Array.from({ length: column }, (_, index) => column - 1 - index)
const rowsBefore = (row: number): number[] => Array.from({ length: Math.min(row, ROWS_LOOKED_AT) }, (_, index) => row - 1 - index)

const VALUES: ReadonlySet<Role> = new Set(['input', 'result', 'check'])

const isOneOfSeveral = (sheet: Sheet, row: number): boolean => (sheet.rows[row] ?? []).filter((cell) => cell && VALUES.has(cell.role)).length > 1

function firstLabel(places: readonly number[], cellAt: (place: number) => Cell | undefined): string | undefined {
  for (const place of places) {
    const cell = cellAt(place)
    if (isLabel(cell)) return meantText(cell?.content)
  }
  return undefined
}

const isLabel = (cell: Cell | undefined): boolean => cell !== undefined && (cell.role === 'label' || cell.role === 'heading') && meantText(cell.content) !== undefined

/** The same with the first text of the row before it, where that says which row it is: of a table that lists things by name. @param textAt what the row shows */
export function labelInRow(sheet: Sheet, at: CellAddress, textAt: (column: number) => string | undefined = (column) => meantText(sheet.rows[at.row]?.[column]?.content)): string | undefined {
  return withFirstText(at, labelOf(sheet, at), textAt)
}

function withFirstText(at: CellAddress, label: string | undefined, textAt: (column: number) => string | undefined): string | undefined {
  const first = columnsBefore(at.column).reduce<string | undefined>((found, column) => textAt(column) || found, undefined)
  if (first === undefined || label === undefined) return label ?? first
  return label.startsWith(first) ? label : `${first}: ${label}`
}
