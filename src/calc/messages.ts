import type { CaseOutcome } from './case-outcomes.ts'
import type { Workbook } from '../workbook/document.ts'
import type { ReadProblem } from '../workbook/file-reading.ts'
import type { LoadNews, LoadSource } from './loading.ts'
import type { CalculationService } from './service.ts'
import type { AreaValues, SheetState } from './values.ts'

/** The methods of the service that are calls to the other thread; `close` ends the thread itself. */
export type CalculationMethod = Exclude<keyof CalculationService, 'close'>

/** One request for each method, with the method's own arguments. Answered in the order in which they were sent. */
export type CalculationRequest = {
  readonly [M in CalculationMethod]: {
    readonly id: number
    readonly method: M
    readonly args: Parameters<CalculationService[M]>
  }
}[CalculationMethod]

/** What a method resolves to, once it is back on the screen's side. */
export type CalculationResult<M extends CalculationMethod> = Awaited<ReturnType<CalculationService[M]>>

/** To read a workbook and to hold its graph; asked of a thread that holds none yet. */
export interface LoadRequest {
  readonly id: number
  readonly method: 'load'
  readonly source: LoadSource
}

/** What goes over the port of `handOver`. */
export interface HandedOver {
  readonly workbook: Workbook
  /** By sheet name, every value from A1. */
  readonly areas: ReadonlyMap<string, AreaValues>
  readonly states: readonly SheetState[]
  /** What comes out in the base and in every case, where there are cases. */
  readonly cases?: readonly CaseOutcome[]
}

/** The answer to the request of the same number: its result, or in words why there is none. Loading is told of before it is answered. */
export type CalculationResponse =
  | { readonly id: number; readonly result: CalculationResult<CalculationMethod> }
  | { readonly id: number; readonly fault: string }
  | { readonly id: number; readonly news: LoadNews }
  | { readonly id: number; readonly loaded: readonly ReadProblem[] }
