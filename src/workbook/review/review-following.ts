import { areaOf, parseReference, printReference, type Reference } from '../address.ts'
import { isInArea } from '../areas.ts'
import { samePlace, type CellPlace } from '../cell-place.ts'
import { foldCase, isFormula, sheetByName, type CellContent, type Workbook } from '../document.ts'
import type { Edit } from '../edits.ts'
import { referencesIn, rewriteReferences } from '../formula/references.ts'
import { tokenise } from '../formula/tokenise.ts'
import type { AcceptedFinding, CheckedValue, CheckMark, CoveredCell } from '../review-record.ts'
import type { MarkChange } from './review-edit.ts'
import { reviewPlace } from './review-words.ts'
import { timestamp } from './timestamp.ts'

/** What becomes of what marks and acceptances are about. */
export interface ReviewFollow {
  /** Of a cell; `null` for one that is gone. */
  readonly place: (place: CellPlace) => CellPlace | null
  /** Of a formula that stood in a cell. */
  readonly formula: (formula: string, from: CellPlace) => string
  /** Of a reference that names its sheet. */
  readonly reference: (reference: Reference) => Reference | null
  /** No range loses a cell, or takes one in that there was: as lines are inserted. */
  readonly keepsTogether?: boolean
  /** Of a sheet as a whole. */
  readonly sheet?: (name: string) => string
}

/**
 * Marks follow as references do, and so does what they cover: what stood there, formulas rewritten just as the cells' are. Of cells that are gone
 * it stays as it was, and says that they are: the mark is stale by that. Acceptances follow too; of what has no cells any more nothing is kept.
 */
export function followedReview(workbook: Workbook, follow: ReviewFollow): Edit[] {
  const { review } = workbook
  if (!review) return []
  const [moved, torn]: [MarkChange[], MarkChange[]] = [[], []]
  for (const mark of review.marks) {
    const after = followedMark(mark, follow)
    if (after.mark !== mark) (after.isWhole && standsAsChecked(workbook, mark) ? moved : torn).push({ id: mark.id, mark: after.mark })
  }
  const accepted = review.accepted.flatMap((one) => followedAcceptance(one, follow) ?? [])
  const sameAccepted = accepted.length === review.accepted.length && accepted.every((one, index) => one === review.accepted[index])
  const by = { by: '', at: timestamp() }
  return [
    ...(moved.length === 0 && sameAccepted ? [] : [{ kind: 'review' as const, ...(moved.length > 0 ? { marks: moved } : {}), ...(sameAccepted ? {} : { accepted }), ...by, moved: true as const }]),
    ...(torn.length === 0 ? [] : [{ kind: 'review' as const, marks: torn, ...by, words: 'cells that it covers are gone, or were moved apart' }]),
  ]
}

/** As a sheet is taken away. Marks stay as they are, as references to it do: they find it again when a sheet of that name comes back. */
export function reviewWithoutSheet({ review }: Workbook, sheet: string): Edit[] {
  const accepted = (review?.accepted ?? []).filter((one) => one.sheet !== sheet)
  return accepted.length === (review?.accepted.length ?? 0) ? [] : [{ kind: 'review', accepted, by: '', at: timestamp(), moved: true }]
}

/** What came accepted with a template goes for the copy of its sheet too. What a reviewer accepted or checked does not: nobody has looked at the copy. */
export function doubledReview({ review }: Workbook, sheet: string, copy: string): Edit[] {
  const doubled = (review?.accepted ?? []).filter((one) => one.sheet === sheet && one.by === undefined).map((one) => ({ ...one, sheet: copy }))
  return doubled.length === 0 ? [] : [{ kind: 'review', accepted: [...(review?.accepted ?? []), ...doubled], by: '', at: timestamp(), moved: true }]
}

/** Then what it holds cannot change by moving; else that is looked at. */
const standsAsChecked = (workbook: Workbook, { covers }: CheckMark): boolean =>
  covers.every(({ sheet, row, column, content, gone }) => !gone && sheetByName(workbook, sheet)?.rows[row]?.[column]?.content === content)

/** The same object if nothing becomes of it. `isWhole`: all that it covers is there and feeds what it fed. */
function followedMark(mark: CheckMark, follow: ReviewFollow): { readonly mark: CheckMark; readonly isWhole: boolean } {
  let isWhole = true
  const followed = mapped(mark.covers, (cell) => {
    const after = followedCell(cell, follow)
    isWhole &&= after.isWhole
    return after.cell
  })
  const covers = followed === mark.covers || follow.keepsTogether ? followed : withoutStrays(mark.covers, followed, follow)
  isWhole &&= covers === followed
  const values = mapped(mark.values, (value) => followedValue(value, follow))
  const names = mapped(mark.names, (one) => {
    const refersTo = rewriteReferences(one[1], follow.reference)
    return refersTo === one[1] ? one : ([one[0], refersTo] as const)
  })
  const where = mark.gone ? mark : followedArea(mark, follow)
  if (covers === mark.covers && values === mark.values && names === mark.names && where === mark) return { mark, isWhole }
  const at = where === null ? { gone: true as const } : { sheet: where.sheet, area: where.area }
  return { mark: { ...mark, ...at, covers: isWhole ? covers : goneLast(covers), values: isWhole ? values : goneLast(values), names }, isWhole }
}

