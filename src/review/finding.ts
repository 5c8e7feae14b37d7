import type { Area } from '../workbook/address.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import type { Edit } from '../workbook/edits.ts'
import type { AcceptedFinding } from '../workbook/review-record.ts'
import type { Survey } from './survey.ts'

/** An error makes a number missing or a limit broken; a warning is likely wrong; a remark is something to know before one signs. */
export type Severity = 'error' | 'warning' | 'remark'

/** Something to look at before a workbook is relied on. Plain data: it crosses to other threads. */
export interface Found {
  readonly severity: Severity
  readonly sheet: string
  /** The cells that have it, next to each other and for the same reason. */
  readonly area: Area
  /** One or two sentences for the reviewer: what is so, and which cells cause it. Without the label and address of the cell itself. */
  readonly reason: string
  /** What of it is accepted when it is accepted: a short text that changes as the fault does. Without addresses, so that inserted rows change nothing. */
  readonly key: string
  /** Other cells that cause it or have to do with it. */
  readonly causes?: readonly CellPlace[]
  readonly mend?: Mend
}

/** A way to put it right that the workbook allows for: offered, never done unasked. */
export interface Mend {
  /** What is done, for a button: "Put the template’s formula back". */
  readonly words: string
  readonly edits: readonly Edit[]
}

export interface Finding extends Found {
  readonly kind: string
  /** What the first cell is called: the words beside it. */
  readonly label: string | undefined
  /** Where the workbook holds that someone has accepted it. */
  readonly accepted?: AcceptedFinding
}

/** One kind of finding: a file of its own in `kinds/`, with its own tests. */
export interface FindingKind {
  /** Kebab case; stands in files with what is accepted. */
  readonly kind: string
  /** As the heading of a list: "Cells with errors". */
  readonly heading: string
  /** Why one looks for it, and what is not looked at. A sentence or two. */
  readonly about: string
  readonly find: (survey: Survey) => Iterable<Found>
}
