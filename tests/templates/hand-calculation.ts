/**
 * The demo's totals worked out a second time, without anything of Lowside: compact saturation equations (Gao et al. ancillary
 * equations as CoolProp 8.0.0 carries them; within 0.05 % of the full equation of state), closed forms of vessel volumes
 * (Jones, Calculating Tank Volume, 2003), NIST SP 811 factors, ISO 2533 for the barometer.
 */

const TC = 405.56
const MOLAR = 13_696 * 0.01703052
const GRAVITY = 9.80665

export const KELVIN = (fahrenheit: number): number => (fahrenheit + 459.67) / 1.8
export const FAHRENHEIT = (kelvin: number): number => kelvin * 1.8 - 459.67
export const POUND_KG = 0.45359237
export const PSI_PA = 6894.757

export const saturationPressure = (kelvin: number): number => {
  const th = 1 - kelvin / TC
  return 11_365_000 * Math.exp((TC / kelvin) * (-7.2257 * th + 1.4263 * th ** 1.5 - 0.59642 * th ** 2 - 2.798 * th ** 3.6 - 3.7869 * th ** 15.5))
}

export const liquidDensity = (kelvin: number): number => {
  const th = 1 - kelvin / TC
  return MOLAR * (1 + 2.447 * th ** 0.384 + 5.8341 * th ** 1.65 - 25.944 * th ** 2.2 + 53.383 * th ** 2.75 - 54.411 * th ** 3.35 + 22.771 * th ** 4)
}

export const vaporDensity = (kelvin: number): number => {
  const th = 1 - kelvin / TC
  return MOLAR * Math.exp(-0.053296 * th ** 0.14 - 3.4589 * th ** 0.44 - 6.7572 * th ** 1.314 - 17.26 * th ** 3.225 - 43.12 * th ** 6.4 - 115.18 * th ** 14)
}

export function saturationTemperature(pressurePa: number): number {
  let [low, high] = [200, 370]
  for (let i = 0; i < 80; i++) {
    const middle = (low + high) / 2
    if (saturationPressure(middle) < pressurePa) low = middle
    else high = middle
  }
  return (low + high) / 2
}

/** The drum over a coil: its pressure and the column of its own liquid give the coil's pressure. */
export function drumTemperature(coilK: number, heightM: number): number {
  let drumK = coilK
  for (let i = 0; i < 60; i++) drumK = saturationTemperature(saturationPressure(coilK) - liquidDensity(drumK) * GRAVITY * heightM)
  return drumK
}

export const atmosphericPressure = (elevationM: number): number => 101_325 * (1 - 2.25577e-5 * elevationM) ** 5.25588

/** 2:1 heads; level from the lowest point as a share of the inside height. */
export function liquidVolume(position: string, diameterM: number, lengthM: number, level: number): number {
  const radius = diameterM / 2
  if (position === 'horizontal') {
    const h = level * diameterM
    const segment = radius ** 2 * Math.acos((radius - h) / radius) - (radius - h) * Math.sqrt(2 * radius * h - h * h)
    return segment * lengthM + (Math.PI * (diameterM / 4) * h ** 2 * (1 - h / (3 * radius)))
  }
  const head = diameterM / 4
  const h = level * (lengthM + 2 * head)
  const bottom = (depth: number): number => (Math.PI / 4) * (diameterM * depth / head) ** 2 * (head - depth / 3)
  if (h <= head) return bottom(h)
  const shell = (Math.PI / 4) * diameterM ** 2 * (Math.min(h, head + lengthM) - head)
  const full = bottom(head)
  return h <= head + lengthM ? full + shell : 2 * full + shell - bottom(lengthM + 2 * head - h)
}

export const vesselVolume = (diameterM: number, lengthM: number): number => (Math.PI / 4) * diameterM ** 2 * lengthM + (Math.PI / 12) * diameterM ** 3
