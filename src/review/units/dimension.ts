import type { Dimension as Named } from '../../../functions/units/units.ts'

/** Exponents of kilogram, metre, second, kelvin and money. */
export type Dimension = readonly [kg: number, m: number, s: number, K: number, money: number]

export const NO_DIMENSION: Dimension = [0, 0, 0, 0, 0]
export const MONEY: Dimension = [0, 0, 0, 0, 1]
export const ACCELERATION: Dimension = [0, 1, -2, 0, 0]

/** `one × other^exponent` */
export const times = (one: Dimension, other: Dimension, exponent = 1): Dimension => [
  one[0] + other[0] * exponent, one[1] + other[1] * exponent, one[2] + other[2] * exponent, one[3] + other[3] * exponent, one[4] + other[4] * exponent,
]

export const toPower = (one: Dimension, exponent: number): Dimension => times(NO_DIMENSION, one, exponent)

/** Roots leave thirds and halves, hence the margin. */
export const sameDimension = (one: Dimension, other: Dimension): boolean => one.every((exponent, base) => Math.abs(exponent - (other[base] ?? 0)) < 1e-6)

export const isDimensionless = (one: Dimension): boolean => sameDimension(one, NO_DIMENSION)
export const isTemperature = (one: Dimension): boolean => sameDimension(one, NAMED.temperature)
export const isPressure = (one: Dimension): boolean => sameDimension(one, NAMED.pressure)

/** What it is called: "a pressure"; undefined of what has no name. */
export function dimensionWords(one: Dimension): string | undefined {
  if (isDimensionless(one)) return 'a number without unit'
  if (sameDimension(one, MONEY)) return 'money'
  const name = (Object.keys(NAMED) as Named[]).find((named) => sameDimension(NAMED[named], one))
  return name === undefined ? undefined : `${/^[aeiou]/.test(name) ? 'an' : 'a'} ${name}`
}

export const dimensionOf = (name: Named): Dimension => NAMED[name]

/**
 * A flow coefficient is a flow over the root of a pressure (IEC 60534: water, whose relative density is 1), so that its definition,
 * Q·√(relative density / Δp), comes out as one.
 */
const NAMED: Readonly<Record<Named, Dimension>> = {
  'temperature': [0, 0, 0, 1, 0],
  'temperature difference': [0, 0, 0, 1, 0],
  'pressure': [1, -1, -2, 0, 0],
  'length': [0, 1, 0, 0, 0],
  'area': [0, 2, 0, 0, 0],
  'volume': [0, 3, 0, 0, 0],
  'mass': [1, 0, 0, 0, 0],
  'mass flow': [1, 0, -1, 0, 0],
  'volume flow': [0, 3, -1, 0, 0],
  'velocity': [0, 1, -1, 0, 0],
  'density': [1, -3, 0, 0, 0],
  'specific volume': [-1, 3, 0, 0, 0],
  'energy per mass': [0, 2, -2, 0, 0],
  'power': [1, 2, -3, 0, 0],
  'viscosity': [1, -1, -1, 0, 0],
  'surface tension': [1, 0, -2, 0, 0],
  'flow coefficient': [-0.5, 3.5, 0, 0, 0],
  'pressure per temperature difference': [1, -1, -2, -1, 0],
  'specific charge': [0, -2, 3, 0, 0],
  'heat flux': [1, 0, -3, 0, 0],
  'mass flux': [1, -2, -1, 0, 0],
  'time': [0, 0, 1, 0, 0],
  'share': [0, 0, 0, 0, 0],
}
