import { foldCase } from '../../workbook/document.ts'
import type { ReadSheet } from '../reading/contents.ts'
import type { AlignedRow } from '../../workbook/row-alignment.ts'
import { formulaOutline } from './canonical-formula.ts'
import { valueKey } from './same-value.ts'
import type { ExpectedCell } from './expected-sheet.ts'

/** Rows that hold something, as alignment looks at them. */
export function rowsToAlign(rows: Iterable<{ readonly row: number; readonly cells: readonly (Pick<ExpectedCell, 'formula'> & { readonly value: Parameters<typeof valueKey>[0] } | undefined)[] }>): AlignedRow[] {
  const found: AlignedRow[] = []
  for (const { row, cells } of rows) {
    const keys = Array.from(cells, (cell) => (cell === undefined ? '' : cell.formula === undefined ? valueKey(cell.value) : `=${formulaOutline(cell.formula)}`))
    while (keys.at(-1) === '') keys.pop()
    if (keys.length > 0) found.push({ row, whole: keys.join('\u0001'), outline: keys.map((key) => (key.startsWith('n') ? 'n' : key)).join('\u0001'), cells: keys })
  }
  return found
}

export function* readRows({ rows }: ReadSheet): Generator<{ readonly row: number; readonly cells: ReadSheet['rows'][number] & object }> {
  for (const key in rows) {
    const cells = rows[key]
    if (cells !== undefined) yield { row: Number(key), cells }
  }
}

/** More than this part of the rows in common, and a sheet of another name is the same sheet. */
const ENOUGH = 0.5

/** Pairs sheets that are missing with new ones by what stands on them. */
export function renamedSheets(missing: readonly { readonly name: string; readonly rows: readonly AlignedRow[] }[], extra: readonly ReadSheet[]): ReadonlyMap<string, ReadSheet> {
  const found = new Map<string, ReadSheet>()
  const left = extra.map((sheet) => ({ sheet, rows: new Set(rowsToAlign(readRows(sheet)).map(({ outline }) => outline)) }))
  for (const { name, rows } of missing) {
    const outlines = new Set(rows.map(({ outline }) => outline))
    const best = left.map((one) => ({ one, share: common(outlines, one.rows) })).toSorted((a, b) => b.share - a.share)[0]
    if (best === undefined || best.share < ENOUGH) continue
    found.set(foldCase(name), best.one.sheet)
    left.splice(left.indexOf(best.one), 1)
  }
  return found
}

function common(one: ReadonlySet<string>, other: ReadonlySet<string>): number {
  const most = Math.max(one.size, other.size)
  return most === 0 ? 1 : [...one].filter((text) => other.has(text)).length / most
}
