/**
 * Relative difference by which two equal quantities may differ once converted from different units: 3 ft and 36 in, 40 psia and its kPa.
 * A bound is met within it.
 */
export const ROUNDING = 1e-12
