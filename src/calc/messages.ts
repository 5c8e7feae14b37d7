import type { CalculationService } from './service.ts'

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

/** The answer to the request of the same number: its result, or in words why there is none. */
export type CalculationResponse =
  | { readonly id: number; readonly result: CalculationResult<CalculationMethod> }
  | { readonly id: number; readonly fault: string }
