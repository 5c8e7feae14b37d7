import type { Difference } from './difference.ts'

/** A difference before it has its number. */
export type Found = Omit<Difference, 'id'>
