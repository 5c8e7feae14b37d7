import type { Workbook } from '../../src/workbook/document.ts'

/** The templates that make up the plant, in the order of the job. */
export const TEMPLATE_ORDER = [
  'basis', 'zone-setpoints', 'vessel-sizing', 'head-circulation', 'feed-valves', 'suction-accumulator', 'relief', 'charge-inventory',
  'feed-comparison', 'interlocks', 'saturation-table',
] as const

/** Every template brings these two for itself; the plant has one of each: the basis of the template `basis`, and the cautions of all. */
export const BASIS = 'Basis'
export const CAUTIONS = 'Cautions'

export interface NamedTemplate {
  readonly name: string
  readonly workbook: Workbook
}

/** The sheets that a template adds to the plant. */
export const ownSheets = ({ name, workbook }: NamedTemplate) =>
  workbook.sheets.filter((sheet) => sheet.name !== CAUTIONS && (sheet.name !== BASIS || name === 'basis'))
