/** The error values a cell can show, as OpenFormula names them. */
export type FaultKind = '#VALUE!' | '#NUM!' | '#N/A'

/** What went wrong, as a value on its way to the user: the cell shows `fault`, the message says what, where and what is accepted. */
export interface Fault {
  readonly fault: FaultKind
  readonly message: string
}

export const wrong = (message: string): Fault => ({ fault: '#VALUE!', message })
export const outOfRange = (message: string): Fault => ({ fault: '#NUM!', message })
export const notAvailable = (message: string): Fault => ({ fault: '#N/A', message })

export const isFault = (value: unknown): value is Fault =>
  typeof value === 'object' && value !== null && 'fault' in value
