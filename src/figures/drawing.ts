import type { Figure } from '../workbook/figure.ts'
import type { Faults } from './read-parts.ts'
import type { Scene } from './scene.ts'
import type { FigureValues } from './values.ts'

/** The numbers of a drawing, for whoever reads rather than looks. */
export interface FigureTable {
  readonly head: readonly string[]
  readonly rows: readonly (readonly string[])[]
}

export interface Drawing {
  readonly scene: Scene
  /** What is to be seen, with its numbers, in sentences. */
  readonly description: string
  readonly table: FigureTable
  /** What is not drawn, or not as it is, and why. */
  readonly remarks: readonly string[]
}

/** How a kind of figure is drawn, `widthPx` wide; pure. Numbers that make no such picture give faults. */
export type Draw = (figure: Figure, values: FigureValues, widthPx: number) => Drawing | Faults

/** Narrower than this nothing is drawn: it is scrolled then. */
export const LEAST_WIDTH = 320
