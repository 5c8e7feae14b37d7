import type { Margin, Margins, MarginsReady } from './margins.ts'
import type { CellPlace } from '../workbook/cell-place.ts'
import type { Watched } from './probe.ts'
import type { Solved } from './solve.ts'
import type { Spacing } from './spacing.ts'
import type { SweepAxis, SweepLimit, SweepPoint } from './sweep.ts'

/** What a thread for what-if work is asked. Units go by their codes. */
export type WhatIfQuestion = SolveQuestion | SweepQuestion | MarginsQuestion

export interface SolveQuestion {
  readonly kind: 'solve'
  readonly by: CellPlace
  readonly target: CellPlace
  /** What it should come to, in the unit of its cell or in another; left out, a check is to just hold. */
  readonly goal?: { readonly number: number; readonly unit?: string }
  readonly within?: { readonly from: number; readonly to: number }
}

export interface SweepQuestion {
  readonly kind: 'sweep'
  readonly vary: readonly { readonly place: CellPlace; readonly spacing: Spacing; readonly unit?: string }[]
  readonly watch: readonly CellPlace[]
  /** Every check that hangs on what is varied is watched too. */
  readonly allChecks: boolean
}

/** With the tolerances that the workbook keeps. */
export interface MarginsQuestion {
  readonly kind: 'margins'
  readonly target: CellPlace
}

export type WhatIfKind = WhatIfQuestion['kind']

/** One varied input as it turned out, with its numbers in the unit of its cell as well. */
export interface AxisToPut extends SweepAxis {
  readonly inCell: readonly number[]
}

/** What a sweep is before its first point. */
export interface SweepBegun {
  readonly axes: readonly AxisToPut[]
  readonly watched: readonly Watched[]
  readonly count: number
  /** Inputs that the watched cells hang on and that are not varied. */
  readonly held: readonly HeldInput[]
  /** Checks that hang on what is varied and are not watched, since they are too many. */
  readonly unwatched: number
}

export interface HeldInput extends CellPlace {
  readonly label: string | undefined
  readonly value: number | string | boolean
  readonly unitText: string | undefined
}

export interface WhatIfRequest {
  readonly question: WhatIfQuestion
  /** The workbook comes in here. */
  readonly port: MessagePort
}

/** News come as often as the work allows; `done` or `fault` is the last. */
export type WhatIfNews =
  | { readonly kind: 'solved'; readonly solved: Solved }
  | { readonly kind: 'sweep begun'; readonly begun: SweepBegun }
  | { readonly kind: 'sweep part'; readonly points: readonly SweepPoint[]; readonly limits: readonly SweepLimit[] }
  | { readonly kind: 'margins begun'; readonly target: Watched; readonly base: number; readonly inputs: MarginsReady['inputs'] }
  | { readonly kind: 'margins part'; readonly found: readonly Margin[] }
  | { readonly kind: 'margins'; readonly margins: Margins }
  | { readonly kind: 'done' }
  | { readonly kind: 'fault'; readonly words: string }
