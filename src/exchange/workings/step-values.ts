import type { Expression } from '../../../functions/workings/expression.ts'
import { isCellError, type CellError, type CellValue } from '../../calc/values.ts'

/** A block of a shared table, or what comes of one by arithmetic: row after row. */
export interface Block {
  readonly rows: number
  readonly columns: number
  readonly items: readonly CellValue[]
}

type Value = CellValue | Block

/** Works out one step from the values of the columns before it. */
export type StepValue = (row: readonly CellValue[]) => CellValue

/**
 * A step of a function's workings made ready to be worked out row after row: as any spreadsheet program does it, texts equal whatever their
 * capitals, only the branch of an IF that is taken, errors passed on. It knows what workings may use, and throws over anything else.
 * (The engine takes half a minute over workings that this does in a moment.)
 */
export function stepValue(formula: Expression, tables: ReadonlyMap<string, Block>): StepValue {
  const compiled = parse(formula, tables)
  return (row) => {
    const value = compiled(row)
    return isBlock(value) ? (value.items[0] ?? null) : typeof value === 'number' && !Number.isFinite(value) ? NUM : value
  }
}

type Compiled = (row: readonly CellValue[]) => Value

const error = (code: string): CellError => ({ error: code, message: '' })
const [VALUE, NUM, NOT_AVAILABLE, DIVISION, REFERENCE] = [error('#VALUE!'), error('#NUM!'), error('#N/A'), error('#DIV/0!'), error('#REF!')]

const isBlock = (value: Value): value is Block => typeof value === 'object' && value !== null && 'items' in value

const TOKEN = /(\d+\.?\d*(?:E[+-]?\d+)?)|"((?:[^"]|"")*)"|⟨([^⟩]+)⟩|([A-Z][A-Z0-9]*)(?=\()|(<>|<=|>=|[-+*/^&=<>(),])/y

function parse(formula: string, tables: ReadonlyMap<string, Block>): Compiled {
  let at = 0
  const next = (): RegExpExecArray | null => {
    TOKEN.lastIndex = at
    return TOKEN.exec(formula)
  }
  const take = (): RegExpExecArray => {
    const token = next()
    if (token === null) throw new Error(`workings cannot be read at ${at}: ${formula}`)
    at = TOKEN.lastIndex
    return token
  }
  const operatorAhead = (): string | undefined => next()?.[5]
  const result = binary(0)
  if (at < formula.length) throw new Error(`workings cannot be read at ${at}: ${formula}`)
  return result

  /** Operators of a level, from the left, over what binds closer. */
  function binary(level: number): Compiled {
    const operators = LEVELS[level]
    if (operators === undefined) return signed()
    let left = binary(level + 1)
    for (let sign = operatorAhead(); sign !== undefined; sign = operatorAhead()) {
      const operator = operators[sign]
      if (operator === undefined) break
      take()
      const [one, other] = [left, binary(level + 1)]
      left = (row) => elementwise(operator, one(row), other(row))
    }
    return left
  }

  function signed(): Compiled {
    if (operatorAhead() !== '-') return primary()
    take()
    const operand = signed()
    return (row) => elementwise(ARITHMETIC['-'], 0, operand(row))
  }

  function primary(): Compiled {
    const [, number, text, mark, name, operator] = take()
    if (number !== undefined) return constant(Number(number))
    if (text !== undefined) return constant(text.replaceAll('""', '"'))
    if (mark !== undefined) return marked(mark)
    if (name !== undefined) return called(name)
    if (operator !== '(') throw new Error(`workings cannot be read at ${at}: ${formula}`)
    const inside = binary(0)
    take()
    return inside
  }

  function marked(mark: string): Compiled {
    if (/^\d+$/.test(mark)) {
      const column = Number(mark)
      return (row) => row[column] ?? null
    }
    const block = tables.get(mark)
    if (block === undefined) throw new Error(`there is no table block ${mark}`)
    return constant(block)
  }

  function called(name: string): Compiled {
    take()
    const given: Compiled[] = []
    while (operatorAhead() !== ')') {
      given.push(binary(0))
      if (operatorAhead() === ',') take()
    }
    take()
    const make = FUNCTIONS[name]
    if (make === undefined) throw new Error(`workings call ${name}, which is not among their functions`)
    return make(given)
  }
}

const constant = (value: Value): Compiled => () => value

type Operator = (one: CellValue, other: CellValue) => CellValue

const numeric = (compute: (one: number, other: number) => CellValue): Operator => (one, other) => {
  const [left, right] = [toNumber(one), toNumber(other)]
  return typeof left !== 'number' ? left : typeof right !== 'number' ? right : compute(left, right)
}

