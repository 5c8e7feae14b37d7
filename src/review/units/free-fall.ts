import { STANDARD_GRAVITY } from '../../../functions/units/constants.ts'
import { ACCELERATION, sameDimension, times, type Dimension } from './dimension.ts'
import { sameFactor, type Quantity } from './meaning.ts'

/** Free fall as people type it, with the m/s² of its unit: 9.81 m/s², 32.174 ft/s². */
const TYPED = [[9.81, 1], [32.17, 0.3048]] as const

/**
 * What a quantity is as a weight, where it is a mass: ρ·h as a pressure. Free fall stands among its numbers, or it is left out, as is
 * usual in pounds and pounds-force: ρ·h in lb/ft3 and ft over 144 is in psi. Undefined where free fall does not make one of the other.
 */
export function asWeight(quantity: Quantity, dimension: Dimension): { readonly quantity: Quantity; readonly isTyped: boolean } | undefined {
  const exponent = [1, -1, 0.5, -0.5].find((one) => sameDimension(times(quantity.dimension, ACCELERATION, one), dimension))
  if (exponent === undefined) return undefined
  const { constants, factor } = quantity
  for (const [gravity, size] of TYPED) {
    const at = constants.findIndex((constant) => sameFactor(constant, gravity ** exponent, 2e-3))
    if (at >= 0) return { quantity: { ...quantity, dimension, factor: factor * size ** exponent, constants: constants.toSpliced(at, 1) }, isTyped: true }
  }
  return { quantity: { ...quantity, dimension, factor: factor * STANDARD_GRAVITY ** exponent }, isTyped: false }
}
