/**
 * One spelling for the ways people type the same unit: ft³, ft^3 and ft3; µ and μ; Δ and ∆; kg/(m²·s) and kg/(m2.s); ºF and ℉.
 * Capitals are kept, since MPa·s and mPa·s differ by them.
 */
export const normaliseUnitText = (text: string): string =>
  text
    .replace(/[º˚]/g, '°')
    .normalize('NFKC') // superscripts to digits, ℉ to °F, µ (micro sign) to μ (Greek)
    .replace(/\u2206/g, 'Δ')
    .replace(/[·⋅∙•‧・*.]/g, '.')
    .replace(/\^/g, '')
    .replace(/\s+/g, ' ')
    .trim()
    .replace(/° (?=[FCR])/g, '°')
