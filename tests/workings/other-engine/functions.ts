import * as library from '@formulajs/formulajs'
import { CellFault, compared, faultOf, numberOf, textOf, truthOf, type Scalar } from './values.ts'

/** An argument of a function that takes areas: what it holds, whether it is cells, or stands there empty. */
export interface Given {
  readonly rows: readonly (readonly Scalar[])[]
  readonly isArea: boolean
  readonly isOmitted: boolean
}

type Compute = (scalars: readonly Scalar[]) => Scalar

/** A function of single values, which goes over an area cell by cell; undefined where there is none of this name. */
export function cellByCell(name: string): Compute | undefined {
  return PLAIN[name] ?? (OF_NUMBERS.has(name) ? (scalars) => lent(name, scalars.map(numberOf)) : OF_TEXTS.has(name) ? (scalars) => lent(name, scalars.map((one, at) => (IS_COUNT(name, at) ? numberOf(one) : textOf(one)))) : undefined)
}

/** A function of whole areas; undefined where there is none of this name. */
export const ofAll = (name: string): ((given: readonly Given[]) => Scalar) | undefined => WHOLE[name]

const OF_NUMBERS: ReadonlySet<string> = new Set('ABS ACOS ASIN ATAN COS EXP INT LN LOG10 PI ROUND ROUNDDOWN ROUNDUP SIN SQRT TAN'.split(' '))
const OF_TEXTS: ReadonlySet<string> = new Set('EXACT FIND LEFT LEN LOWER MID RIGHT SUBSTITUTE TRIM UPPER'.split(' '))
/** Which arguments of the functions of texts are counts of characters. */
const IS_COUNT = (name: string, at: number): boolean => ((name === 'LEFT' || name === 'RIGHT') && at === 1) || (name === 'MID' && at > 0) || ((name === 'FIND') && at === 2) || (name === 'SUBSTITUTE' && at === 3)

