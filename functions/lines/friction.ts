/** Roughness of commercial steel pipe, m: 0.00015 ft (Moody 1944). */
export const STEEL_ROUGHNESS_M = 0.00015 * 0.3048

/** The roughest pipe of Moody's chart (1944), to which the laws here are held. */
export const GREATEST_RELATIVE_ROUGHNESS = 0.05

/** Darcy friction factor by Churchill, Chemical Engineering 84 (24), 91 (1977): laminar, transitional and turbulent. Reynolds above 0. */
export const frictionFactor = (reynolds: number, relativeRoughness: number): number => frictionTimesReynolds(reynolds, relativeRoughness) / reynolds

/** Darcy friction factor where it no longer depends on the flow. Relative roughness above 0. */
export const fullyRoughFrictionFactor = (relativeRoughness: number): number => (-2 * Math.log10(relativeRoughness / 3.7)) ** -2

/** Pressure lost to friction for a length, Pa/m, at a mass flux, kg/(m2 s), of 0 or more. */
export function frictionGradient(massFlux: number, boreM: number, roughnessM: number, densityKgPerM3: number, viscosityPaS: number): number {
  const product = frictionTimesReynolds((massFlux * boreM) / viscosityPaS, roughnessM / boreM)
  return (product * viscosityPaS * massFlux) / (2 * densityKgPerM3 * boreM ** 2)
}

/** Churchill's f with Re taken out as a factor: 64 in laminar flow, and finite where the flow dies away. */
function frictionTimesReynolds(reynolds: number, relativeRoughness: number): number {
  const a = (-2.457 * Math.log((7 / reynolds) ** 0.9 + 0.27 * relativeRoughness)) ** 16
  const b = (37530 / reynolds) ** 16
  return 64 * (1 + (a + b) ** -1.5 * (reynolds / 8) ** 12) ** (1 / 12)
}
