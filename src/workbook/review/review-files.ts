import { areaOf, parseReference, type Area } from '../address.ts'
import { inReadingOrder, type HeldContent } from '../cases.ts'
import { printCellPlace, type CellPlace } from '../cell-place.ts'
import type { Workbook } from '../document.ts'
import { placeReader, type FilePath } from '../file-places.ts'
import type { AcceptedFinding, CheckedValue, CheckMark, CoveredCell, Review } from '../review-record.ts'
import type { FileHeld, FileMark, WorkbookFile } from '../schema.ts'
import { normalAcceptances, normalMarks, reviewProblem } from './review-edit.ts'
import { reviewPlace } from './review-words.ts'

/**
 * Marks, acceptances and record as a file has them: a mark its covered cells and values by address, a line each; an acceptance a line; the record a
 * line each in its order. What is on sheets that are not there is kept: a mark outlives its sheet.
 */

/** @param report hears of what is wrong, and where in the file */
export function reviewOfFile(file: Pick<WorkbookFile, 'marks' | 'accepted' | 'record'>, report: (message: string, path: FilePath) => void): Review | undefined {
  if (file.marks.length + file.accepted.length + file.record.length === 0) return undefined
  const marks = file.marks.map((mark, index) => markOfFile(mark, (message, path) => report(message, ['marks', index, ...path])))
  const accepted = file.accepted.flatMap(({ cells, ...one }, index): AcceptedFinding[] => {
    const where = cellsIn(cells)
    if (!where) report(`${JSON.stringify(cells)} is no cell or range; accepted: with its sheet, as in Drum!C5 or Drum!C5:C9`, ['accepted', index, 'cells'])
    return where ? [{ ...one, ...where }] : []
  })
  const problem = reviewProblem({ marks, accepted })
  if (problem) report(problem.message, problem.path.filter((step) => step !== undefined))
  return { marks: normalMarks(marks), accepted: normalAcceptances(accepted), record: file.record }
}

/** The members of a file that tell of reviews; nothing where there are none. */
export function* reviewText(workbook: Workbook): Generator<string> {
  const { review } = workbook
  if (!review) return
  if (review.marks.length > 0) yield ',\n "marks": ['
  for (const [index, mark] of review.marks.entries()) {
    if (index > 0) yield ','
    yield* markText(workbook, mark)
  }
  if (review.marks.length > 0) yield '\n ]'
  yield listText('accepted', review.accepted.map(({ kind, key, note, by, at, ...where }) => ({ kind, cells: reviewPlace(where), key, note, ...(by === undefined ? {} : { by }), ...(at === undefined ? {} : { at }) })))
  yield listText('record', review.record.map(({ what, of, place, by, at, words, holds, hash }) => ({ what, of, place, by, at, words, holds, hash })))
}

function markOfFile(mark: FileMark, report: (message: string, path: FilePath) => void): CheckMark {
  const placesIn = placeReader(undefined, report)
  const cover = (text: string, content: FileHeld, path: FilePath): CoveredCell[] => placesIn(text, path).map((place) => ({ ...place, ...heldOf(content) }))
  const where = mark.cells === undefined ? undefined : cellsIn(mark.cells)
  if (mark.cells !== undefined && where?.sheet !== mark.sheet) report(`${JSON.stringify(mark.cells)} are no cells of the sheet ${JSON.stringify(mark.sheet)}; accepted: as in Drum!C5:C9`, ['cells'])
  const covers = [
    ...Object.entries(mark.covers).flatMap(([text, content]) => cover(text, content, ['covers', text])),
    ...mark.goneCells.flatMap(([text, content], index) => cover(text, content, ['goneCells', index]).map((cell) => ({ ...cell, gone: true as const }))),
  ]
  const values = [
    ...Object.entries(mark.values).flatMap(([text, value]) => placesIn(text, ['values', text]).map((place): CheckedValue => ({ ...place, value }))),
    ...mark.goneValues.flatMap(([text, value], index) => placesIn(text, ['goneValues', index]).map((place): CheckedValue => ({ ...place, value, gone: true }))),
  ]
  const { id, sheet, gone, by, at, inCase, method, note } = mark
  return { id, sheet, area: where?.area ?? null, ...(gone ? { gone } : {}), by, at, ...(inCase === undefined ? {} : { inCase }), method, note, covers, names: Object.entries(mark.names), values }
}

function* markText(workbook: Workbook, { id, sheet, area, gone, by, at, inCase, method, note, covers, names, values }: CheckMark): Generator<string> {
  const head = { id, sheet, ...(area === null ? {} : { cells: reviewPlace({ sheet, area }) }), ...(gone ? { gone } : {}), by, at, ...(inCase === undefined ? {} : { inCase }), method, note }
  yield `\n  {${membersText(head)}`
  yield* linesText('names', '{}', names.map(([name, refersTo]) => `${json(name)}: ${json(refersTo)}`))
  yield* linesText('values', '{}', byPlace(workbook, values).map((one) => `${json(printCellPlace(one))}: ${json(one.value)}`))
  yield* linesText('goneValues', '[]', values.filter((one) => one.gone).map((one) => json([printCellPlace(one), one.value])))
  yield* linesText('covers', '{}', byPlace(workbook, covers).map((one) => `${json(printCellPlace(one))}: ${heldText(one)}`))
  yield* linesText('goneCells', '[]', covers.filter((one) => one.gone).map((one) => `[${json(printCellPlace(one))}, ${heldText(one)}]`))
  yield '}'
}

/** A line each, some hundred at a time. */
function* linesText(name: string, [open, close]: string, lines: readonly string[]): Generator<string> {
  if (lines.length === 0) return
  yield `,\n   "${name}": ${open}`
  for (let first = 0; first < lines.length; first += LINES_IN_PIECE) yield (first > 0 ? ',' : '') + lines.slice(first, first + LINES_IN_PIECE).map((line) => `\n     ${line}`).join(',')
  yield `\n   ${close}`
}

const LINES_IN_PIECE = 500

const listText = (name: string, items: readonly object[]): string => (items.length === 0 ? '' : `,\n "${name}": [${items.map((item) => `\n  {${membersText(item)}}`).join(',')}\n ]`)

const membersText = (item: object): string => Object.entries(item).map(([name, value]) => `${json(name)}: ${json(value)}`).join(', ')

const byPlace = <Place extends CellPlace & { readonly gone?: true }>(workbook: Workbook, places: readonly Place[]): readonly Place[] => inReadingOrder(workbook, places.filter(({ gone }) => !gone))

function cellsIn(text: string): { readonly sheet: string; readonly area: Area } | undefined {
  const reference = parseReference(text)
  if (!reference || reference.sheet === null) return undefined
  const where = { sheet: reference.sheet, area: areaOf(reference) }
  return reviewPlace(where) === text ? where : undefined
}

const heldOf = (held: FileHeld): HeldContent => (Array.isArray(held) ? { content: held[0], ...held[1] } : { content: held })

const heldText = ({ content, restatedFrom }: HeldContent): string => (restatedFrom === undefined ? json(content) : `[${json(content)}, {"restatedFrom": ${json(restatedFrom)}}]`)

const json = (value: unknown): string => JSON.stringify(value)
