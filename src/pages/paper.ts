import type { Paper } from '../workbook/report-settings.ts'

export type Orientation = 'portrait' | 'landscape'

const INCH = 96
const MM = 96 / 25.4

/** Short and long side in CSS px, 96 to the inch (ISO 216 for A4, ANSI/ASME Y14.1 for Letter). */
const SIDES: Readonly<Record<Paper, readonly [short: number, long: number]>> = {
  Letter: [8.5 * INCH, 11 * INCH],
  A4: [210 * MM, 297 * MM],
}

/** Left and right of what is printed, each, in CSS px. */
export const SIDE_MARGIN = 0.65 * INCH

/** Width of what is printed on a page, in CSS px. */
export function printableWidth(paper: Paper, orientation: Orientation): number {
  const [short, long] = SIDES[paper]
  return (orientation === 'portrait' ? short : long) - 2 * SIDE_MARGIN
}

/** Top and bottom of what is printed together, with what is printed in them, in CSS px. */
export const HEIGHT_OF_MARGINS = 1.55 * INCH

/** Height of what is printed on a page, in CSS px. */
export function printableHeight(paper: Paper, orientation: Orientation): number {
  const [short, long] = SIDES[paper]
  return (orientation === 'portrait' ? long : short) - HEIGHT_OF_MARGINS
}