const PLAIN: Readonly<Record<string, Compute>> = {
  ISERROR: ([one]) => one instanceof CellFault,
  ISNUMBER: ([one]) => typeof one === 'number',
  ISLOGICAL: ([one]) => typeof one === 'boolean',
  ISTEXT: ([one]) => typeof one === 'string',
  ISBLANK: ([one]) => one === null,
  N: ([one = null]) => (one instanceof CellFault || typeof one === 'number' ? one : one === true ? 1 : 0),
  NA: () => faultOf('#N/A'),
  NOT: ([one = null]) => {
    const truth = truthOf(one)
    return truth instanceof CellFault ? truth : !truth
  },
  // The library reads a number out of the middle of a text: what is not one from end to end is kept from it.
  VALUE: ([one = null]) => (typeof one === 'string' && !/^\s*[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?\s*%?\s*$/i.test(one) ? faultOf('#VALUE!') : lent('VALUE', [one])),
}

/** Computes with the library. */
function lent(name: string, given: readonly unknown[]): Scalar {
  const fault = given.flat(2).find((one) => one instanceof CellFault)
  if (fault instanceof CellFault) return fault
  const compute = library[name as keyof typeof library] as (...values: readonly unknown[]) => unknown
  const value = compute(...given)
  if (typeof value === 'number') return Number.isFinite(value) ? value : faultOf('#NUM!')
  if (typeof value === 'string' || typeof value === 'boolean') return value
  return faultOf(value instanceof Error ? value.message : '#VALUE!')
}

/** The numbers of arguments: of cells only those that are numbers, of values in the formula whatever reads as one. */
const numbersOf = (given: readonly Given[]): readonly (number | CellFault)[] =>
  given.flatMap(({ rows, isArea }) => rows.flat().flatMap((one) => (one instanceof CellFault || typeof one === 'number' ? [one] : isArea || rows.flat().length > 1 ? [] : [numberOf(one)])))

const ofNumbers = (name: string) => (given: readonly Given[]): Scalar => lent(name, [numbersOf(given)])

const ofTruths = (name: string) => (given: readonly Given[]): Scalar =>
  lent(name, given.flatMap(({ rows, isArea }) => rows.flat().flatMap((one) => (isArea && (one === null || typeof one === 'string') ? [] : [truthOf(one)]))))

const single = (given: Given | undefined): Scalar => given?.rows[0]?.[0] ?? null

const WHOLE: Readonly<Record<string, (given: readonly Given[]) => Scalar>> = {
  AND: ofTruths('AND'),
  OR: ofTruths('OR'),
  AVERAGE: ofNumbers('AVERAGE'),
  MAX: ofNumbers('MAX'),
  MIN: ofNumbers('MIN'),
  SUM: ofNumbers('SUM'),
  COUNT: (given) => lent('COUNT', given.map(({ rows }) => rows.map((row) => row.map((one) => (typeof one === 'number' ? one : null))))),
  COUNTA: (given) => given.reduce((sum, { rows }) => sum + rows.flat().filter((one) => one !== null).length, 0),
  SUMPRODUCT: (given) => lent('SUMPRODUCT', given.map(({ rows }) => rows.map((row) => row.map((one) => (one instanceof CellFault || typeof one === 'number' ? one : 0))))),
  INDEX: ([area, row, column]) => {
    const [line, place] = [numberOf(single(row)), numberOf(single(column))]
    if (area === undefined || line instanceof CellFault || place instanceof CellFault) return area === undefined ? faultOf('#VALUE!') : line instanceof CellFault ? line : (place as CellFault)
    // In one row a single number counts the columns. An empty cell is nothing, which the library takes for no cell at all.
    const found = area.rows.length === 1 && column === undefined ? area.rows[0]?.[line - 1] : area.rows[Math.max(1, Math.trunc(line)) - 1]?.[Math.max(1, Math.trunc(place)) - 1]
    return found === undefined ? faultOf('#REF!') : found
  },
  MATCH: ([wanted, area, how]) => {
    const value = single(wanted)
    if (value instanceof CellFault) return value
    if (value === null) return faultOf('#N/A')
    const list = area?.rows.flat() ?? []
    const exact = how !== undefined && numberOf(single(how)) === 0
    const at = exact
      ? list.findIndex(meets(value))
      : list.findLastIndex((one) => one !== null && !(one instanceof CellFault) && typeof one === typeof value && compared(one, value) <= 0)
    return at < 0 ? faultOf('#N/A') : at + 1
  },
  COUNTIF: (given) => marked(given).filter(Boolean).length,
  COUNTIFS: (given) => marked(given).filter(Boolean).length,
  SUMIFS: ([summed, ...conditions]) => {
    const isMeant = marked(conditions)
    return lent('SUM', [(summed?.rows.flat() ?? []).filter((one, at) => isMeant[at] && (typeof one === 'number' || one instanceof CellFault))])
  },
}

/** At which places every condition is met; areas and conditions in turn. */
function marked(given: readonly Given[]): readonly boolean[] {
  const tests = Array.from({ length: given.length / 2 }, (_, pair) => ({ list: given[2 * pair]?.rows.flat() ?? [], meet: condition(single(given[2 * pair + 1])) }))
  return (tests[0]?.list ?? []).map((_, at) => tests.every(({ list, meet }) => meet(list[at] ?? null)))
}

const COMPARED: Readonly<Record<string, (order: number) => boolean>> = { '<': (order) => order < 0, '<=': (order) => order <= 0, '>': (order) => order > 0, '>=': (order) => order >= 0 }

/** A condition (OpenFormula 1.3, part 4, 4.11.8): a comparison with a sign before it, else a value that is equal. The library's own knows no capitals and no `*`. */
function condition(criterion: Scalar): (value: Scalar) => boolean {
  if (typeof criterion !== 'string') return meets(criterion ?? 0)
  const [, sign = '', rest = ''] = /^(<>|<=|>=|<|>|=)?(.*)$/s.exec(criterion) ?? []
  const wanted = rest.trim() !== '' && Number.isFinite(Number(rest)) ? Number(rest) : rest
  const compare = COMPARED[sign]
  if (compare !== undefined) return (value) => value !== null && !(value instanceof CellFault) && typeof value === typeof wanted && compare(compared(value, wanted))
  if (rest === '') return sign === '<>' ? (value) => value !== null : (value) => value === null || (sign === '' && value === '')
  const equal = meets(wanted)
  return sign === '<>' ? (value) => !equal(value) : equal
}

/** Equal as a condition has it: a text as a pattern of the whole, in which ? is one character, * any, ~ takes their meaning away. */
function meets(wanted: Scalar): (value: Scalar) => boolean {
  if (wanted instanceof CellFault) return (value) => value === wanted
  if (typeof wanted !== 'string') return (value) => value !== null && !(value instanceof CellFault) && typeof value === typeof wanted && compared(value, wanted) === 0
  if (!/[?*~]/.test(wanted)) {
    const small = wanted.toLowerCase()
    return (value) => typeof value === 'string' && value.toLowerCase() === small
  }
  const pattern = new RegExp(`^${wanted.replace(/~([?*~])|([?*])|([\\^$.|+()[\]{}~])/g, (_, plain: string | undefined, wild: string | undefined, other: string) => (plain !== undefined ? `\\${plain}` : wild === undefined ? `\\${other}` : wild === '?' ? '.' : '.*'))}$`, 'isu')
  return (value) => typeof value === 'string' && pattern.test(value)
}
