import { CellError as EngineError, ErrorType, FunctionArgumentType, FunctionPlugin, HyperFormula, type ImplementedFunctions, type SimpleRangeValue } from 'hyperformula'
import { format } from 'numfmt'
import { MAX_COLUMNS, MAX_ROWS } from '../workbook/limits.ts'
import { LINES_OF_COMPUTED } from './lines-of-computed.ts'

/** How far a quotient may be from a whole number and still count as one: some thousand times the rounding of a double. */
const WHOLE_WITHIN = 1e-12

const snapped = (quotient: number): number => {
  const nearest = Math.round(quotient)
  return Math.abs(quotient - nearest) <= WHOLE_WITHIN * Math.max(1, Math.abs(quotient)) ? nearest : quotient
}
const awayFromZero = (value: number): number => Math.sign(value) * Math.ceil(Math.abs(value))
const halfAwayFromZero = (value: number): number => Math.sign(value) * Math.floor(snapped(Math.abs(value) + 0.5))

const number = { argumentType: FunctionArgumentType.NUMBER }
const digits = { argumentType: FunctionArgumentType.NUMBER, defaultValue: 0 }

const LINES_OF_REFERENCE = { parameters: [{ argumentType: FunctionArgumentType.RANGE }], isDependentOnSheetStructureChange: true, doesNotNeedArgumentsToBeComputed: true, vectorizationForbidden: true }

/**
 * Standard functions in place of the engine's, whose TEXT misreads most formats and whose rounding takes the last bit of a
 * double for a difference (CEILING(2.1,0.7) = 2.8 there, 2.1 here), and which takes ROWS(A$1:A5) for one row: it subtracts an address from an offset.
 */
class StandardFunctions extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {
    TEXT: { method: 'text', parameters: [{ argumentType: FunctionArgumentType.SCALAR }, { argumentType: FunctionArgumentType.STRING }] },
    CEILING: { method: 'ceiling', parameters: [number, { ...number, defaultValue: 1 }] },
    FLOOR: { method: 'floor', parameters: [number, { ...number, defaultValue: 1 }] },
    ROUND: { method: 'round', parameters: [number, digits] },
    ROUNDUP: { method: 'roundUp', parameters: [number, digits] },
    ROUNDDOWN: { method: 'roundDown', parameters: [number, digits] },
    QUOTIENT: { method: 'quotient', parameters: [number, number] },
    ROWS: { method: 'rows', ...LINES_OF_REFERENCE },
    COLUMNS: { method: 'columns', ...LINES_OF_REFERENCE },
    [LINES_OF_COMPUTED.ROWS]: { method: 'rowsOfComputed', parameters: [{ argumentType: FunctionArgumentType.RANGE }] },
    [LINES_OF_COMPUTED.COLUMNS]: { method: 'columnsOfComputed', parameters: [{ argumentType: FunctionArgumentType.RANGE }] },
  }

  text(ast: never, state: never): unknown {
    return this.each(ast, state, 'TEXT', (value: unknown, pattern: string) => {
      if (value instanceof EngineError) return value
      if (typeof value !== 'number' && typeof value !== 'string' && typeof value !== 'boolean') return ''
      try {
        return format(pattern, value)
      } catch {
        return new EngineError(ErrorType.VALUE, `"${pattern}" is not a number format: write for example "0.00"`)
      }
    })
  }

  ceiling(ast: never, state: never): unknown {
    return this.each(ast, state, 'CEILING', (value: number, step: number) => toMultiple(value, step, Math.ceil))
  }

  floor(ast: never, state: never): unknown {
    return this.each(ast, state, 'FLOOR', (value: number, step: number) => toMultiple(value, step, Math.floor))
  }

  round(ast: never, state: never): unknown {
    return this.each(ast, state, 'ROUND', (value: number, places: number) => toPlaces(value, places, halfAwayFromZero))
  }

  roundUp(ast: never, state: never): unknown {
    return this.each(ast, state, 'ROUNDUP', (value: number, places: number) => toPlaces(value, places, awayFromZero))
  }

  roundDown(ast: never, state: never): unknown {
    return this.each(ast, state, 'ROUNDDOWN', (value: number, places: number) => toPlaces(value, places, Math.trunc))
  }

  quotient(ast: never, state: never): unknown {
    return this.each(ast, state, 'QUOTIENT', (dividend: number, divisor: number) =>
      divisor === 0 ? new EngineError(ErrorType.DIV_BY_ZERO) : Math.trunc(snapped(dividend / divisor)))
  }

  rows(ast: CallAst, state: EvaluationState): unknown {
    return linesOf(ast, state, 'row')
  }

  columns(ast: CallAst, state: EvaluationState): unknown {
    return linesOf(ast, state, 'column')
  }

  rowsOfComputed(ast: never, state: never): unknown {
    return this.each(ast, state, LINES_OF_COMPUTED.ROWS, (range: SimpleRangeValue) => range.height())
  }

  columnsOfComputed(ast: never, state: never): unknown {
    return this.each(ast, state, LINES_OF_COMPUTED.COLUMNS, (range: SimpleRangeValue) => range.width())
  }

  private each(ast: never, state: never, name: string, compute: (...values: never[]) => unknown): unknown {
    const { args } = ast as { args: never[] }
    return this.runFunction(args, state, this.metadata(name), compute as never)
  }
}

