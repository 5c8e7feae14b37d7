import { parseReference, type Corner, type Reference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'
import { mayReach } from '../../workbook/formula/line-references.ts'
import { isReferenceKind, referenceExtents, tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import type { Layout } from './layout.ts'
import { firstMoved, hasLinesBeyond, toCommon, type LineMap, type LineRuns } from './line-map.ts'

/**
 * Whether formulas before and now say the same: each reference means the cells that it meant, wherever they are now. A range that won or lost lines which only
 * one side has is the same range, and `#REF!` is the same as a reference to what only the other side has. Capitals, blanks and the own sheet's name say nothing.
 */
export class FormulaPairs {
  readonly #before = new Map<string, Pair>()
  readonly #anyMoved: boolean

  constructor({ pairs }: Layout) {
    for (const { before, now, rows, columns } of pairs) {
      this.#before.set(foldCase(before), { now: foldCase(now), rows: commons(rows), columns: commons(columns), firstRow: firstMoved(rows), firstColumn: firstMoved(columns) })
    }
    this.#anyMoved = [...this.#before].some(([name, { now, firstRow, firstColumn }]) => name !== now || firstRow !== Infinity || firstColumn !== Infinity)
  }

  /** @param hostBefore the sheet that it stands on; `null` for reference text that stands on none */
  same(before: string, hostBefore: string | null, now: string, hostNow: string | null): boolean {
    if (before === now && !this.#isTouched(before, hostBefore)) return true
    return this.#sameByPieces(before, hostBefore, now, hostNow) ?? this.#sameByTokens(before, hostBefore, now, hostNow)
  }

  /** Whether anything that a formula refers to may have moved. */
  #isTouched(formula: string, host: string | null): boolean {
    if (!this.#anyMoved) return false
    if (host === null || formula.includes('!')) return true
    const pair = this.#before.get(foldCase(host))
    return pair === undefined || mayReach(formula, 'rows', pair.firstRow) || mayReach(formula, 'columns', pair.firstColumn)
  }

  /** Undefined where formulas differ beside their references; then they may still be spelled otherwise only. */
  #sameByPieces(before: string, hostBefore: string | null, now: string, hostNow: string | null): boolean | undefined {
    const [inBefore, inNow] = [referenceExtents(before), referenceExtents(now)]
    if (inBefore.length !== inNow.length) return undefined
    let [old, at] = [0, 0]
    for (const [index, one] of inBefore.entries()) {
      const other = inNow[index]
      if (other === undefined || before.slice(old, one.start) !== now.slice(at, other.start)) return undefined
      if (!this.#sameReferences(before.slice(one.start, one.end), hostBefore, now.slice(other.start, other.end), hostNow)) return undefined
      ;[old, at] = [one.end, other.end]
    }
    return before.slice(old) === now.slice(at) ? true : undefined
  }

  #sameByTokens(before: string, hostBefore: string | null, now: string, hostNow: string | null): boolean {
    const [old, current] = [meaningful(before), meaningful(now)]
    return old.length === current.length && old.every((token, index) => {
      const other = current[index]
      if (other === undefined) return false
      const [isReference, isOtherReference] = [isReferenceKind(token.kind), isReferenceKind(other.kind)]
      if (isReference && isOtherReference) return this.#sameReferences(token.text, hostBefore, other.text, hostNow)
      if (isReference) return isLost(other) && this.#isGone(token.text, hostBefore, 'before')
      if (isOtherReference) return isLost(token) && this.#isGone(other.text, hostNow, 'now')
      return token.kind === other.kind && canonical(token) === canonical(other)
    })
  }

  #sameReferences(before: string, hostBefore: string | null, now: string, hostNow: string | null): boolean {
    const [one, other] = [parseReference(before), parseReference(now)]
    if (one === undefined || other === undefined) return before === now
    const [sheet, sheetNow] = [foldCase(one.sheet ?? hostBefore ?? ''), foldCase(other.sheet ?? hostNow ?? '')]
    const pair = this.#before.get(sheet)
    if ((pair?.now ?? sheet) !== sheetNow || !sameShape(one, other)) return false
    return sameLines(linesOf(one, 'row'), linesOf(other, 'row'), pair?.rows) && sameLines(linesOf(one, 'column'), linesOf(other, 'column'), pair?.columns)
  }

  /** Whether all that a reference means is on its side only. */
  #isGone(text: string, host: string | null, side: 'before' | 'now'): boolean {
    const reference = parseReference(text)
    if (reference === undefined) return false
    const sheet = foldCase(reference.sheet ?? host ?? '')
    const pair = side === 'before' ? this.#before.get(sheet) : [...this.#before.values()].find(({ now }) => now === sheet)
    if (pair === undefined) return false
    return (['row', 'column'] as const).some((axis) => {
      const lines = linesOf(reference, axis)
      return lines !== null && pair[axis === 'row' ? 'rows' : 'columns'].some((common) => common[side].shift(lines[0], lines[1]) === null)
    })
  }
}

interface Common {
  readonly before: LineMap
  readonly now: LineMap
}

interface Pair {
  /** In small letters. */
  readonly now: string
  readonly rows: readonly Common[]
  readonly columns: readonly Common[]
  readonly firstRow: number
  readonly firstColumn: number
}

/** Lines beyond the last one of both may have been filled or inserted: either is well. */
const commons = (lines: LineRuns): readonly Common[] => (hasLinesBeyond(lines) ? [toCommon(lines, false), toCommon(lines, true)] : [toCommon(lines, false)])

type Lines = readonly [first: number, last: number]

/** `null` where the reference takes all of them. */
function linesOf({ from, to }: Reference, axis: 'row' | 'column'): Lines | null {
  const [one, other] = [from[axis], (to ?? from)[axis]]
  return one === null || other === null ? null : one <= other ? [one, other] : [other, one]
}

function sameLines(before: Lines | null, now: Lines | null, ways: readonly Common[] = []): boolean {
  if (before === null || now === null) return before === now
  if (ways.length === 0) return before[0] === now[0] && before[1] === now[1]
  return ways.some((common) => {
    if (before[0] === before[1] && now[0] === now[1]) {
      const line = common.before.line(before[0])
      return line !== undefined && line === common.now.line(now[0])
    }
    const [one, other] = [common.before.shift(...before), common.now.shift(...now)]
    return one !== null && other !== null && one[0] === other[0] && one[1] === other[1]
  })
}

const sameShape = (one: Reference, other: Reference): boolean =>
  sameCorner(one.from, other.from) && (one.to === null || other.to === null ? one.to === other.to : sameCorner(one.to, other.to))

const sameCorner = (one: Corner, other: Corner): boolean => one.rowAbsolute === other.rowAbsolute && one.columnAbsolute === other.columnAbsolute

const isLost = ({ kind, text }: Token): boolean => kind === 'error' && text.toUpperCase() === '#REF!'

/** Without blanks that are no operator between two references. */
function meaningful(formula: string): Token[] {
  const tokens = tokenise(formula).filter(({ kind }) => kind !== 'start')
  return tokens.filter(({ kind }, index) => {
    const [before, after] = [tokens[index - 1], tokens[index + 1]]
    return kind !== 'whitespace' || (before !== undefined && after !== undefined && isReferenceKind(before.kind) && isReferenceKind(after.kind))
  })
}

function canonical({ kind, text }: Token): string {
  if (kind === 'whitespace') return ' '
  if (kind === 'number') return String(Number(text))
  return kind === 'string' || kind === 'unknown' ? text : foldCase(text)
}
