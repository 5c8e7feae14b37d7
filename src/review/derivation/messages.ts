import type { Pages } from '../../pages/pages.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import type { ReportSettings } from '../../workbook/report-settings.ts'
import type { Derivation } from './derivation.ts'

/** What a thread for derivations is asked. The pages come to print, and as a file. */
export type DerivationQuestion =
  | { readonly kind: 'derivation'; readonly results: readonly CellPlace[] }
  | { readonly kind: 'report'; readonly results: readonly CellPlace[]; readonly settings: ReportSettings; readonly date: string; readonly unfold: boolean }
  | { readonly kind: 'hand'; readonly results: readonly CellPlace[]; readonly settings: ReportSettings; readonly date: string; readonly blind: boolean }

export interface DerivationRequest {
  readonly question: DerivationQuestion
  /** Where the workbook and its values come in. */
  readonly port: MessagePort
}

export interface PagesAnswer {
  readonly report: Pages
  /** The same as one HTML file. */
  readonly file: string
}

export type DerivationAnswer = { readonly derivation: Derivation } | { readonly pages: PagesAnswer } | { readonly fault: string }
