import { caseName, casesOf } from '../cases.ts'
import { printCellPlace, type CellPlace } from '../cell-place.ts'
import { foldCase, isFormula, sheetByName, type CellContent, type Sheet, type Workbook } from '../document.ts'
import { meantText } from '../entry.ts'
import type { CheckedValue, CheckMark } from '../review-record.ts'
import { unitOfValue } from '../unit-scope.ts'
import { labelInRow } from '../words-beside.ts'
import { watchOf, type CellNews, type MarkWatch } from './mark-watch.ts'

/** Whether what was checked still stands. */
export interface MarkState {
  readonly mark: CheckMark
  readonly isGood: boolean
  /** Why it is stale; the first so many of it. */
  readonly changes: readonly MarkNews[]
  /** How much has changed in all. */
  readonly count: number
  /** What a reader should know of a mark, good or stale: that the cells hold another case than it was made in. */
  readonly remark?: string
}

/** One thing that has changed since it was checked. */
export interface MarkNews {
  /** Where to look; undefined where there is no such cell any more. */
  readonly place: CellPlace | undefined
  /** A sentence without its full stop: `Load (Duty!C12) was 42 TR, is 48 TR`. */
  readonly words: string
}

/** What a cell comes to, of an error its sign; undefined where that is not known. */
export type ValueKnown = (place: CellPlace) => CheckedValue['value'] | undefined

/** Changes that are put into words: more than anyone reads. */
const MOST_WORDS = 100

/**
 * Marks with what has become of them, in the order of their numbers. What stands in the cells is compared; where `value` is given, also what comes
 * out in the marked cells: it may be something else for the same contents, as after a restatement of plain arithmetic, or in another Lowside.
 */
export const markStates = (workbook: Workbook, value?: ValueKnown): readonly MarkState[] => (workbook.review?.marks ?? []).map((mark) => markState(workbook, mark, value))

function markState(workbook: Workbook, mark: CheckMark, value: ValueKnown | undefined): MarkState {
  const watch = watchOf(mark)
  const inCells = [...watch.sheets].flatMap(([name, ofSheet]) => {
    const sheet = sheetByName(workbook, name)
    return ofSheet.look(sheet).map((news) => ({ sheet, name: sheet?.name ?? sheetName(mark, name), news }))
  })
  const order = new Map(workbook.sheets.map((sheet, index) => [sheet.name, index]))
  const sorted = inCells.toSorted((one, other) => (order.get(one.name) ?? order.size) - (order.get(other.name) ?? order.size))
  const names = mark.names.filter(([name, refersTo]) => nameNow(workbook, name) !== refersTo)
  const isMissing = mark.area === null && !sheetByName(workbook, mark.sheet)
  const inContents = sorted.length + watch.gone.length + names.length
  const values = inContents > 0 || !value ? [] : mark.values.filter((one) => !one.gone && !agrees(one.value, value(one)))
  const words = [
    ...(isMissing ? [(): MarkNews => ({ place: undefined, words: `the sheet ${mark.sheet} is gone` })] : []),
    ...(mark.gone ? [(): MarkNews => ({ place: undefined, words: 'the cells that were checked are gone' })] : []),
    ...sorted.map((one) => () => cellNews(workbook, watch, one)),
    ...watch.gone.map((cell) => (): MarkNews => ({ place: undefined, words: `${printCellPlace(cell)}, which held ${contentWords(cell.content)}, is gone from what was checked` })),
    ...names.map(([name, refersTo]) => () => nameNews(workbook, name, refersTo)),
    ...values.map((one) => (): MarkNews => ({ place: one, words: `${called(workbook, one)} came to ${valueWords(one.value)}, comes to ${valueWords(value?.(one) ?? null)}, though nothing that it is made of has changed` })),
  ]
  const { current } = casesOf(workbook)
  const [then, now] = [mark.inCase, current === null ? undefined : caseName(workbook, current)]
  const remark = then === now ? undefined : `It was checked in the case ${then ?? caseName(workbook, null)}; the cells hold ${now ?? caseName(workbook, null)}.`
  return { mark, isGood: words.length === 0, changes: words.slice(0, MOST_WORDS).map((make) => make()), count: words.length, ...(remark === undefined ? {} : { remark }) }
}

