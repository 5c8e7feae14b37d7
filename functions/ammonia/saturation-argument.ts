import { quantity } from '../arguments.ts'

/** A saturation temperature: every property of saturated ammonia is computed within this range. */
export const saturationTemperatureArgument = (words: string) =>
  quantity('temperature', words, { min: 195.55, max: 373.15, limit: 'from just above the triple point to 100 °C, Gao et al. 2023' })
