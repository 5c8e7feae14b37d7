import type { Edit } from '../../workbook/edits.ts'
import { emptyWorkbook, type Sheet, type Workbook } from '../../workbook/document.ts'
import { cellsIn } from '../../workbook/cells.ts'
import { MAX_COLUMNS } from '../../workbook/limits.ts'
import type { Imported } from './import-sheets.ts'

/** Some of the edits that bring sheets into a workbook, and the share of all that is done with them. */
export interface ImportPart {
  readonly edits: readonly Edit[]
  readonly share: number
}

/** The edits that put sheets after the last one of a workbook, in parts of which none takes long; names come first, so that formulas find them. */
export function* importEdits(workbook: Workbook, sheets: readonly Sheet[], names: Imported['names'] = new Map()): Generator<ImportPart> {
  const all = Math.max(1, sheets.reduce((sum, { rows }) => sum + rows.length, 0))
  let done = 0
  yield { edits: [...names].map(([name, refersTo]): Edit => ({ kind: 'name', name, refersTo })), share: 0 }
  for (const [index, sheet] of sheets.entries()) {
    yield { edits: [{ kind: 'addSheet', at: workbook.sheets.length + index, sheet: { ...sheet, rows: [] } }], share: done / all }
    for (let top = 0; top < sheet.rows.length; top += ROWS_IN_PART) {
      const bottom = Math.min(sheet.rows.length, top + ROWS_IN_PART) - 1
      done += bottom - top + 1
      yield { edits: [{ kind: 'cells', sheet: sheet.name, cells: cellsIn(sheet, { top, bottom, left: 0, right: MAX_COLUMNS - 1 }) }], share: done / all }
    }
  }
}

/** Each part copies the list of the sheet's rows: not too few at once, nor longer than a frame. */
const ROWS_IN_PART = 500

/** A workbook of imported sheets alone. */
export function importedWorkbook(title: string, { sheets, names }: Pick<Imported, 'names'> & { readonly sheets: readonly { readonly sheet: Sheet }[] }): Workbook {
  const empty = emptyWorkbook(title)
  return sheets.length === 0 ? empty : { ...empty, sheets: sheets.map(({ sheet }) => sheet), names }
}
