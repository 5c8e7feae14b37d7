/** An error a cell shows, with the message that says what is wrong, where and what is accepted. Plain data: it crosses to other threads. */
export interface CellError {
  readonly error: string
  readonly message: string
}

/** What a cell comes to. `null` is an empty cell. */
export type CellValue = number | string | boolean | null | CellError

export const isCellError = (value: CellValue | undefined): value is CellError => typeof value === 'object' && value !== null

/** A check cell: met or not, and how far, where its formula is a comparison of two numbers. */
export interface Check {
  readonly met: boolean
  /** `(left − right) / |right|`, positive on the side that meets the check; absent where the formula is no comparison of numbers. */
  readonly margin?: number
  /** In words: "met, 12 % to spare"; "not met, 3 % short". */
  readonly words: string
}

/** The values of an area, and its checks by address such as "C12". */
export interface AreaValues {
  readonly values: readonly (readonly CellValue[])[]
  readonly checks: ReadonlyMap<string, Check>
}

/** What the sheet list shows of a sheet. */
export interface SheetState {
  readonly sheet: string
  readonly checks: number
  readonly notMet: number
  readonly errors: number
}