const ARITHMETIC = {
  '+': numeric((one, other) => one + other),
  '-': numeric((one, other) => one - other),
  '*': numeric((one, other) => one * other),
  '/': numeric((one, other) => (other === 0 ? DIVISION : one / other)),
  '^': numeric((one, other) => {
    const power = one ** other
    return Number.isFinite(power) ? power : NUM
  }),
} as const satisfies Readonly<Record<string, Operator>>

const compared = (test: (order: number) => boolean): Operator => (one, other) =>
  isCellError(one) ? one : isCellError(other) ? other : test(order(one, other))

/** From the loosest to the closest. */
const LEVELS: readonly Readonly<Record<string, Operator>>[] = [
  {
    '=': compared((sign) => sign === 0), '<>': compared((sign) => sign !== 0), '<': compared((sign) => sign < 0),
    '>': compared((sign) => sign > 0), '<=': compared((sign) => sign <= 0), '>=': compared((sign) => sign >= 0),
  },
  { '&': (one, other) => (isCellError(one) ? one : isCellError(other) ? other : toText(one) + toText(other)) },
  { '+': ARITHMETIC['+'], '-': ARITHMETIC['-'] },
  { '*': ARITHMETIC['*'], '/': ARITHMETIC['/'] },
  { '^': ARITHMETIC['^'] },
]

/** Numbers before texts before truth values; an empty cell is what it is compared with. */
function order(one: CellValue, other: CellValue): number {
  const [left, right] = [emptyAs(one, other), emptyAs(other, one)]
  if (typeof left === 'number' && typeof right === 'number') return Math.sign(left - right)
  if (typeof left === 'string' && typeof right === 'string') {
    const [low, high] = [left.toLowerCase(), right.toLowerCase()]
    return low === high ? 0 : low < high ? -1 : 1
  }
  return rank(left) - rank(right) || Number(left) - Number(right)
}

const emptyAs = (value: CellValue, other: CellValue): CellValue => (value !== null ? value : typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0)
const rank = (value: CellValue): number => (typeof value === 'number' ? 0 : typeof value === 'string' ? 1 : 2)

function toNumber(value: CellValue): number | CellError {
  if (typeof value === 'number') return value
  if (typeof value === 'boolean') return value ? 1 : 0
  if (value === null) return 0
  if (typeof value === 'object') return value
  return value.trim() !== '' && Number.isFinite(Number(value)) ? Number(value) : VALUE
}

const toText = (value: CellValue): string => (value === null || isCellError(value) ? '' : typeof value === 'boolean' ? String(value).toUpperCase() : String(value))

/** Over blocks item by item; one row or one column is taken for every row or column. */
function elementwise(operator: Operator, one: Value, other: Value): Value {
  if (!isBlock(one) && !isBlock(other)) return operator(one, other)
  const [left, right] = [asBlock(one), asBlock(other)]
  const [rows, columns] = [Math.max(left.rows, right.rows), Math.max(left.columns, right.columns)]
  const items: CellValue[] = []
  for (let row = 0; row < rows; row++) for (let column = 0; column < columns; column++) items.push(operator(itemOf(left, row, column), itemOf(right, row, column)))
  return { rows, columns, items }
}

const asBlock = (value: Value): Block => (isBlock(value) ? value : { rows: 1, columns: 1, items: [value] })
const itemOf = ({ rows, columns, items }: Block, row: number, column: number): CellValue => items[(rows === 1 ? 0 : row) * columns + (columns === 1 ? 0 : column)] ?? null

type Make = (given: readonly Compiled[]) => Compiled

const none: Compiled = constant(VALUE)

/** Of a number: item by item over a block. */
const ofNumber = (compute: (number: number) => number): Make => ([given = none]) => {
  const operator: Operator = (value) => {
    const number = toNumber(value)
    if (typeof number !== 'number') return number
    const computed = compute(number)
    return Number.isFinite(computed) ? computed : NUM
  }
  return (row) => elementwise(operator, given(row), null)
}

/** Of all numbers that are given, in blocks too. */
const ofNumbers = (compute: (numbers: readonly number[]) => number): Make => (given) => (row) => {
  const numbers: number[] = []
  for (const one of given) {
    const value = one(row)
    for (const item of isBlock(value) ? value.items : [value]) {
      if (isCellError(item)) return item
      if (typeof item === 'number') numbers.push(item)
    }
  }
  return compute(numbers)
}