/** As a state shows it when the list is cut: `and 12 more`. */
export const moreWords = ({ changes, count }: Pick<MarkState, 'changes' | 'count'>): string | undefined => (count > changes.length ? `and ${(count - changes.length).toLocaleString('en')} more` : undefined)

function cellNews(workbook: Workbook, watch: MarkWatch, { sheet, name, news: { row, column, was, is } }: { readonly sheet: Sheet | undefined; readonly name: string; readonly news: CellNews }): MarkNews {
  const place: CellPlace = { sheet: name, row, column }
  if (!sheet) return { place: undefined, words: `${printCellPlace(place)}, which held ${contentWords(was?.content ?? null)}, is gone with its sheet` }
  const isUnit = is?.role === 'unit'
  const what = isUnit ? `the unit beside ${called(workbook, place)}` : called(workbook, place)
  const [before, after] = [was?.content ?? null, is?.content ?? null]
  if (!was) return { place, words: isUnit ? `${what} is new: ${contentWords(after)}` : `${what} was empty, holds ${withUnit(contentWords(after), after, unitNow(sheet, place))}` }
  if (isFormula(before) && isFormula(after)) return { place, words: `the formula of ${what} was ${before}, is ${after}` }
  const [unitWas, unitIs] = [unitThen(watch, sheet, place), unitNow(sheet, place)]
  const [wasWords, isWords] = [withUnit(contentWords(before), before, unitWas), after === null ? 'empty' : withUnit(contentWords(after), after, unitIs)]
  return { place, words: `${what} was ${isFormula(before) ? `the formula ${before}` : wasWords}, is ${isFormula(after) ? `the formula ${after}` : isWords}` }
}

function nameNews(workbook: Workbook, name: string, refersTo: string): MarkNews {
  const now = nameNow(workbook, name)
  return { place: undefined, words: now === undefined ? `the name ${name}, which stood for ${refersTo}, is gone` : `the name ${name} stood for ${refersTo}, stands for ${now}` }
}

/** Its label, with its place: `Load (Duty!C12)`. */
function called(workbook: Workbook, place: CellPlace): string {
  const sheet = sheetByName(workbook, place.sheet)
  const label = sheet && labelInRow(sheet, place)
  return label === undefined ? printCellPlace(place) : `${label} (${printCellPlace(place)})`
}

const nameNow = ({ names }: Workbook, name: string): string | undefined => names.get(name) ?? [...names].find(([one]) => foldCase(one) === foldCase(name))?.[1]

/** As the mark has it, which a folded name does not say. */
const sheetName = (mark: CheckMark, folded: string): string => [mark.sheet, ...mark.covers.map(({ sheet }) => sheet)].find((one) => foldCase(one) === folded) ?? folded

const contentWords = (content: CellContent): string => (typeof content === 'string' && !isFormula(content) ? `“${meantText(content) ?? content}”` : content === null ? 'nothing' : typeof content === 'boolean' ? String(content).toUpperCase() : String(content))

const withUnit = (words: string, content: CellContent, unit: string | undefined): string => (typeof content === 'number' && unit !== undefined ? `${words} ${unit}` : words)

function unitNow(sheet: Sheet, place: CellPlace): string | undefined {
  const at = unitOfValue(sheet, place)
  return at && meantText(sheet.rows[at.row]?.[at.column]?.content)
}

/** The unit that a number had, where it has one now in the same cell. */
function unitThen({ sheets }: MarkWatch, sheet: Sheet, place: CellPlace): string | undefined {
  const at = unitOfValue(sheet, place)
  return at && meantText(sheets.get(foldCase(sheet.name))?.coverAt(at.row, at.column)?.content)
}

/** Results that are restated, and computed again, agree to this. */
const AGREEMENT = 1e-9

function agrees(then: CheckedValue['value'], now: CheckedValue['value'] | undefined): boolean {
  if (now === undefined || then === now) return true
  return typeof then === 'number' && typeof now === 'number' && Math.abs(then - now) <= AGREEMENT * Math.max(Math.abs(then), Math.abs(now))
}

const valueWords = (value: CheckedValue['value']): string => (typeof value === 'string' && !value.startsWith('#') ? `“${value}”` : contentWords(value))
