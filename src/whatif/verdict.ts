import type { CellValue } from '../calc/values.ts'

/** A verdict, an error, a number: what matters when neighbours are compared. */
export type Verdict = 'met' | 'not met' | 'none'

export const verdictOf = (value: CellValue): Verdict => (value === true ? 'met' : value === false ? 'not met' : 'none')