/** One value; the first of a block. */
const one = (value: Value): CellValue => (isBlock(value) ? (value.items[0] ?? null) : value)

const truths = (given: readonly Compiled[], row: readonly CellValue[]): boolean[] | CellError => {
  const all: boolean[] = []
  for (const each of given) {
    const value = one(each(row))
    if (isCellError(value)) return value
    if (typeof value === 'boolean' || typeof value === 'number') all.push(Boolean(value))
  }
  return all
}

const ofTruths = (compute: (all: readonly boolean[]) => boolean): Make => (given) => (row) => {
  const all = truths(given, row)
  return Array.isArray(all) ? compute(all) : all
}

const FUNCTIONS: Readonly<Record<string, Make>> = {
  IF: ([condition = none, whenTrue = none, whenFalse = constant(false)]) => (row) => {
    const value = one(condition(row))
    return isCellError(value) ? value : typeof value === 'string' ? VALUE : value ? whenTrue(row) : whenFalse(row)
  },
  AND: ofTruths((all) => all.every(Boolean)),
  OR: ofTruths((all) => all.some(Boolean)),
  NOT: ofTruths(([first]) => !first),
  EXP: ofNumber(Math.exp), LN: ofNumber(Math.log), LOG10: ofNumber(Math.log10), SQRT: ofNumber(Math.sqrt), ABS: ofNumber(Math.abs), SIGN: ofNumber(Math.sign),
  SIN: ofNumber(Math.sin), COS: ofNumber(Math.cos), TAN: ofNumber(Math.tan), ACOS: ofNumber(Math.acos), ASIN: ofNumber(Math.asin), ATAN: ofNumber(Math.atan), INT: ofNumber(Math.floor),
  PI: () => constant(Math.PI),
  NA: () => constant(NOT_AVAILABLE),
  MIN: ofNumbers((numbers) => (numbers.length === 0 ? 0 : Math.min(...numbers))),
  MAX: ofNumbers((numbers) => (numbers.length === 0 ? 0 : Math.max(...numbers))),
  SUM: ofNumbers((numbers) => numbers.reduce((sum, number) => sum + number, 0)),
  SUMPRODUCT: (given) => {
    const product: Compiled = (row) => given.map((each) => each(row)).reduce((left, right) => elementwise(ARITHMETIC['*'], left, right))
    return FUNCTIONS['SUM']?.([product]) ?? none
  },
  INDEX: ([from = none, row = none, column]) => (values) => {
    const block = from(values)
    if (!isBlock(block)) return isCellError(block) ? block : VALUE
    const [first, second] = [toNumber(one(row(values))), column === undefined ? 1 : toNumber(one(column(values)))]
    if (typeof first !== 'number') return first
    if (typeof second !== 'number') return second
    const [down, across] = column === undefined && block.rows === 1 ? [1, Math.floor(first)] : [Math.floor(first), Math.floor(second)]
    return down < 1 || across < 1 || down > block.rows || across > block.columns ? REFERENCE : (block.items[(down - 1) * block.columns + across - 1] ?? null)
  },
  MATCH: ([wanted = none, from = none]) => (row) => {
    const [value, block] = [one(wanted(row)), from(row)]
    if (isCellError(value)) return value
    return (isBlock(block) ? placesIn(block).get(matchKey(value)) : undefined) ?? NOT_AVAILABLE
  },
  EXACT: ([left = none, right = none]) => (row) => {
    const [first, second] = [one(left(row)), one(right(row))]
    return isCellError(first) ? first : isCellError(second) ? second : toText(first) === toText(second)
  },
  ISNUMBER: ([given = none]) => (row) => typeof one(given(row)) === 'number',
  ISERROR: ([given = none]) => (row) => isCellError(one(given(row))),
  TRIM: ([given = none]) => (row) => {
    const value = one(given(row))
    return isCellError(value) ? value : toText(value).trim().replace(/ +/g, ' ')
  },
}

const places = new WeakMap<Block, ReadonlyMap<string | number | boolean | null, number>>()

/** Where each value stands first, counted from 1. */
function placesIn(block: Block): ReadonlyMap<string | number | boolean | null, number> {
  const known = places.get(block)
  if (known !== undefined) return known
  const found = new Map<string | number | boolean | null, number>()
  for (const [index, item] of block.items.entries()) if (!found.has(matchKey(item))) found.set(matchKey(item), index + 1)
  places.set(block, found)
  return found
}

const matchKey = (value: CellValue): string | number | boolean | null => (typeof value === 'string' ? value.toLowerCase() : typeof value === 'object' ? null : value)
