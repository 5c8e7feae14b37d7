/**
 * Means along a coil in which quality rises linearly from 0 to that of the outlet, in closed form
 * (a test holds each against numerical integration).
 */

/**
 * Mean void fraction where vapour runs `slip` times as fast as liquid, whatever the quality (homogeneous flow: 1; Zivi: the cube
 * root of the density ratio). With k = S ρV/ρL the void fraction is x/[k + (1 − k) x].
 */
export function meanVoidFraction(slip: number, vaporToLiquidDensity: number, outletQuality: number): number {
  const k = slip * vaporToLiquidDensity
  const rest = 1 - k
  return 1 / rest - (k / (rest ** 2 * outletQuality)) * Math.log1p((rest * outletQuality) / k)
}

/**
 * Mean friction gradient by Müller-Steinhagen & Heck from the gradients of the whole flow as liquid and as vapour:
 * the mean of [A + 2 (B − A) x] (1 − x)^(1/3) + B x³.
 */
export function meanFrictionGradient(allLiquid: number, allVapor: number, outletQuality: number): number {
  const u = 1 - outletQuality
  const ofRoot = (3 / 4) * (1 - u ** (4 / 3)) // ∫ (1 − x)^(1/3) dx
  const ofProduct = ofRoot - (3 / 7) * (1 - u ** (7 / 3)) // ∫ x (1 − x)^(1/3) dx
  return (allLiquid * ofRoot + 2 * (allVapor - allLiquid) * ofProduct) / outletQuality + (allVapor / 4) * outletQuality ** 3
}
