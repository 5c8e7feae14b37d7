import { CellError as EngineError, EmptyValue, ErrorType, FunctionArgumentType, FunctionPlugin, HyperFormula, SimpleRangeValue, type ImplementedFunctions } from 'hyperformula'
import type { Given, Scalar } from '../../functions/given.ts'
import { catalogue, functionByName } from '../../functions/catalogue.ts'
import { isFault, type FaultKind } from '../../functions/fault.ts'
import { ONE_VALUE } from './one-value.ts'
import { UNREADABLE } from './translate.ts'

const ENGINE_ERROR: Record<FaultKind, ErrorType> = { '#VALUE!': ErrorType.VALUE, '#NUM!': ErrorType.NUM, '#N/A': ErrorType.NA }

/** The call as the engine's parser leaves it; the engine exports no type for it. */
interface CallAst {
  readonly procedureName: string
  readonly args: readonly { readonly type: string }[]
}

/** Any count of arguments of any kind: the catalogue counts and checks them, in its own words. */
const METADATA = {
  method: 'callCatalogue',
  parameters: [{ argumentType: FunctionArgumentType.ANY, optionalArg: true }],
  repeatLastArgs: 1,
  vectorizationForbidden: true,
}

/** Makes the functions of the catalogue callable in formulas. No function throws into the engine, which would not recover from it. */
class CataloguePlugin extends FunctionPlugin {
  static override implementedFunctions: ImplementedFunctions = {
    ...Object.fromEntries(catalogue.map(({ name }) => [name, METADATA])),
    [UNREADABLE]: { ...METADATA, method: 'unreadable' },
    [ONE_VALUE]: { ...METADATA, method: 'oneValue' },
  }

  callCatalogue(ast: CallAst, state: unknown): number | string | EngineError {
    try {
      return this.callDefinition(ast, state)
    } catch (fault) {
      return new EngineError(ErrorType.VALUE, `${ast.procedureName} failed: ${fault instanceof Error ? fault.message : String(fault)}`)
    }
  }

  unreadable(ast: CallAst, state: unknown): EngineError {
    const [reason] = ast.args
    const value = reason === undefined ? undefined : this.evaluateArgument(reason, state)
    return value instanceof EngineError ? value : new EngineError(ErrorType.ERROR, String(value))
  }

  oneValue(ast: CallAst, state: unknown): unknown {
    const [formula] = ast.args
    const value: unknown = formula === undefined ? undefined : this.evaluateAst(formula as never, state as never)
    if (!(value instanceof SimpleRangeValue)) return value ?? EmptyValue
    return value.width() === 1 && value.height() === 1 ? (value.data[0]?.[0] ?? EmptyValue) : A_BLOCK
  }

  private callDefinition(ast: CallAst, state: unknown): number | string | EngineError {
    const definition = functionByName(ast.procedureName)
    if (definition === undefined) return new EngineError(ErrorType.NAME, `there is no function ${ast.procedureName}`)
    const given: Given[] = []
    for (const argument of ast.args) {
      const value = this.evaluateArgument(argument, state)
      if (value instanceof EngineError) return value
      given.push(value)
    }
    const result = definition.call(given)
    return isFault(result) ? new EngineError(ENGINE_ERROR[result.fault], result.message) : result
  }

  /** An argument's value for the catalogue; the first error in it is what the call gives. */
  private evaluateArgument(argument: CallAst['args'][number], state: unknown): Given | EngineError {
    if (argument.type === 'EMPTY') return undefined
    if (argument.type === 'COLUMN_RANGE' || argument.type === 'ROW_RANGE') return WHOLE_LINE
    // The engine's own types for these two are not exported; both are what it handed to this call.
    const value: unknown = this.evaluateAst(argument as never, state as never)
    if (value instanceof EngineError) return value
    if (!(value instanceof SimpleRangeValue)) return scalar(value)
    const rows: Scalar[][] = []
    for (const row of value.data) {
      const scalars: Scalar[] = []
      for (const cell of row) {
        if (cell instanceof EngineError) return cell
        scalars.push(scalar(cell))
      }
      rows.push(scalars)
    }
    return { rows }
  }
}

const A_BLOCK = new EngineError(
  ErrorType.VALUE, 'the formula gives a block of values, not one: take one with INDEX, add them up with SUM, or write a formula for each cell',
)

/** How far such a range reaches depends on what else the sheet holds or once held: no function wants it. */
const WHOLE_LINE = new EngineError(ErrorType.VALUE, 'a whole column or row is given; accepted are a cell, two adjacent cells (C5:D5) or a block of rows')

function scalar(value: unknown): Scalar {
  if (typeof value === 'number' || typeof value === 'string' || typeof value === 'boolean') return value
  if (value === EmptyValue || value === undefined || value === null) return null
  // A number with a display type, such as one written with a percent sign.
  return typeof value === 'object' && 'val' in value && typeof value.val === 'number' ? value.val : null
}

/** Registration is global in the engine: once, before the first instance. */
export function registerCatalogue(): void {
  const names = Object.keys(CataloguePlugin.implementedFunctions)
  HyperFormula.registerFunctionPlugin(CataloguePlugin, { enGB: Object.fromEntries(names.map((name) => [name, name])) })
}
