import type { Reference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { deleting, inserting, shiftedReference } from '../../workbook/formula/line-references.ts'
import { rewriteReferences } from '../../workbook/formula/references.ts'
import { rowMap, type RowMap, type RowShift } from './row-shifts.ts'

/** How the sheets of a file lie as against those that were exported: rows inserted and taken away, and other names. */
export interface Layout {
  /** By the name at export, in small letters. */
  readonly rows: ReadonlyMap<string, RowMap>
  /** The name in the file by the name at export, in small letters. */
  readonly renamed: ReadonlyMap<string, string>
}

export const rowMaps = (shifts: readonly RowShift[]): ReadonlyMap<string, RowMap> =>
  new Map([...new Set(shifts.map(({ sheet }) => sheet))].map((sheet) => [foldCase(sheet), rowMap(shifts.filter((one) => one.sheet === sheet))]))

/** A formula of the export as a program leaves it that lets formulas follow their cells. @param host the sheet that it stands on, by its name at export */
export function followed(formula: string, host: string | null, { rows, renamed }: Layout): string {
  if (rows.size === 0 && renamed.size === 0) return formula
  return rewriteReferences(formula, (reference) => {
    const sheet = reference.sheet ?? host
    const map = sheet === null ? undefined : rows.get(foldCase(sheet))
    const shifted = map === undefined ? reference : shiftedReference(reference, host, sheet ?? '', 'rows', map.reference)
    return shifted && inRenamed(shifted, renamed)
  })
}

function inRenamed(reference: Reference, renamed: Layout['renamed']): Reference {
  const name = reference.sheet === null ? undefined : renamed.get(foldCase(reference.sheet))
  return name === undefined ? reference : { ...reference, sheet: name }
}

/**
 * A formula of the file in the layout that comes of taking some of its shifts only; sheets by their names at export.
 * @param shifts of each sheet from its top down
 * @param left the shifts not taken
 */
export function withoutShifts(formula: string, host: string | null, shifts: readonly RowShift[], left: ReadonlySet<RowShift>): string {
  if (left.size === 0) return formula
  const moves = new Map<string, number>()
  let text = formula
  for (const shift of shifts) {
    const { kind, sheet, at, count } = shift
    const before = moves.get(sheet) ?? 0
    if (left.has(shift)) {
      const line = kind === 'inserted' ? deleting(at + before, count) : inserting('rows', at + before, count)
      text = rewriteReferences(text, (reference) => shiftedReference(reference, host, sheet, 'rows', line))
    } else moves.set(sheet, before + (kind === 'inserted' ? count : -count))
  }
  return text
}
