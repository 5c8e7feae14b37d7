import { saturationPressure, saturationRange, saturationTemperature } from '../ammonia/saturation.ts'

/** The greatest loss, Pa, that leaves a pressure within the property range. */
export const greatestLoss = (temperatureK: number): number => saturationPressure(temperatureK) - saturationRange.minPa

/** Fall of the saturation temperature, K, over a pressure loss from 0 to {@link greatestLoss}. */
export const linePenalty = (temperatureK: number, lossPa: number): number =>
  temperatureK - saturationTemperature(saturationPressure(temperatureK) - lossPa)
