import type { CellAddress } from '../../src/workbook/address.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import type { Role, Sheet } from '../../src/workbook/document.ts'
import { meantText } from '../../src/workbook/entry.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'

/** The inputs that go by these words on a sheet. @throws WorkbookProblem where no input goes by them, or two do. */
export const inputsCalled = (sheet: Sheet, words: string): readonly CellAddress[] => called(sheet, words, 'input', ['input'])

/** The inputs or results that go by these words. @throws WorkbookProblem as {@link inputsCalled} does. */
export const valuesCalled = (sheet: Sheet, words: string): readonly CellAddress[] => called(sheet, words, 'value', ['input', 'result'])

/** Rows between a heading and its column: units, totals. */
const MOST_BETWEEN = 3

const WORDS: ReadonlySet<Role> = new Set<Role>(['label', 'heading', 'text', 'note', 'title'])

/** What stands to the right of a label, up to the next words; or the column under a heading, as far as it goes without a gap. */
function called(sheet: Sheet, words: string, what: string, accepted: readonly Role[]): readonly CellAddress[] {
  const found: (readonly CellAddress[])[] = []
  eachCell(sheet, ({ content, role }, row, column) => {
    if ((role !== 'label' && role !== 'heading') || meantText(content) !== words) return
    const beside = rowFrom(row, column + 1)
    const cells = beside.length > 0 ? beside : columnFrom(row + 1, column)
    if (cells.length > 0) found.push(cells)
  })
  const [only] = found
  if (only === undefined || found.length > 1) throw new WorkbookProblem(`sheet "${sheet.name}": ${found.length} ${what}s or columns of ${what}s are called "${words}"; accepted: one`)
  return only

  function rowFrom(row: number, from: number): CellAddress[] {
    const cells = sheet.rows[row] ?? []
    const end = cells.findIndex((cell, column) => column >= from && cell !== undefined && WORDS.has(cell.role))
    return cells.flatMap((cell, column) => (cell && column >= from && (end < 0 || column < end) && accepted.includes(cell.role) ? [{ row, column }] : []))
  }

  function columnFrom(from: number, column: number): CellAddress[] {
    let row = from
    while (row < from + MOST_BETWEEN && !isAccepted({ row, column }) && sheet.rows[row]?.[column]?.role !== 'heading') row++
    const cells: CellAddress[] = []
    for (; isAccepted({ row, column }); row++) cells.push({ row, column })
    return cells
  }

  function isAccepted({ row, column }: CellAddress): boolean {
    const role = sheet.rows[row]?.[column]?.role
    return role !== undefined && accepted.includes(role)
  }
}
