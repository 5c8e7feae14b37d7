/** N6 of IEC 60534-2-1 for Kv with kg/h and bar; with Cv it would be 27.3, with kPa 3.16. */
const N6 = 31.6

/** Expansion factor Y at a ratio of pressure drop to inlet pressure; 2/3 where the flow chokes, and beyond. */
export const expansionFactor = (dropRatio: number, chokeRatio: number): number => 1 - Math.min(dropRatio, chokeRatio) / (3 * chokeRatio)

/** Flow coefficient Kv, m3/h at 1 bar, of turbulent vapour of that density at the inlet; `limitingRatio` is xT, `gamma` the ratio of heat capacities. */
export function vaporFlowCoefficient(massFlowKgPerS: number, inletPa: number, densityKgPerM3: number, dropPa: number, limitingRatio: number, gamma: number): number {
  const chokeRatio = (gamma / 1.4) * limitingRatio
  const ratio = Math.min(dropPa / inletPa, chokeRatio)
  return (massFlowKgPerS * 3600) / (N6 * expansionFactor(ratio, chokeRatio) * Math.sqrt(ratio * (inletPa / 1e5) * densityKgPerM3))
}
