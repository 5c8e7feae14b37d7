import type { Reference } from '../../workbook/address.ts'
import { samePlace, type CellPlace } from '../../workbook/cell-place.ts'
import { foldCase, type Workbook } from '../../workbook/document.ts'
import { shiftedReference } from '../../workbook/formula/line-references.ts'
import { rewriteReferences } from '../../workbook/formula/references.ts'
import { alignSheets, rowsAlignedBy } from './align-sheets.ts'
import { forward, mirrored, type LineMap, type LineRuns } from './line-map.ts'
import { matchSheets, type MatchedSheets } from './match-sheets.ts'
import { referringTexts, refersToSheets } from './sheet-references.ts'

/** The same sheet in both workbooks, with what became of its lines. */
export interface SheetPair {
  readonly before: string
  readonly now: string
  readonly rows: LineRuns
  readonly columns: LineRuns
}

/** Which sheet, row and column before is which now. Plain data: it crosses to other threads. */
export interface Layout {
  /** In the order of the workbook now. */
  readonly pairs: readonly SheetPair[]
}

/** @param report told what share is done */
export function layoutOf(before: Workbook, now: Workbook, report: (share: number) => void = () => undefined): Layout {
  const matched = matchSheets(before, now)
  const first = {
    pairs: matched.map((pair, index): SheetPair => {
      report((index / matched.length) * FIRST_PASS)
      return { before: pair.before.name, now: pair.now.name, ...alignSheets(pair.before, pair.now) }
    }),
  }
  return withReferences(matched, first, (share) => report(FIRST_PASS + (1 - FIRST_PASS) * share))
}

/** Its share of the time. */
const FIRST_PASS = 0.6

/** Which row is which, now that it is known which rows of other sheets they refer to. */
function withReferences(matched: readonly MatchedSheets[], first: Layout, report: (share: number) => void): Layout {
  const texts = referringTexts(first)
  return {
    pairs: first.pairs.map((pair, index) => {
      report(index / matched.length)
      const sheets = matched[index]
      if (sheets === undefined || sheets.before.rows === sheets.now.rows || !refersToSheets(sheets.before) || !refersToSheets(sheets.now)) return pair
      return { ...pair, rows: rowsAlignedBy(sheets.before, sheets.now, pair, texts.before(sheets.before), texts.now(sheets.now)) }
    }),
  }
}

/** The same seen from the other side, in no order of the sheets. */
export const mirroredLayout = ({ pairs }: Layout): Layout => ({
  pairs: pairs.map(({ before, now, rows, columns }) => ({ before: now, now: before, rows: mirrored(rows), columns: mirrored(columns) })),
})

/** The way from places and references before to those now. */
export class Way {
  readonly #sheets: ReadonlyMap<string, { readonly name: string; readonly rows: LineMap; readonly columns: LineMap }>

  constructor({ pairs }: Layout) {
    this.#sheets = new Map(pairs.map(({ before, now, rows, columns }) => [foldCase(before), { name: now, rows: forward(rows), columns: forward(columns) }]))
  }

  /** Undefined for a cell whose sheet, row or column is gone. */
  place({ sheet, row, column }: CellPlace): CellPlace | undefined {
    const to = this.#sheets.get(foldCase(sheet))
    const [nowRow, nowColumn] = [to?.rows.line(row), to?.columns.line(column)]
    return to === undefined || nowRow === undefined || nowColumn === undefined ? undefined : { sheet: to.name, row: nowRow, column: nowColumn }
  }

  /**
   * A formula, or reference text, with its references as they are now; what is gone of its sheet becomes `#REF!`, a sheet that is gone stays as it is written.
   * @param host the sheet before that it stands on; `null` for a name
   */
  formula(formula: string, host: string | null): string {
    return rewriteReferences(formula, (reference) => this.#reference(reference, host))
  }

  #reference(reference: Reference, host: string | null): Reference | null {
    const sheet = reference.sheet ?? host
    const to = sheet === null ? undefined : this.#sheets.get(foldCase(sheet))
    if (sheet === null || to === undefined) return reference
    const inRows = shiftedReference(reference, host, sheet, 'rows', to.rows.shift)
    const shifted = inRows && shiftedReference(inRows, host, sheet, 'columns', to.columns.shift)
    return shifted === null || shifted.sheet === null || foldCase(shifted.sheet) === foldCase(to.name) ? shifted : { ...shifted, sheet: to.name }
  }
}

/** Whether two places are the same, the one before, the other now. */
export const isSamePlace = (way: Way, before: CellPlace, now: CellPlace): boolean => {
  const there = way.place(before)
  return there !== undefined && samePlace(there, now)
}
