import coefficients from './coefficients.json' with { type: 'json' }

const { reducing, ideal, residual } = coefficients.equationOfState

/**
 * A reduced Helmholtz energy and its derivatives, each multiplied by the powers of
 * delta and tau that make it dimensionless: `ddt` is delta·tau·∂²alpha/∂delta∂tau.
 */
export interface ReducedEnergy {
  value: number
  d: number
  t: number
  dd: number
  dt: number
  tt: number
}

/**
 * Ideal part of the reduced Helmholtz energy of ammonia, A0/(R·T).
 *
 * @param tau reducing temperature over temperature
 * @param delta molar density over reducing density; at 0 the value is -Infinity, the tau derivatives stay finite
 * Source: Gao et al. 2023, see coefficients.json.
 */
export function idealEnergy(tau: number, delta: number): ReducedEnergy {
  let value = Math.log(delta) + ideal.a1 + ideal.a2 * tau + ideal.c * Math.log(tau)
  let t = ideal.a2 * tau + ideal.c
  let tt = -ideal.c
  for (const { v, thetaK } of ideal.einstein) {
    const x = (thetaK / reducing.temperatureK) * tau
    const occupation = 1 / Math.expm1(x)
    value += v * Math.log(-Math.expm1(-x))
    t += v * x * occupation
    tt -= v * x * x * occupation * (1 + occupation)
  }
  return { value, d: 1, t, dd: -1, dt: 0, tt }
}

/**
 * Residual part of the reduced Helmholtz energy of ammonia, Ar/(R·T).
 *
 * @param tau reducing temperature over temperature
 * @param delta molar density over reducing density, 0 or more
 * Source: Gao et al. 2023, see coefficients.json.
 */
export function residualEnergy(tau: number, delta: number): ReducedEnergy {
  const sum: ReducedEnergy = { value: 0, d: 0, t: 0, dd: 0, dt: 0, tt: 0 }

  for (const { n, d, t, l } of residual.power) {
    const decay = l > 0 ? delta ** l : 0
    addTerm(sum, n * delta ** d * tau ** t * Math.exp(-decay), d - l * decay, -l * l * decay, t, 0)
  }

  for (const { n, d, t, eta, beta, gamma, epsilon } of residual.gaussian) {
    const fromDelta = delta - epsilon
    const fromTau = tau - gamma
    addTerm(
      sum,
      n * delta ** d * tau ** t * Math.exp(-eta * fromDelta * fromDelta - beta * fromTau * fromTau),
      d - 2 * eta * delta * fromDelta,
      -2 * eta * delta * (delta + fromDelta),
      t - 2 * beta * tau * fromTau,
      -2 * beta * tau * (tau + fromTau),
    )
  }

  for (const { n, d, t, eta, beta, gamma, epsilon, b } of residual.associating) {
    const fromDelta = delta - epsilon
    const fromTau = tau - gamma
    const width = b + beta * fromTau * fromTau
    const slope = (-2 * beta * tau * fromTau) / (width * width)
    addTerm(
      sum,
      n * delta ** d * tau ** t * Math.exp(-eta * fromDelta * fromDelta + 1 / width),
      d - 2 * eta * delta * fromDelta,
      -2 * eta * delta * (delta + fromDelta),
      t + slope,
      slope + (-2 * beta * tau * tau) / (width * width) + 2 * slope * slope * width,
    )
  }
  return sum
}

/**
 * Every term is a product of a function of delta and one of tau, so all its derivatives follow
 * from the logarithmic ones: P = delta·∂ln(term)/∂delta and Q = tau·∂ln(term)/∂tau,
 * and how these change, delta·dP/ddelta and tau·dQ/dtau.
 */
function addTerm(sum: ReducedEnergy, term: number, p: number, pChange: number, q: number, qChange: number): void {
  sum.value += term
  sum.d += term * p
  sum.t += term * q
  sum.dd += term * (p * p - p + pChange)
  sum.dt += term * p * q
  sum.tt += term * (q * q - q + qChange)
}