/** What of the engine's own syntax tree these functions look at. */
interface CallAst {
  readonly args: readonly ReferenceAst[]
}

interface ReferenceAst {
  readonly type: string
  readonly expression?: ReferenceAst
  readonly start?: ReferenceCorner
  readonly end?: ReferenceCorner
}

interface ReferenceCorner {
  toSimpleCellAddress?(base: { readonly sheet: number; readonly row: number; readonly col: number }): { readonly row: number; readonly col: number }
  toSimpleColumnAddress?(base: { readonly sheet: number; readonly row: number; readonly col: number }): { readonly col: number }
  toSimpleRowAddress?(base: { readonly sheet: number; readonly row: number; readonly col: number }): { readonly row: number }
}

interface EvaluationState {
  readonly formulaAddress: { readonly sheet: number; readonly row: number; readonly col: number }
}

/** How many lines a reference has; whatever else is given is counted by the functions for what is computed. */
function linesOf({ args }: CallAst, { formulaAddress }: EvaluationState, axis: 'row' | 'column'): number | EngineError {
  const [first, ...more] = args
  if (first === undefined || more.length > 0) return new EngineError(ErrorType.NA, `${axis === 'row' ? 'ROWS' : 'COLUMNS'} takes 1 argument: a range`)
  let given = first
  while (given.expression !== undefined) given = given.expression
  const { start, end } = given
  if (start === undefined || end === undefined) return given.type === 'ERROR' ? new EngineError(ErrorType.REF) : 1
  const at = (corner: ReferenceCorner): { readonly row?: number; readonly col?: number } =>
    corner.toSimpleCellAddress?.(formulaAddress) ?? corner.toSimpleColumnAddress?.(formulaAddress) ?? corner.toSimpleRowAddress?.(formulaAddress) ?? {}
  const [from, to] = [at(start), at(end)]
  if (axis === 'row') return from.row === undefined || to.row === undefined ? MAX_ROWS : to.row - from.row + 1
  return from.col === undefined || to.col === undefined ? MAX_COLUMNS : to.col - from.col + 1
}

function toMultiple(value: number, step: number, round: (quotient: number) => number): number | EngineError {
  if (value === 0 || step === 0) return 0
  if (value > 0 && step < 0) return new EngineError(ErrorType.NUM, 'a positive number cannot be rounded to a negative step')
  return round(snapped(value / step)) * step
}

function toPlaces(value: number, places: number, round: (scaled: number) => number): number {
  const whole = Math.trunc(places)
  const scale = 10 ** Math.abs(whole)
  const scaled = snapped(whole >= 0 ? value * scale : value / scale)
  if (!Number.isFinite(scaled)) return value
  return whole >= 0 ? round(scaled) / scale : round(scaled) * scale
}

/** Registration is global in the engine: once, before the first instance. */
export function registerStandardFunctions(): void {
  const own = Object.values(LINES_OF_COMPUTED)
  HyperFormula.registerFunctionPlugin(StandardFunctions, { enGB: Object.fromEntries(own.map((name) => [name, name])) })
}