function followedCell(cell: CoveredCell, follow: ReviewFollow): { readonly cell: CoveredCell; readonly isWhole: boolean } {
  if (cell.gone) return { cell, isWhole: true }
  const place = follow.place(cell)
  if (place === null) return { cell: { ...cell, gone: true }, isWhole: false }
  const rewritten = isFormula(cell.content) ? follow.formula(cell.content, cell) : cell.content
  // A formula that has lost cells it refers to, be they empty, stays as it was: that the cell's is another now is what has changed.
  const isWhole = rewritten === cell.content || lostIn(rewritten) <= lostIn(cell.content)
  const content = isWhole ? rewritten : cell.content
  return { cell: samePlace(place, cell) && content === cell.content ? cell : { ...cell, sheet: place.sheet, row: place.row, column: place.column, content }, isWhole }
}

/** As a file has them. */
const goneLast = <Item extends { readonly gone?: true }>(list: readonly Item[]): readonly Item[] => [...list.filter(({ gone }) => !gone), ...list.filter(({ gone }) => gone)]

const lostIn = (content: CellContent): number => (typeof content === 'string' ? content.split('#REF!').length : 0)

/**
 * Cells that a range held, and holds no more as they were moved out of it, or that were moved into it, or to an empty cell that a formula refers to: they have gone
 * from what was checked.
 */
function withoutStrays(before: readonly CoveredCell[], after: readonly CoveredCell[], follow: ReviewFollow): readonly CoveredCell[] {
  const [then, now] = [placesOf(before), placesOf(after)]
  const strays = new Set<number>()
  const seen = new Set<string>()
  for (const { sheet: home, content, gone } of before) {
    if (gone || !isFormula(content)) continue
    for (const { reference: written } of referencesIn(tokenise(content))) {
      const reference = { ...written, sheet: written.sheet ?? home }
      const text = printReference(reference)
      if (seen.has(text)) continue
      seen.add(text)
      const moved = follow.reference(reference)
      const [held, holds] = [new Set(within(reference, before, then)), new Set(moved ? within(moved, after, now) : [])]
      for (const position of held) if (!holds.has(position)) strays.add(position)
      for (const position of holds) if (!held.has(position)) strays.add(position)
    }
  }
  const left = [...strays].filter((position) => !after[position]?.gone)
  return left.length === 0 ? after : after.map((cell, index) => (strays.has(index) && !cell.gone ? { ...cell, gone: true } : cell))
}

const placesOf = (covers: readonly CoveredCell[]): ReadonlyMap<string, number> =>
  new Map(covers.flatMap(({ sheet, row, column, gone }, index) => (gone ? [] : [[cellKey(sheet, row, column), index] as const])))

/** Positions of what is covered within an area: by its cells where these are few, else by going through all. */
function* within(reference: Reference, covers: readonly CoveredCell[], positions: ReadonlyMap<string, number>): Generator<number> {
  const [area, sheet] = [areaOf(reference), reference.sheet ?? '']
  if ((area.bottom - area.top + 1) * (area.right - area.left + 1) > covers.length) {
    for (const [position, cell] of covers.entries()) if (!cell.gone && isInArea(cell, area) && sameSheet(cell.sheet, sheet)) yield position
    return
  }
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      const position = positions.get(cellKey(sheet, row, column))
      if (position !== undefined) yield position
    }
  }
}

const cellKey = (sheet: string, row: number, column: number): string => `${foldCase(sheet)}!${row}:${column}`

const sameSheet = (one: string, other: string): boolean => one === other || foldCase(one) === foldCase(other)

function followedValue(value: CheckedValue, follow: ReviewFollow): CheckedValue {
  if (value.gone) return value
  const place = follow.place(value)
  if (place === null) return { ...value, gone: true }
  return samePlace(place, value) ? value : { ...value, sheet: place.sheet, row: place.row, column: place.column }
}

function followedAcceptance(one: AcceptedFinding, follow: ReviewFollow): AcceptedFinding | null {
  const after = followedArea(one, follow)
  if (after === null) return null
  return after === one ? one : { ...one, sheet: after.sheet, area: after.area }
}

/** The very same where nothing becomes of it. */
function followedArea<Where extends Pick<CheckMark, 'sheet' | 'area'>>(where: Where, follow: ReviewFollow): (Pick<Where, 'area'> & { readonly sheet: string }) | null {
  const sheet = follow.sheet?.(where.sheet) ?? where.sheet
  if (where.area === null) return sheet === where.sheet ? where : { sheet, area: where.area }
  const before = parseReference(reviewPlace(where))
  const after = before && follow.reference(before)
  if (!before || after === before) return sheet === where.sheet ? where : { sheet, area: where.area }
  return after ? { sheet: after.sheet ?? sheet, area: areaOf(after) } : null
}

/** The same list if each of its items stays the same. */
function mapped<Item>(list: readonly Item[], change: (item: Item) => Item): readonly Item[] {
  const after = list.map(change)
  return after.every((item, index) => item === list[index]) ? list : after
}
