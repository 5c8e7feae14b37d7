import type { Finding } from './finding.ts'

/** What a thread for reviews is asked. */
export type ReviewQuestion =
  /** What there is to look at in the workbook. */
  | { readonly kind: 'findings' }
  /** Which template it is like. */
  | { readonly kind: 'template' }

export interface ReviewRequest {
  /** Its number, which all news of it bear. */
  readonly id: number
  readonly question: ReviewQuestion
  /** The workbook comes in here, with its values. */
  readonly port: MessagePort
  /** The workbook files of the templates: with the first request of a thread, which keeps what it has read of them. */
  readonly templates?: readonly Blob[]
}

/** A kind of finding, as a list of them is headed. */
export interface LookedFor {
  readonly kind: string
  readonly heading: string
  readonly about: string
}

/** News come as often as the work allows; `found`, `template` or `fault` is the last. */
export type ReviewNews = { readonly id: number } & (
  | { readonly kind: 'share'; readonly share: number }
  | { readonly kind: 'findings part'; readonly findings: readonly Finding[] }
  | { readonly kind: 'found'; readonly lookedFor: readonly LookedFor[]; readonly template: string | undefined }
  | { readonly kind: 'template'; readonly title: string | undefined }
  | { readonly kind: 'fault'; readonly words: string }
)
