import coefficients from './coefficients.json' with { type: 'json' }
import { molarMass } from './equation-of-state.ts'

const { viscosity: fenghour, surfaceTension: mulero } = coefficients

/**
 * Viscosity of ammonia, Pa s, by Fenghour, Wakeham, Vesovic, Watson, Millat and Vogel,
 * J. Phys. Chem. Ref. Data 24, 1649 (1995): dilute gas, initial density dependence, and dense-fluid excess.
 *
 * @param temperatureK about 196 to 680 K
 * @param densityKgPerM3 0 or more, up to the density of 50 MPa
 */
export function viscosity(temperatureK: number, densityKgPerM3: number): number {
  const reducedTemperature = temperatureK / fenghour.energyK
  const molPerLitre = densityKgPerM3 / molarMass / 1000
  const size = fenghour.sigmaNm

  const collision = Math.exp(polynomial(fenghour.a, Math.log(reducedTemperature)))
  const dilute = (fenghour.factor * Math.sqrt(fenghour.molarMassGPerMol * temperatureK)) / (size * size * collision)
  const initialSlope =
    fenghour.avogadroPerNm3L * size ** 3 * polynomial(fenghour.b, 1 / Math.sqrt(reducedTemperature))
  const excess = fenghour.d.reduce(
    (sum, { i, j, value }) => sum + (value * molPerLitre ** i) / reducedTemperature ** j,
    0,
  )
  const microPascalSeconds = dilute * (1 + initialSlope * molPerLitre) + excess
  return microPascalSeconds * 1e-6
}

/**
 * Surface tension of saturated ammonia, N/m, by Mulero, Cachadiña and Parra,
 * J. Phys. Chem. Ref. Data 41, 043105 (2012). Its critical temperature is 405.4 K, below the
 * 405.56 K of the equation of state: 0 from there on.
 *
 * @param temperatureK 195.49 K (triple point) or more
 */
export function surfaceTension(temperatureK: number): number {
  const theta = 1 - temperatureK / mulero.criticalK
  if (theta <= 0) return 0
  let sum = 0
  for (const { s, n } of mulero.terms) sum += s * theta ** n
  return sum
}

function polynomial(ascending: number[], x: number): number {
  return ascending.reduceRight((sum, factor) => sum * x + factor, 0)
}
