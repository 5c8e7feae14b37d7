import type { AreaValues, SheetState } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import type { Reviewed } from '../review/reviewed.ts'
import type { ReportSettings } from '../workbook/report-settings.ts'

export interface ReportInput {
  readonly workbook: Workbook
  /** By sheet name, from A1: a printed sheet whole, any other as far down and right as it has checks and what figures show. */
  readonly values: ReadonlyMap<string, AreaValues>
  readonly states: readonly SheetState[]
  /** The sheets to print, by name. */
  readonly sheets: ReadonlySet<string>
  readonly settings: ReportSettings
  /** As it is to be printed. */
  readonly date: string
  /** The text of figures.css, which each surrounding reads in its own way. */
  readonly figureStyle: string
  /** Absent where findings were not looked for: the report says so. */
  readonly reviewed?: Reviewed
}

/** Of a sheet of which nothing is known. */
export const NO_VALUES: AreaValues = { values: [], checks: new Map() }
