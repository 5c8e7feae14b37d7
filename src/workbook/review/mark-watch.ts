import { areaOf, parseReference, type Area } from '../address.ts'
import { spans, type Span } from '../areas.ts'
import { foldCase, isFormula, type Cell, type Row, type Sheet } from '../document.ts'
import { referencesIn } from '../formula/references.ts'
import { tokenise } from '../formula/tokenise.ts'
import { MAX_COLUMNS, MAX_ROWS } from '../limits.ts'
import type { CheckMark, CoveredCell } from '../review-record.ts'

/** What is other than a mark covers, in one cell. */
export interface CellNews {
  readonly row: number
  readonly column: number
  /** Undefined where a cell that was empty has come to feed what was checked, or stands among it. */
  readonly was: CoveredCell | undefined
  /** Undefined where there is nothing any more. */
  readonly is: Cell | undefined
}

/**
 * What of a mark lies on one sheet: the cells it covers, and those that were empty and would count if they were filled. Rows that are the same
 * objects as when last looked at are not looked at again, so that an edit costs little.
 */
export class SheetWatch {
  /** By row, then by column. */
  readonly #covers = new Map<number, Map<number, CoveredCell>>()
  /** By row: columns that were empty. */
  readonly #empty = new Map<number, Set<number>>()
  /** Large areas, by their columns: what of them is covered is known by that. */
  readonly #tall = new Map<string, { readonly left: number; readonly right: number; spans: Span[] }>()
  #rows: readonly Row[] = []
  #known = new Map<number, readonly CellNews[]>()
  #looked: Sheet | undefined
  /** Nothing has been looked at yet. */
  #isFresh = true

  cover(cell: CoveredCell): void {
    const row = this.#covers.get(cell.row) ?? new Map<number, CoveredCell>()
    this.#covers.set(cell.row, row)
    row.set(cell.column, cell)
  }

  /** To be called when all that is covered is there. */
  watch({ top, left, bottom, right }: Area): void {
    if ((bottom - top + 1) * (right - left + 1) > FEW_CELLS) {
      const key = `${left}:${right}`
      const found = this.#tall.get(key)
      this.#tall.set(key, { left, right, spans: spans([...(found?.spans ?? []), { first: top, last: bottom }]) })
      return
    }
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        if (this.#covers.get(row)?.has(column)) continue
        const columns = this.#empty.get(row) ?? new Set<number>()
        this.#empty.set(row, columns.add(column))
      }
    }
  }

  coverAt(row: number, column: number): CoveredCell | undefined {
    return this.#covers.get(row)?.get(column)
  }

  /** In the order of reading. @param sheet undefined where it is gone */
  look(sheet: Sheet | undefined): readonly CellNews[] {
    if (sheet !== this.#looked || sheet === undefined) {
      const rows = sheet?.rows ?? []
      for (const row of this.#rowsToLookAt(rows.length)) this.#lookAtRow(row, rows[row])
      this.#rows = rows
      this.#looked = sheet
      this.#isFresh = false
    }
    return [...this.#known.entries()].toSorted(([one], [other]) => one - other).flatMap(([, news]) => news)
  }

  *#rowsToLookAt(length: number): Generator<number> {
    yield* this.#covers.keys()
    for (const row of this.#empty.keys()) if (!this.#covers.has(row)) yield row
    for (const { spans: tall } of this.#tall.values()) {
      for (const { first, last } of tall) for (let row = first; row <= Math.min(last, length - 1); row++) if (!this.#covers.has(row) && !this.#empty.has(row)) yield row
    }
    // A tall area that has become shorter may leave rows behind.
    for (const row of this.#known.keys()) if (row >= length) yield row
  }

  #lookAtRow(row: number, cells: Row): void {
    if (!this.#isFresh && this.#rows[row] === cells) return
    const news: CellNews[] = []
    const covers = this.#covers.get(row)
    for (const [column, was] of covers ?? []) {
      const is = cells?.[column]
      if ((is?.content ?? null) !== was.content) news.push({ row, column, was, is })
      const unit = cells?.[column + 1]
      // A number without a unit has been given one.
      if (unit?.role === 'unit' && unit.content !== null && isValue(was) && !covers?.has(column + 1)) news.push({ row, column: column + 1, was: undefined, is: unit })
    }
    const isNew = (column: number): void => {
      const is = cells?.[column]
      if (is && is.content !== null && !covers?.has(column)) news.push({ row, column, was: undefined, is })
    }
    this.#empty.get(row)?.forEach(isNew)
    for (const { left, right, spans: tall } of this.#tall.values()) {
      if (!tall.some(({ first, last }) => first <= row && row <= last)) continue
      for (let column = left; column <= Math.min(right, (cells?.length ?? 0) - 1); column++) if (!this.#empty.get(row)?.has(column)) isNew(column)
    }
    if (news.length === 0) this.#known.delete(row)
    else this.#known.set(row, distinct(news))
  }
}

/** What is watched for a mark: by the name of the sheet, case folded as references do; and what is gone for good. */
export interface MarkWatch {
  readonly sheets: ReadonlyMap<string, SheetWatch>
  readonly gone: readonly CoveredCell[]
}

/** Made once for a mark. */
export function watchOf(mark: CheckMark): MarkWatch {
  const known = WATCHES.get(mark)
  if (known !== undefined) return known
  const watches = new Map<string, SheetWatch>()
  const of = (sheet: string): SheetWatch => {
    const watch = watches.get(foldCase(sheet)) ?? new SheetWatch()
    watches.set(foldCase(sheet), watch)
    return watch
  }
  const there = mark.covers.filter(({ gone }) => !gone)
  for (const cell of there) of(cell.sheet).cover(cell)
  if (!mark.gone) of(mark.sheet).watch(mark.area ?? WHOLE_SHEET)
  const seen = new Set<string>()
  const watch = (sheet: string, area: Area): void => {
    const key = `${sheet}!${area.top}:${area.left}:${area.bottom}:${area.right}`
    if (seen.has(key)) return
    seen.add(key)
    of(sheet).watch(area)
  }
  for (const { sheet, content } of there) {
    if (!isFormula(content)) continue
    for (const { reference } of referencesIn(tokenise(content))) watch(reference.sheet ?? sheet, areaOf(reference))
  }
  for (const [, refersTo] of mark.names) {
    const reference = parseReference(refersTo)
    if (reference?.sheet != null) watch(reference.sheet, areaOf(reference))
  }
  const made = { sheets: watches, gone: mark.covers.filter(({ gone }) => gone) }
  WATCHES.set(mark, made)
  return made
}

const isValue = ({ content }: CoveredCell): boolean => typeof content === 'number' || isFormula(content)

const WATCHES = new WeakMap<CheckMark, MarkWatch>()

const WHOLE_SHEET: Area = { top: 0, left: 0, bottom: MAX_ROWS - 1, right: MAX_COLUMNS - 1 }

/** Up to so many cells of an area are looked at one by one. */
const FEW_CELLS = 64

/** Areas may overlap. */
const distinct = (news: readonly CellNews[]): readonly CellNews[] => [...new Map(news.map((one) => [one.column, one])).values()].toSorted((one, other) => one.column - other.column)
