import { isCellError, type CellError, type CellValue } from '../../calc/values.ts'

/** Values of a range, row after row. */
export interface Block {
  readonly rows: readonly (readonly CellValue[])[]
}

/** What a part of a formula comes to; undefined where that is not known. */
export type Computed = CellValue | Block | undefined

export const isBlock = (value: Computed): value is Block => typeof value === 'object' && value !== null && 'rows' in value

/** A single value; undefined of a block, and of what is not known. */
export const one = (value: Computed): CellValue | undefined => (isBlock(value) ? undefined : value)

const VALUE: CellError = { error: '#VALUE!', message: '' }

/** As arithmetic takes it. */
export function asNumber(value: CellValue): number | CellError {
  if (typeof value === 'number') return value
  if (isCellError(value)) return value
  if (value === null) return 0
  if (typeof value === 'boolean') return value ? 1 : 0
  return value.trim() !== '' && Number.isFinite(Number(value)) ? Number(value) : VALUE
}

export const asText = (value: CellValue): string => (value === null || isCellError(value) ? '' : typeof value === 'boolean' ? String(value).toUpperCase() : String(value))

/** Below 0 where the first comes before the second: numbers before texts before truth values, texts whatever their capitals, an empty cell as what it is compared with. */
export function compare(left: CellValue, right: CellValue): number {
  const [first, second] = [emptyAs(left, right), emptyAs(right, left)]
  if (typeof first === 'number' && typeof second === 'number') return Math.abs(first - second) <= CLOSE * Math.max(Math.abs(first), Math.abs(second)) ? 0 : first - second
  if (typeof first === 'string' && typeof second === 'string') {
    const [low, high] = [first.toLowerCase(), second.toLowerCase()]
    return low === high ? 0 : low < high ? -1 : 1
  }
  return rank(first) - rank(second) || Number(first) - Number(second)
}

/** The engine takes numbers that differ in their last digits for equal. */
const CLOSE = 1e-13

const emptyAs = (value: CellValue, other: CellValue): CellValue => (value !== null ? value : typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0)
const rank = (value: CellValue): number => (typeof value === 'number' ? 0 : typeof value === 'string' ? 1 : 2)

/** An argument, worked out when it is asked for. */
type Later = () => Computed
type Standard = (given: readonly Later[]) => Computed

const scalar = (later: Later | undefined): CellValue | undefined => (later === undefined ? null : one(later()))

/** Of one number. */
const ofNumber = (compute: (number: number) => number): Standard => ([given]) => {
  const value = scalar(given)
  if (value === undefined) return undefined
  const number = asNumber(value)
  if (typeof number !== 'number') return number
  const result = compute(number)
  return Number.isFinite(result) ? result : { error: '#NUM!', message: '' }
}

/** Of all numbers in what is given, blocks too. */
const ofNumbers = (compute: (numbers: readonly number[]) => CellValue): Standard => (given) => {
  const numbers: number[] = []
  for (const later of given) {
    const value = later()
    if (value === undefined) return undefined
    for (const item of itemsOf(value)) {
      if (isCellError(item)) return item
      if (typeof item === 'number') numbers.push(item)
    }
  }
  return compute(numbers)
}

const itemsOf = (value: CellValue | Block): readonly CellValue[] => (isBlock(value) ? value.rows.flat() : [value])

const ofTruths = (compute: (all: readonly boolean[]) => boolean): Standard => (given) => {
  const all: boolean[] = []
  for (const later of given) {
    const value = later()
    if (value === undefined) return undefined
    for (const item of itemsOf(value)) {
      if (isCellError(item)) return item
      if (typeof item === 'boolean' || typeof item === 'number') all.push(Boolean(item))
    }
  }
  return compute(all)
}

const about = (test: (value: CellValue) => boolean): Standard => ([given]) => {
  const value = scalar(given)
  return value === undefined ? undefined : test(value)
}

