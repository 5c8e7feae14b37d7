import { casesOf, held, type CaseValue } from './cases.ts'
import { printCellPlace } from './cell-place.ts'
import { sheetByName, type Workbook } from './document.ts'
import { applyEdits, type Edit } from './edits.ts'

/**
 * While a case is current, an input that is edited belongs to it, and the base keeps what it had: the edit that puts that aside. Labels,
 * formulas, units and cells that are new are the same in all cases. Edits that have seen to the cases themselves, up to the last such one in the
 * list, need nothing.
 * @param before the workbook before the edits, @param after with them
 */
export function keepBase(before: Workbook, after: Workbook, edits: readonly Edit[]): Edit[] {
  if (casesOf(after).current === null) return []
  const seenTo = edits.findLastIndex(({ kind }) => kind === 'cases') + 1
  const rest = edits.slice(seenTo).filter(({ kind }) => kind === 'cells')
  return rest.length === 0 ? [] : keptBy(seenTo === 0 ? before : applyEdits(before, edits.slice(0, seenTo)).workbook, after, rest)
}

function keptBy(before: Workbook, after: Workbook, edits: readonly Edit[]): Edit[] {
  const { current } = casesOf(before)
  if (current === null) return []
  const own = new Set(casesOf(before).list[current]?.aside.map(printCellPlace))
  const taken = new Map<string, CaseValue>()
  for (const edit of edits) {
    if (edit.kind !== 'cells' || edit.follow) continue
    const [from, to] = [sheetByName(before, edit.sheet), sheetByName(after, edit.sheet)]
    if (!from || !to) continue
    for (const { row, column } of edit.cells) {
      const cell = from.rows[row]?.[column]
      if (cell?.role !== 'input' || cell.content === (to.rows[row]?.[column]?.content ?? null)) continue
      const place = { sheet: from.name, row, column }
      const key = printCellPlace(place)
      if (!own.has(key)) taken.set(key, { ...place, ...held(cell) })
    }
  }
  if (taken.size === 0) return []
  const cases = casesOf(after)
  const one = cases.list[current]
  return one ? [{ kind: 'cases', cases: { ...cases, list: cases.list.with(current, { ...one, aside: [...one.aside, ...taken.values()] }) } }] : []
}
