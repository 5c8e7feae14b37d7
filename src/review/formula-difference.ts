import { areaOf, parseReference } from '../workbook/address.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import { isReferenceKind } from '../workbook/formula/tokenise.ts'
import { quotedFormula } from './finding-words.ts'
import { plainTokens, type PlainToken } from './plain-formula.ts'

/** In what a formula differs from the one that is expected where it stands. */
export interface FormulaDifference {
  /** "refers to H$6 instead of H$7". */
  readonly words: string
  /** The same without addresses: what is accepted when it is accepted. */
  readonly key: string
  /** The cells that it refers to instead of others. */
  readonly cells: readonly CellPlace[]
}

/** Both as they would stand in the same cell. */
export function formulaDifference(own: string, expected: string, home: string): FormulaDifference {
  const [ours, theirs] = [plainTokens(own, home), plainTokens(expected, home)]
  const cells = ours.flatMap((token, index) => (token.plain === theirs[index]?.plain ? [] : (cellOf(token, home) ?? [])))
  return { ...(pairwise(ours, theirs) ?? stretch(own, expected, ours, theirs)), cells: cells.slice(0, MOST_CELLS) }
}

const MOST_CELLS = 5
/** Beyond so many places another formula is easier to read than a list. */
const MOST_PAIRS = 2

type Words = Omit<FormulaDifference, 'cells'>

/** Token by token, where both are built alike. */
function pairwise(ours: readonly PlainToken[], theirs: readonly PlainToken[]): Words | undefined {
  if (ours.length !== theirs.length) return undefined
  const pairs = ours.flatMap((own, index) => {
    const other = theirs[index]
    return other === undefined || own.plain === other.plain ? [] : [[own, other] as const]
  })
  const different = [...new Map(pairs.map((pair) => [`${pair[0].plain}\u0001${pair[1].plain}`, pair])).values()]
  if (different.length === 0 || different.length > MOST_PAIRS) return undefined
  return {
    words: different.map(([own, other]) => `${verbOf(own, other)} ${own.text} instead of ${other.text}`).join(' and '),
    key: different.map(([own, other]) => keyOf(own, other)).join('; '),
  }
}

function verbOf({ kind }: PlainToken, other: PlainToken): string {
  if (isReferenceKind(kind) && isReferenceKind(other.kind)) return 'refers to'
  return kind === 'function' && other.kind === 'function' ? 'uses' : 'has'
}

function keyOf(own: PlainToken, other: PlainToken): string {
  const [one, two] = [own, other].map(({ text, kind }) => (isReferenceKind(kind) ? parseReference(text) : undefined))
  if (one === undefined || two === undefined) return `${one ? 'a reference' : own.text} for ${two ? 'a reference' : other.text}`
  const [area, expected] = [areaOf(one), areaOf(two)]
  const moved = [area.top - expected.top, area.left - expected.left, area.bottom - expected.bottom, area.right - expected.right]
  return `reference off by ${moved.join(', ')}${one.sheet === two.sheet ? '' : ', on another sheet'}`
}

/** What stands between the parts that both begin and end with; of formulas that have little in common both whole. */
function stretch(own: string, expected: string, ours: readonly PlainToken[], theirs: readonly PlainToken[]): Words {
  let start = 0
  while (start < Math.min(ours.length, theirs.length) && ours[start]?.plain === theirs[start]?.plain) start++
  let tail = 0
  while (tail < Math.min(ours.length, theirs.length) - start && ours.at(-1 - tail)?.plain === theirs.at(-1 - tail)?.plain) tail++
  const [ourPart, theirPart] = [ours, theirs].map((tokens) => tokens.slice(start, tokens.length - tail))
  const key = `other formula: ${plainKey(ourPart)} for ${plainKey(theirPart)}`
  const [has, lacks] = [textOf(ourPart), textOf(theirPart)]
  const isShort = (start + tail) * 2 >= ours.length && has.length <= MOST_STRETCH && lacks.length <= MOST_STRETCH
  if (!isShort || (has === '' && lacks === '')) return { words: `is ${quotedFormula(own)} instead of ${quotedFormula(expected)}`, key }
  if (lacks === '') return { words: `has “${has}” besides: ${quotedFormula(own)}`, key }
  return { words: has === '' ? `lacks “${lacks}”: ${quotedFormula(own)}` : `has “${has}” instead of “${lacks}”`, key }
}

const MOST_STRETCH = 40

const textOf = (tokens: readonly PlainToken[] = []): string => tokens.map(({ text }) => text).join('')
const plainKey = (tokens: readonly PlainToken[] = []): string => tokens.map(({ kind, plain }) => (isReferenceKind(kind) ? '#' : plain)).join('')

function cellOf({ kind, text }: PlainToken, home: string): CellPlace | undefined {
  const reference = isReferenceKind(kind) ? parseReference(text) : undefined
  const area = reference && areaOf(reference)
  return area && { sheet: reference.sheet ?? home, row: area.top, column: area.left }
}
