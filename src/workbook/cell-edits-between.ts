import type { Sheet, Workbook } from './document.ts'
import type { CellChange, Edit } from './edits.ts'

/** Above that, beginning afresh costs less. */
const MOST_CHANGES = 5000

/**
 * What makes one state of a workbook the other for a calculation, where cells are all that differs and not too many of them; undefined else.
 * States of one history share what has not changed, so that this looks at changed rows only.
 */
export function cellEditsBetween(before: Workbook, after: Workbook): Edit[] | undefined {
  if (before.names !== after.names || before.sheets.length !== after.sheets.length) return undefined
  const edits: Edit[] = []
  let count = 0
  for (const [index, sheet] of after.sheets.entries()) {
    const old = before.sheets[index]
    if (!old || old.name !== sheet.name) return undefined
    if (old === sheet) continue
    const cells = changesBetween(old, sheet, MOST_CHANGES - count)
    if (!cells) return undefined
    count += cells.length
    if (cells.length > 0) edits.push({ kind: 'cells', sheet: sheet.name, cells })
  }
  return [...edits, { kind: 'cases', cases: after.cases ?? null }]
}

function changesBetween(before: Sheet, after: Sheet, most: number): CellChange[] | undefined {
  const changes: CellChange[] = []
  for (const key of new Set([...Object.keys(before.rows), ...Object.keys(after.rows)])) {
    const row = Number(key)
    const [old, now] = [before.rows[row], after.rows[row]]
    if (old === now) continue
    for (let column = 0; column < Math.max(old?.length ?? 0, now?.length ?? 0); column++) {
      if (old?.[column] !== now?.[column]) changes.push({ row, column, cell: now?.[column] ?? null })
    }
    if (changes.length > most) return undefined
  }
  return changes
}
