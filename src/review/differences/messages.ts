import type { CellPlace } from '../../workbook/cell-place.ts'
import type { Edit } from '../../workbook/edits.ts'
import type { Comparison, Difference } from './difference.ts'

/** What a thread that compares is asked, in this order; each with a number that all news of it bear. */
export type DifferencesRequest = { readonly id: number } & (
  /** The workbook before comes in here with its values, in the case that results are compared in, once; it is kept. @property isTemplate what the workbook now was begun from @property current the case that was current in its file */
  | { readonly kind: 'before'; readonly port: MessagePort; readonly isTemplate: boolean; readonly current: string }
  /** The workbook now comes in here with its values in that case. @property current the case that is current @property chosen of which cells the effect is wanted; none for all results and checks that come to something else */
  | { readonly kind: 'compare'; readonly port: MessagePort; readonly current: string; readonly chosen: readonly CellPlace[] }
  /** What takes differences of the last comparison back, by their numbers. */
  | { readonly kind: 'accept'; readonly ids: readonly number[] }
  /** The report of the last comparison. */
  | { readonly kind: 'report'; readonly date: Date; readonly beforeWords: string; readonly nowWords: string }
)

/** News of a request; all but `share` and `differences part` are its last. */
export type DifferencesNews = { readonly id: number } & (
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'differences part'; readonly differences: readonly Difference[] }
  | { readonly kind: 'kept' }
  | ({ readonly kind: 'compared' } & Omit<Comparison, 'differences' | 'layout'>)
  | { readonly kind: 'edits'; readonly edits: readonly Edit[] }
  | { readonly kind: 'report'; readonly html: string }
  | { readonly kind: 'fault'; readonly words: string }
)
