import { printArea } from './print-area.ts'
import type { AcceptedFinding, CheckMark } from '../../workbook/review-record.ts'
import { foldCase } from '../../workbook/document.ts'
import type { Found } from './found.ts'
import type { Way } from './layout.ts'
import type { Sides } from './sides.ts'
import { GONE, NO_SUCH } from './words.ts'

/**
 * What reviewers left, as far as both workbooks have the cells. None of it is taken from another workbook: who signs marks for themselves, and the record of it only
 * grows.
 */
export function markDifferences({ before, now, layout, way, back }: Sides): Found[] {
  const isThere = (to: Way, { sheet, area }: Pick<CheckMark, 'sheet' | 'area'>): boolean => to.place({ sheet, row: area?.top ?? 0, column: area?.left ?? 0 }) !== undefined
  const sheetNow = (name: string): string => layout.pairs.find((pair) => foldCase(pair.before) === foldCase(name))?.now ?? name
  const [old, current] = [before.workbook.review, now.workbook.review]
  const found = (sheet: string, label: string, was: string, is: string, what: string): Found => ({
    kind: 'mark', sheet, label, was, is, accept: { refused: `${what} of another workbook is not taken over: the record of this one says who looked at what in it.` }, subject: { of: 'mark' },
  })
  const marks = lone((old?.marks ?? []).filter((one) => isThere(way, one)), (current?.marks ?? []).filter((one) => isThere(back, one)), ({ id }) => id)
  const accepted = lone((old?.accepted ?? []).filter((one) => isThere(way, one)), (current?.accepted ?? []).filter((one) => isThere(back, one)), (one) => JSON.stringify([one.kind, foldCase(sheetNow(one.sheet)), one.key, one.note]), (one) => JSON.stringify([one.kind, foldCase(one.sheet), one.key, one.note]))
  return [
    ...marks.before.map((mark) => found(sheetNow(mark.sheet), 'check mark', markWords(mark), GONE, 'A check mark')),
    ...marks.now.map((mark) => found(mark.sheet, 'check mark', NO_SUCH, markWords(mark), 'A check mark')),
    ...accepted.before.map((one) => found(sheetNow(one.sheet), `accepted finding: ${one.kind}`, acceptedWords(one), GONE, 'An accepted finding')),
    ...accepted.now.map((one) => found(one.sheet, `accepted finding: ${one.kind}`, NO_SUCH, acceptedWords(one), 'An accepted finding')),
  ]
}

/** What only one of two lists has, each counted as often as it is there. */
function lone<Item>(before: readonly Item[], now: readonly Item[], keyBefore: (item: Item) => string, keyNow = keyBefore): { readonly before: readonly Item[]; readonly now: readonly Item[] } {
  const left = new Map<string, Item[]>()
  for (const item of now) left.set(keyNow(item), [...(left.get(keyNow(item)) ?? []), item])
  const gone = before.filter((item) => left.get(keyBefore(item))?.shift() === undefined)
  return { before: gone, now: [...left.values()].flat() }
}

const markWords = ({ area, by, at, method, note }: CheckMark): string => `${area === null ? 'the whole sheet' : printArea(area)} checked by ${by}, ${at.slice(0, 10)}, ${method}${note === '' ? '' : `: ${note}`}`

const acceptedWords = ({ area, by, note }: AcceptedFinding): string => `${printArea(area)}${by === undefined ? '' : `, by ${by}`}: ${note}`
