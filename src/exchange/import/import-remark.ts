import type { Remark } from '../reading/contents.ts'

/**
 * What became of something in a file: a formula is kept as text; something is left out; a formula comes to another value than the file
 * has; a cell or a name is written otherwise than in the file; only its look is another.
 */
export type RemarkKind = 'kept as text' | 'left out' | 'computed otherwise' | 'written otherwise' | 'looks otherwise'

export interface ImportRemark extends Remark {
  readonly kind: RemarkKind
}

/** In the order in which they matter to whoever relies on the sheets. */
export const REMARK_KINDS: readonly RemarkKind[] = ['computed otherwise', 'kept as text', 'left out', 'written otherwise', 'looks otherwise']

const LOSSES: ReadonlySet<RemarkKind> = new Set<RemarkKind>(['computed otherwise', 'kept as text', 'left out'])

/** Whether someone should look at it before the sheets are relied on. */
export const isLoss = ({ kind }: ImportRemark): boolean => LOSSES.has(kind)

/** A remark as one line. */
export const remarkLine = ({ place, words, kind }: ImportRemark): string => `${kind}: ${place === '' ? '' : `${place}: `}${words}`
