import { formatNumber } from '../workbook/number-format.ts'
import { fromSi } from '../../functions/units/convert.ts'
import type { Unit } from '../../functions/units/units.ts'

/** A number with its unit, as a cell has it. */
export interface Quantity {
  /** Pressures absolute, temperatures in K. */
  readonly si: number
  readonly unit: Unit
  /** As its cell shows it, with the unit. */
  readonly shown: string
}

/** What each kind of part comes to; a gap in a list is a cell that gives nothing. */
interface Held {
  readonly text: string
  readonly number: number
  readonly quantity: Quantity
  readonly texts: readonly (string | undefined)[]
  readonly numbers: readonly (number | undefined)[]
  readonly quantities: readonly (Quantity | undefined)[]
  readonly truths: readonly (boolean | undefined)[]
}

export type PartValue = { readonly [Holds in keyof Held]: { readonly holds: Holds; readonly value: Held[Holds] } }[keyof Held]

/** What the parts of a figure hold; the required ones are all there. */
export interface FigureValues {
  readonly parts: ReadonlyMap<string, PartValue>
  /** Atmospheric pressure at the site, if the figure is told of it. */
  readonly sitePa: number | undefined
  /** What is not drawn and why, a sentence each. */
  readonly remarks: readonly string[]
}

/** The value of a part, undefined where it is bound to nothing. */
export function part<Holds extends keyof Held>({ parts }: FigureValues, name: string, holds: Holds): Held[Holds] | undefined {
  const found = parts.get(name)
  // The comparison has told which of the values it is; a union cannot follow that.
  return found?.holds === holds ? (found.value as Held[Holds]) : undefined
}

/** The value of a part that no figure is drawn without. */
export function requiredPart<Holds extends keyof Held>(values: FigureValues, name: string, holds: Holds): Held[Holds] {
  const found = part(values, name, holds)
  if (found === undefined) throw new Error(`a figure without its ${name} is not drawn`)
  return found
}

/** An SI value in a unit, in so many digits. */
export const shownIn = (si: number, unit: Unit, sitePa: number | undefined, digits = 4): string => withUnit(formatNumber(fromSi(si, unit, sitePa), { digits }), unit)

export const withUnit = (number: string, { code }: Unit): string => (code === '-' ? number : `${number} ${code}`)
