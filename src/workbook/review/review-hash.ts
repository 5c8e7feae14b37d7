import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import { areaOf, type Area, type Reference } from '../address.ts'
import { foldCase, isFormula } from '../document.ts'
import { rewriteReferences } from '../formula/references.ts'
import type { AcceptedFinding, CheckMark, CoveredCell, RecordEntry } from '../review-record.ts'

/** SHA-256 (FIPS 180-4), hex, of a text as UTF-8. */
export const hashOf = (text: string): string => bytesToHex(sha256(utf8ToBytes(text)))

/**
 * The hash of a line of the record: of the JSON of a list, without blanks, of the hash before (an empty text for the first line) and the line's
 * members in this order. So anyone can work it out without Lowside.
 */
export const entryHash = (before: string, { what, of, place, by, at, words, holds }: Omit<RecordEntry, 'hash'>): string =>
  hashOf(JSON.stringify([before, what, of, place, by, at, words, holds]))

/**
 * Of all that a mark says, but where: rows and sheets that move change nothing of it. A reference in a formula that it covers stands as what the
 * cell holds that it reaches, or how many cells of a range are covered. Known once for a mark.
 */
export function markHolds(mark: CheckMark): string {
  const known = KNOWN.get(mark)
  if (known !== undefined) return known
  const { by, at, method, note, inCase = '', covers, values, names } = mark
  const reach = reachOf(covers)
  const lists = [covers.map((cell) => coverText(cell, reach)), names.map(([name, refersTo]) => `${name} ${withReferences(refersTo, reach)}`), values.map(({ value }) => JSON.stringify(value))]
  const holds = hashOf(JSON.stringify([by, at, method, note, inCase, ...lists.map((list) => list.toSorted())]))
  KNOWN.set(mark, holds)
  return holds
}

/** The same of an acceptance: two that differ in their cells alone hold the same. */
export const acceptanceHolds = ({ kind, key, note, by = '', at = '' }: AcceptedFinding): string => hashOf(JSON.stringify([kind, key, note, by, at]))

const KNOWN = new WeakMap<CheckMark, string>()

/** What a reference to cells that are covered stands for. */
type Reach = (reference: Reference) => string

function coverText({ sheet, content, gone }: CoveredCell, reach: Reach): string {
  if (!isFormula(content)) return JSON.stringify(content)
  return withReferences(content, gone ? () => '' : (reference) => reach(reference.sheet === null ? { ...reference, sheet } : reference))
}

/** What has become of a reference whose cells are gone reaches nothing. */
function withReferences(text: string, reach: Reach): string {
  const reached: string[] = []
  const bare = rewriteReferences(text, (reference) => {
    reached.push(reach(reference))
    return null
  })
  return JSON.stringify([bare, ...reached])
}

function reachOf(covers: readonly CoveredCell[]): Reach {
  const there = covers.filter(({ gone }) => !gone)
  const byPlace = new Map(there.map((cell) => [`${foldCase(cell.sheet)}!${cell.row}:${cell.column}`, cell]))
  const counts = new Map<string, number>()
  return (reference) => {
    const sheet = foldCase(reference.sheet ?? '')
    const { top, left, bottom, right } = areaOf(reference)
    // A range that has shrunk to one cell is a range still.
    if (reference.to === null) {
      const cell = byPlace.get(`${sheet}!${top}:${left}`)
      return cell === undefined ? '' : isFormula(cell.content) ? rewriteReferences(cell.content, () => null) : JSON.stringify(cell.content)
    }
    const key = `${sheet}!${top}:${left}:${bottom}:${right}`
    const count = counts.get(key) ?? countWithin(there, byPlace, sheet, { top, left, bottom, right })
    counts.set(key, count)
    return String(count)
  }
}

function countWithin(covers: readonly CoveredCell[], byPlace: ReadonlyMap<string, CoveredCell>, sheet: string, { top, left, bottom, right }: Area): number {
  if ((bottom - top + 1) * (right - left + 1) > covers.length) {
    return covers.filter((cell) => cell.row >= top && cell.row <= bottom && cell.column >= left && cell.column <= right && foldCase(cell.sheet) === sheet).length
  }
  let count = 0
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) if (byPlace.has(`${sheet}!${row}:${column}`)) count++
  return count
}