const rounded = (toward: (scaled: number) => number): Standard => ([given, digits]) => {
  const [value, places] = [scalar(given), scalar(digits)]
  if (value === undefined || places === undefined) return undefined
  const [number, decimals] = [asNumber(value), asNumber(places)]
  if (typeof number !== 'number') return number
  if (typeof decimals !== 'number') return decimals
  const scale = 10 ** Math.trunc(decimals)
  return (Math.sign(number) * toward(snapped(Math.abs(number) * scale))) / scale
}

/** What is within rounding of a whole number is that number. */
const snapped = (value: number): number => (Math.abs(value - Math.round(value)) <= 1e-12 * Math.max(1, value) ? Math.round(value) : value)

/** Which of the cells of a criterion's range fit it; undefined for criteria with comparisons or wildcards. */
function fits(range: Computed, criterion: Computed): readonly boolean[] | undefined {
  const wanted = one(criterion)
  if (range === undefined || wanted === undefined || wanted === null || isCellError(wanted)) return undefined
  if (typeof wanted === 'string' && (wanted === '' || /^[<>=]|[*?~]/.test(wanted))) return undefined
  return itemsOf(range).map((item) => item !== null && !isCellError(item) && compare(item, wanted) === 0)
}

function allFit(given: readonly Later[]): readonly boolean[] | undefined {
  let all: readonly boolean[] | undefined
  for (let at = 0; at + 1 < given.length; at += 2) {
    const found = fits(given[at]?.(), given[at + 1]?.())
    if (found === undefined) return undefined
    const before = all
    all = before === undefined ? found : found.map((fit, index) => fit && before[index] === true)
  }
  return all
}

const counted: Standard = (given) => {
  const found = allFit(given)
  return found?.filter(Boolean).length
}

