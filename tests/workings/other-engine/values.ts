/** An error in a cell, by its code. */
export class CellFault {
  readonly code: string
  constructor(code: string) {
    this.code = code
  }
}

export type Scalar = number | string | boolean | null | CellFault

/** Rows of values: what an area of cells holds, or what comes of one by arithmetic. */
export interface Matrix {
  readonly rows: readonly (readonly Scalar[])[]
}

export type Value = Scalar | Matrix

export const isMatrix = (value: Value): value is Matrix => typeof value === 'object' && value !== null && 'rows' in value

const known = new Map<string, CellFault>()

export function faultOf(code: string): CellFault {
  const fault = known.get(code) ?? new CellFault(code)
  known.set(code, fault)
  return fault
}

/** A value as a number (OpenFormula 1.3, part 4, 6.3.5): nothing is 0, a truth value 0 or 1, a text what it reads as. */
export function numberOf(value: Scalar): number | CellFault {
  if (typeof value === 'number') return value
  if (value === null) return 0
  if (typeof value === 'boolean') return value ? 1 : 0
  if (value instanceof CellFault) return value
  const read = value.trim() === '' ? Number.NaN : Number(value)
  return Number.isFinite(read) ? read : faultOf('#VALUE!')
}

/** A value as a text; a number with the fifteen digits that programs show at most. */
export function textOf(value: Scalar): string | CellFault {
  if (typeof value === 'string' || value instanceof CellFault) return value
  if (value === null) return ''
  return typeof value === 'boolean' ? String(value).toUpperCase() : String(Number(value.toPrecision(15)))
}

/** A value as a truth value. */
export function truthOf(value: Scalar): boolean | CellFault {
  if (typeof value === 'boolean' || value instanceof CellFault) return value
  if (typeof value !== 'string') return Boolean(value)
  const upper = value.toUpperCase()
  return upper === 'TRUE' || upper === 'FALSE' ? upper === 'TRUE' : faultOf('#VALUE!')
}

/** −1, 0 or 1: numbers before texts before truth values, texts whatever their capitals, nothing equal to 0, "" and FALSE (6.4.9). */
export function compared(one: Exclude<Scalar, CellFault>, other: Exclude<Scalar, CellFault>): number {
  const [left, right] = [one ?? emptyLike(other), other ?? emptyLike(one)]
  const [kind, otherKind] = [KINDS.indexOf(typeof left), KINDS.indexOf(typeof right)]
  if (kind !== otherKind) return Math.sign(kind - otherKind)
  if (typeof left === 'number' && typeof right === 'number') return left === right || Math.abs(left - right) < SAME * Math.max(Math.abs(left), Math.abs(right)) ? 0 : Math.sign(left - right)
  const [small, otherSmall] = [String(left).toLowerCase(), String(right).toLowerCase()]
  return small === otherSmall ? 0 : small < otherSmall ? -1 : 1
}

const KINDS = ['number', 'string', 'boolean']

/** Programs compare the fifteen digits that they show. */
const SAME = 1e-15

const emptyLike = (other: Scalar): number | string | boolean => (typeof other === 'string' ? '' : typeof other === 'boolean' ? false : 0)
