import { findUnit } from '../../../functions/units/units.ts'
import { sheetHolding, bySheet } from '../case-switching.ts'
import { held } from '../cases.ts'
import { sheetByName, type CellContent, type Sheet, type Workbook } from '../document.ts'
import type { CellChange, Edit } from '../edits.ts'
import { meantText } from '../entry.ts'
import type { CheckedValue, CheckMark, CoveredCell } from '../review-record.ts'
import { unitFinder } from '../unit-scope.ts'
import type { MarkChange } from './review-edit.ts'
import { timestamp } from './timestamp.ts'

/** A number in one unit, as a number in another. */
type Convert = (value: number, from: string, to: string) => number

/**
 * What marks cover, changed as it would be in its cells: the same quantities in other units, so that a mark that was good stays so. What came out
 * in marked cells is converted with the units beside them.
 * @param change what it makes of the cells of a sheet
 */
export function reviewRestated(workbook: Workbook, change: (sheet: Sheet) => readonly CellChange[], convert: Convert): Edit[] {
  const marks = workbook.review?.marks ?? []
  if (marks.length === 0) return []
  const asItIs = new Map<Sheet, ReadonlyMap<string, CellChange>>()
  const changesNow = (sheet: Sheet): ReadonlyMap<string, CellChange> => {
    const known = asItIs.get(sheet) ?? byCell(change(sheet))
    asItIs.set(sheet, known)
    return known
  }
  const restated = marks.flatMap((mark): MarkChange[] => {
    const after = restatedMark(workbook, mark, change, changesNow, convert)
    return after === mark ? [] : [{ id: mark.id, mark: after }]
  })
  return restated.length === 0 ? [] : [{ kind: 'review', marks: restated, by: '', at: timestamp() }]
}

function restatedMark(workbook: Workbook, mark: CheckMark, change: (sheet: Sheet) => readonly CellChange[], changesNow: (sheet: Sheet) => ReadonlyMap<string, CellChange>, convert: Convert): CheckMark {
  let isSame = true
  const covers: CoveredCell[] = []
  const units = new Map<string, UnitChange>()
  for (const [name, cells] of bySheet(mark.covers)) {
    const sheet = sheetByName(workbook, name)
    const there = cells.filter(({ gone }) => !gone)
    if (!sheet) {
      covers.push(...cells)
      continue
    }
    // Most are as they were checked: then one walk through the sheet does for all marks.
    const isAsIs = there.every(({ row, column, content }) => sheet.rows[row]?.[column]?.content === content)
    const checked = isAsIs ? sheet : sheetHolding(sheet, there)
    const changes = isAsIs ? changesNow(sheet) : byCell(change(checked))
    const after = cells.map((cell): CoveredCell => {
      const changed = cell.gone ? undefined : changes.get(`${cell.row}:${cell.column}`)?.cell
      if (!changed || changed.content === cell.content) return cell
      isSame = false
      return { sheet: cell.sheet, row: cell.row, column: cell.column, ...held(changed) }
    })
    covers.push(...after)
    const find = unitFinder(checked)
    const contents = new Map(after.map((cell) => [`${cell.row}:${cell.column}`, cell.content]))
    for (const { sheet: home, row, column, gone } of mark.values) {
      const at = home === name && !gone ? find({ row, column }) : undefined
      if (at) units.set(`${home}!${row}:${column}`, { from: checked.rows[at.row]?.[at.column]?.content, to: contents.get(`${at.row}:${at.column}`) })
    }
  }
  if (isSame) return mark
  return { ...mark, covers: inOrder(mark.covers, covers), values: mark.values.map((value) => restatedValue(value, units.get(`${value.sheet}!${value.row}:${value.column}`), convert)) }
}

interface UnitChange {
  readonly from: CellContent | undefined
  readonly to: CellContent | undefined
}

function restatedValue(value: CheckedValue, change: UnitChange | undefined, convert: Convert): CheckedValue {
  const [from, to] = [findUnit(meantText(change?.from) ?? ''), findUnit(meantText(change?.to) ?? '')]
  if (typeof value.value !== 'number' || !from || !to || from.code === to.code || from.dimension !== to.dimension) return value
  return { ...value, value: Number(convert(value.value, from.code, to.code).toPrecision(12)) }
}

/** The cells by sheet, as they came sheet by sheet before: a mark's sheets may take turns. */
function inOrder(before: readonly CoveredCell[], after: readonly CoveredCell[]): readonly CoveredCell[] {
  const lists = bySheet(after)
  const taken = new Map<string, number>()
  return before.map((cell) => {
    const index = taken.get(cell.sheet) ?? 0
    taken.set(cell.sheet, index + 1)
    return lists.get(cell.sheet)?.[index] ?? cell
  })
}

const byCell = (changes: readonly CellChange[]): ReadonlyMap<string, CellChange> => new Map(changes.map((one) => [`${one.row}:${one.column}`, one]))