/** The functions that parts of formulas are worked out with; arguments come in as they stand, and only those that count are asked for. */
export const STANDARD: Readonly<Record<string, Standard>> = {
  IF: ([condition, whenTrue, whenFalse]) => {
    const value = scalar(condition)
    if (value === undefined) return undefined
    if (isCellError(value)) return value
    if (typeof value === 'string') return VALUE
    return (value ? whenTrue : (whenFalse ?? (() => false)))?.()
  },
  IFERROR: ([given, otherwise]) => {
    const value = given?.()
    return isCellError(one(value)) ? otherwise?.() : value
  },
  AND: ofTruths((all) => all.every(Boolean)),
  OR: ofTruths((all) => all.some(Boolean)),
  NOT: ofTruths(([first]) => !first),
  TRUE: () => true,
  FALSE: () => false,
  NA: () => ({ error: '#N/A', message: '' }),
  PI: () => Math.PI,
  ABS: ofNumber(Math.abs), SQRT: ofNumber(Math.sqrt), EXP: ofNumber(Math.exp), LN: ofNumber(Math.log), LOG10: ofNumber(Math.log10), INT: ofNumber(Math.floor), SIGN: ofNumber(Math.sign),
  SIN: ofNumber(Math.sin), COS: ofNumber(Math.cos), TAN: ofNumber(Math.tan),
  ROUND: rounded((scaled) => Math.floor(snapped(scaled + 0.5))), ROUNDUP: rounded(Math.ceil), ROUNDDOWN: rounded(Math.floor),
  SUM: ofNumbers((numbers) => numbers.reduce((sum, number) => sum + number, 0)),
  PRODUCT: ofNumbers((numbers) => numbers.reduce((product, number) => product * number, 1)),
  MIN: ofNumbers((numbers) => (numbers.length === 0 ? 0 : numbers.reduce((least, number) => Math.min(least, number)))),
  MAX: ofNumbers((numbers) => (numbers.length === 0 ? 0 : numbers.reduce((most, number) => Math.max(most, number)))),
  AVERAGE: ofNumbers((numbers) => (numbers.length === 0 ? { error: '#DIV/0!', message: '' } : numbers.reduce((sum, number) => sum + number, 0) / numbers.length)),
  COUNT: (given) => {
    const values = given.map((later) => later())
    return values.some((value) => value === undefined) ? undefined : values.flatMap((value) => (value === undefined ? [] : itemsOf(value))).filter((item) => typeof item === 'number').length
  },
  COUNTA: (given) => {
    const values = given.map((later) => later())
    return values.some((value) => value === undefined) ? undefined : values.flatMap((value) => (value === undefined ? [] : itemsOf(value))).filter((item) => item !== null).length
  },
  COUNTIF: counted, COUNTIFS: counted,
  SUMIFS: ([sum, ...criteria]) => {
    const [values, found] = [sum?.(), allFit(criteria)]
    if (values === undefined || found === undefined) return undefined
    const taken = itemsOf(values).filter((_, index) => found[index] === true)
    const error = taken.find(isCellError)
    return error ?? taken.reduce<number>((total, item) => (typeof item === 'number' ? total + item : total), 0)
  },
  SUMPRODUCT: (given) => {
    const values = given.map((later) => later())
    if (values.some((value) => value === undefined)) return undefined
    const columns = values.map((value) => (value === undefined ? [] : itemsOf(value)))
    let sum = 0
    for (let at = 0; at < (columns[0]?.length ?? 0); at++) {
      let product = 1
      for (const column of columns) {
        const item = column[at] ?? 0
        if (isCellError(item)) return item
        product *= typeof item === 'number' ? item : 0
      }
      sum += product
    }
    return sum
  },
  ROWS: ([given]) => {
    const value = given?.()
    return value === undefined ? undefined : isBlock(value) ? value.rows.length : 1
  },
  COLUMNS: ([given]) => {
    const value = given?.()
    return value === undefined ? undefined : isBlock(value) ? (value.rows[0]?.length ?? 0) : 1
  },
  INDEX: ([from, row, column]) => {
    const [block, first, second] = [from?.(), scalar(row), column === undefined ? null : scalar(column)]
    if (block === undefined || first === undefined || second === undefined) return undefined
    if (isCellError(first)) return first
    const rows = isBlock(block) ? block.rows : [[block]]
    const [down, across] = indexPlace(rows.length, rows[0]?.length ?? 0, asNumber(first), column === undefined ? undefined : asNumber(second))
    if (down === undefined || across === undefined) return { error: '#REF!', message: '' }
    return rows[down]?.[across] ?? null
  },
  MATCH: ([wanted, from, how]) => {
    const [value, block, kind] = [scalar(wanted), from?.(), how === undefined ? 1 : scalar(how)]
    if (value === undefined || block === undefined || kind !== 0) return undefined
    if (isCellError(value)) return value
    const at = itemsOf(block).findIndex((item) => item !== null && !isCellError(item) && compare(item, value) === 0)
    return at < 0 ? { error: '#N/A', message: '' } : at + 1
  },
  ISNUMBER: about((value) => typeof value === 'number'),
  ISTEXT: about((value) => typeof value === 'string'),
  ISBLANK: about((value) => value === null),
  ISERROR: about(isCellError),
  N: ([given]) => {
    const value = scalar(given)
    return value === undefined ? undefined : isCellError(value) ? value : typeof value === 'number' ? value : value === true ? 1 : 0
  },
  LEFT: ([given, count]) => {
    const [value, length] = [scalar(given), count === undefined ? 1 : scalar(count)]
    return value === undefined || typeof length !== 'number' ? undefined : isCellError(value) ? value : asText(value).slice(0, length)
  },
}

/** Which row and column of a block INDEX means, from 0; undefined outside of it. */
export function indexPlace(rows: number, columns: number, first: number | CellError, second: number | CellError | undefined): readonly [number | undefined, number | undefined] {
  if (typeof first !== 'number' || (second !== undefined && typeof second !== 'number')) return [undefined, undefined]
  const [down, across] = second === undefined && rows === 1 ? [1, Math.floor(first)] : [Math.floor(first), second === undefined ? 1 : Math.floor(second)]
  return down < 1 || across < 1 || down > rows || across > columns ? [undefined, undefined] : [down - 1, across - 1]
}
