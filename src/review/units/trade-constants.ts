import { sameDimension, times, type Dimension } from './dimension.ts'
import { unitQuantity } from './known-unit.ts'
import { sameFactor, type Quantity } from './meaning.ts'

/**
 * Numbers that look like a count, a margin or a conversion and have a unit in the formulas of the trade. Practice, from memory, but for the
 * first two: they excuse a formula, and compute nothing.
 */
const TABLE: readonly (readonly [number: number, unit: string])[] = [
  // f of f·D·L, air by vessel size: ANSI/ASHRAE 15 and ISO 5149 as domain.md 8.2 has them.
  [0.5, 'lb/(min·ft2)'], [0.04, 'kg/(s·m2)'], [0.041, 'kg/(s·m2)'], [0.0407, 'kg/(s·m2)'],
  // Air: its density, and what a flow of it carries.
  [1.2, 'kg/m3'], [1.1, 'Btu/(h·cfm·°F)'], [4.5, 'lb/(h·cfm)'],
  // Water: its density and specific heat; 24 gpm·°F are a ton of refrigeration.
  [1000, 'kg/m3'], [1, 'kg/L'], [1, 'Btu/(lb·°F)'], [1 / 24, 'TR/(gpm·°F)'], [500, 'Btu/(h·gpm·°F)'],
  // Water from ice and back.
  [144, 'Btu/lb'], [0.5, 'Btu/(lb·°F)'],
]

/** Whether a number, in a cell without unit or with "-" for one, may be such a constant. */
export const isTradeConstant = (value: number): boolean => value !== 1 && TABLE.some(([number]) => sameFactor(number, value))

/** What a quantity is with one of its numbers read as such a constant; of nothing where none makes it this dimension. */
export function withTradeConstant(quantity: Quantity, dimension: Dimension): readonly Quantity[] {
  return TABLE.flatMap(([number, text]) => {
    const unit = unitQuantity(text)
    const isIt = (constant: number): boolean => sameFactor(constant, number)
    const [at, atGiven] = [quantity.constants.findIndex(isIt), quantity.given?.findIndex(isIt) ?? -1]
    if (unit === undefined || (at < 0 && atGiven < 0) || !sameDimension(times(quantity.dimension, unit.dimension), dimension)) return []
    return [{ ...quantity, dimension, factor: quantity.factor * unit.factor, constants: at < 0 ? quantity.constants : quantity.constants.toSpliced(at, 1) }]
  })
}
