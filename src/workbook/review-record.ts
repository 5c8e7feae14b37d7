import type { Area } from './address.ts'
import type { HeldContent } from './cases.ts'
import type { CellPlace } from './cell-place.ts'

/** What reviewers have left in a workbook. */
export interface Review {
  readonly marks: readonly CheckMark[]
  readonly accepted: readonly AcceptedFinding[]
  readonly record: readonly RecordEntry[]
}

export const CHECK_METHODS = ['by hand', 'other tool', 'inspection'] as const

/** How something was checked. */
export type CheckMethod = (typeof CHECK_METHODS)[number]

/** Someone has checked cells, their formulas and all that feeds them. */
export interface CheckMark {
  /** Of its own in the workbook: what the record calls it. */
  readonly id: string
  readonly sheet: string
  /** The cells that are checked; a whole sheet has none. */
  readonly area: Area | null
  /** All cells of the area were taken away; it is where it was then. */
  readonly gone?: true
  readonly by: string
  /** ISO 8601, to the second, UTC. */
  readonly at: string
  /** The case whose values the cells held; absent for the base. */
  readonly inCase?: string
  readonly method: CheckMethod
  readonly note: string
  /** What stood in the cells, and in all upstream of them, units too, when they were checked. Follows rows and sheets as references do. */
  readonly covers: readonly CoveredCell[]
  /** The defined names that formulas of them use, with what they stood for: reference text, which follows too. */
  readonly names: readonly (readonly [name: string, refersTo: string])[]
  /** What came out in the marked cells that have formulas. */
  readonly values: readonly CheckedValue[]
}

/** A cell that held something. That others, which formulas refer to, were empty is known by their not being here. */
export interface CoveredCell extends CellPlace, HeldContent {
  /** The cell was taken away, or overwritten by cells that were moved; its place is where it was then. */
  readonly gone?: true
}

export interface CheckedValue extends CellPlace {
  /** A number to 12 digits; of an error its sign such as "#N/A". */
  readonly value: number | string | boolean | null
  /** As of a cell covered. */
  readonly gone?: true
}

/** A finding that someone has looked at and lets stand, with the reason. */
export interface AcceptedFinding {
  /** The kind of finding, as `FindingKind.kind`. */
  readonly kind: string
  readonly sheet: string
  /** It counts for findings of the kind and key within these cells. */
  readonly area: Area
  readonly key: string
  readonly note: string
  /** Absent of what came accepted with a template. */
  readonly by?: string
  /** ISO 8601, to the second, UTC; with `by`. */
  readonly at?: string
}

/** `mark changed`: what it covers was restated in other units with its cells, or cells of it are gone. */
export const RECORDED = ['marked', 'mark changed', 'mark withdrawn', 'finding accepted', 'acceptance withdrawn'] as const

/** One line of the record: nothing is ever taken out of it, and each holds the hash of the one before. */
export interface RecordEntry {
  readonly what: (typeof RECORDED)[number]
  /** The mark's id, or of a finding its kind. */
  readonly of: string
  /** Where, as it was called then: `Duty!C5:C9`, a sheet. */
  readonly place: string
  /** Empty where nobody in particular did it, as in restating. */
  readonly by: string
  /** ISO 8601, to the second, UTC. */
  readonly at: string
  /** Method and note, or the note with which a finding was accepted. */
  readonly words: string
  /** SHA-256, hex, of all that the mark or the acceptance says but where it stands, which follows rows and sheets; empty where a mark is withdrawn. */
  readonly holds: string
  /** SHA-256, hex, of the entry before and this one; the first follows an empty text. */
  readonly hash: string
}

export const NO_REVIEW: Review = { marks: [], accepted: [], record: [] }
