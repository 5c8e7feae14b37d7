import { countOf, UNKNOWN, type Meaning, type PlainNumber } from './meaning.ts'
import { isLoose } from './products.ts'

/** What every cell of a range is; unknown where they are not alike. */
export function single(meaning: Meaning): Meaning {
  if (meaning.kind !== 'range') return meaning
  const [first, ...others] = meaning.columns.flat()
  if (first === undefined) return countOf()
  return others.length === 0 ? first : oneOfPlain([first, ...others])
}

/** One of several none of which is a quantity, or unknown. */
export function oneOfPlain(meanings: readonly Meaning[]): Meaning {
  const [first] = meanings
  if (meanings.length === 1 && first !== undefined) return first
  const numbers = meanings.filter((one): one is PlainNumber => one.kind === 'number')
  if (numbers.length === meanings.length) return { kind: 'number', value: undefined, factors: [], loose: numbers.some(isLoose) }
  const pairs = meanings.filter(({ kind }) => kind === 'pair')
  const isOf = (...kinds: readonly Meaning['kind'][]): boolean => meanings.every(({ kind }) => kinds.includes(kind))
  if (pairs.length > 0 && isOf('pair', 'text')) return pairs.length === 1 ? (pairs[0] ?? UNKNOWN) : { kind: 'pair', unit: undefined }
  if (isOf('text')) return { kind: 'text', text: undefined, unit: undefined }
  return isOf('truth') ? { kind: 'truth' } : UNKNOWN
}
