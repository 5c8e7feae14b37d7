import { cellHolding, casesOf, held, type CaseValue } from './cases.ts'
import { withCells } from './cells.ts'
import { sheetByName, type Sheet, type Workbook } from './document.ts'
import { applyEdits, type CellChange, type Edit } from './edits.ts'
import { WorkbookProblem } from './problem.ts'

/** Makes a case current, `null` for the base: its values go into the cells, those that stood there aside. */
export function switchCase(workbook: Workbook, to: number | null): Edit[] {
  const { current } = casesOf(workbook)
  if (to === current) return []
  const out = current === null ? [] : exchange(workbook, current)
  return to === null ? out : [...out, ...exchange(applyEdits(workbook, out).workbook, to)]
}

/** The workbook with its base in the cells. */
export const atBase = (workbook: Workbook): Workbook => applyEdits(workbook, switchCase(workbook, null)).workbook

/** The sheet with values of a case in its cells. */
export const sheetHolding = (sheet: Sheet, values: readonly CaseValue[]): Sheet => withCells(sheet, changesFor(sheet, values))

const changesFor = (sheet: Sheet, values: readonly CaseValue[]): CellChange[] =>
  values.map((value) => ({ row: value.row, column: value.column, cell: cellHolding(sheet.rows[value.row]?.[value.column], value) }))

/** By the name of their sheet, in the order in which they come. */
export function bySheet<Value extends { readonly sheet: string }>(values: readonly Value[]): ReadonlyMap<string, readonly Value[]> {
  const found = new Map<string, Value[]>()
  for (const value of values) {
    const same = found.get(value.sheet)
    if (same) same.push(value)
    else found.set(value.sheet, [value])
  }
  return found
}

/** What a case has aside, and what stands in its cells, change places. A value whose sheet is missing waits for it. */
function exchange(workbook: Workbook, at: number): Edit[] {
  const cases = casesOf(workbook)
  const one = cases.list[at]
  if (!one) throw new WorkbookProblem(`there is no case number ${at + 1}; there are ${cases.list.length}`)
  const cells = [...bySheet(one.aside)].flatMap(([name, values]): Edit[] => {
    const sheet = sheetByName(workbook, name)
    return sheet ? [{ kind: 'cells', sheet: sheet.name, cells: changesFor(sheet, values) }] : []
  })
  const aside = one.aside.map((value): CaseValue => {
    const sheet = sheetByName(workbook, value.sheet)
    if (!sheet) return value
    const cell = sheet.rows[value.row]?.[value.column]
    return { sheet: value.sheet, row: value.row, column: value.column, ...(cell ? held(cell) : { content: null }) }
  })
  return [...cells, { kind: 'cases', cases: { ...cases, list: cases.list.with(at, { ...one, aside }), current: cases.current === at ? null : at } }]
}
