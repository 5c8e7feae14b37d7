import type { Role } from '../../workbook/document.ts'

/** What a cell of a file is for: a role of the workbook, or a part of the workings. */
export type Look = Role | 'header' | 'header unit' | 'given' | 'step' | 'outcome' | 'table' | 'line'

export interface CellStyle {
  readonly look: Look
  /** A number format's code; General where absent. */
  readonly format?: string
  readonly wrap?: boolean
}

/** How a cell looks, whatever the format of the file: colours as six digits, sizes in points. */
export interface LookParts {
  readonly font?: FontParts
  readonly fill?: string
  readonly border?: keyof typeof BORDERS
  /** What is written in several lines stands at the bottom. */
  readonly header?: true
  /** What is typed here changes nothing but a value: the cell is not protected. */
  readonly unlocked?: true
}

export interface FontParts {
  readonly size?: number
  readonly color?: string
  readonly bold?: true
  readonly italic?: true
}

/** The font of a cell of which nothing else is said. */
export const PLAIN_FONT = { name: 'Arial', size: 10, color: '1F2933' } as const

export const BORDERS = {
  below: { sides: ['bottom'], color: '8A97A6' },
  box: { sides: ['left', 'right', 'top', 'bottom'], color: 'B9A15A' },
} as const satisfies Readonly<Record<string, { readonly sides: readonly Side[]; readonly color: string }>>

export type Side = 'left' | 'right' | 'top' | 'bottom'

/** A check that is not met. */
export const NOT_MET = { font: { bold: true, color: '8A1C1C' }, fill: 'FBE3E0' } as const

/** Print first: pale fills, no colour that alone carries a meaning. */
export const LOOKS: Readonly<Record<Look, LookParts>> = {
  title: { font: { size: 14, bold: true } },
  heading: { font: { bold: true }, border: 'below' },
  label: {},
  input: { font: { color: '123A7A' }, fill: 'FFF7DC', border: 'box', unlocked: true },
  unit: { font: { color: '5A6675' } },
  result: { font: { bold: true } },
  check: { fill: 'EEF3EC' },
  note: { font: { italic: true, color: '5A6675' } },
  text: {},
  header: { font: { bold: true }, fill: 'E8ECF1', header: true },
  'header unit': { font: { color: '5A6675' }, fill: 'E8ECF1', border: 'below' },
  given: { fill: 'F6F8FA' },
  step: {},
  outcome: { font: { bold: true }, fill: 'EEF3EC' },
  table: {},
  line: { border: 'below' },
}
