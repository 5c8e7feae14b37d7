import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { block, number, quantity } from '../arguments.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { GREATEST_RELATIVE_ROUGHNESS } from '../lines/friction.ts'
import { formatNumber } from '../units/format.ts'
import type { Branch, Loop } from './balance.ts'

const bore = (words: string) => quantity('length', words, { min: 3e-3, max: 2, limit: 'tubes and pipes of refrigerating plants' })
const length = (words: string) => quantity('length', words, { min: 0, max: 300, limit: 'the lines of one drum and its coils' })
const height = (words: string) => quantity('length', words, { min: 0, max: 30, limit: 'columns up to 30 m, three times the highest gravity leg in use' })
const resistance = (words: string) => number(words, { min: 0, max: 1000, limit: 'entries, bends, valves and exits; above it a line is closed rather than open' })

/** The rows of the block, in order; the keys are their names. */
const rows = {
  'load': quantity('power', 'refrigeration load of the coil', { above: 0, max: 1e8, limit: 'without load nothing boils and nothing circulates; loads up to 100 MW' }),
  'drum temperature': saturationTemperatureArgument('saturation temperature in the drum'),
  'level above coil bottom': quantity('length', 'height of the liquid’s surface in the drum above the bottom of the coil', {
    above: 0, max: 30, limit: 'the level drives the loop; columns up to 30 m',
  }),
  'leg bore': bore('inside diameter of the liquid leg from the drum to the coil'),
  'leg length': length('length of the liquid leg'),
  'leg ΣK': resistance('sum of the resistance coefficients of the liquid leg'),
  'coil height': height('height from the bottom to the top of the coil'),
  'circuits': number('number of parallel circuits', { min: 1, max: 1e4, limit: 'at least one' }),
  'circuit bore': bore('inside diameter of a circuit’s tube'),
  'circuit length': quantity('length', 'length of one circuit', { above: 0, max: 300, limit: 'the tubes of one coil' }),
  'return bore': bore('inside diameter of the wet return from the coil to the drum'),
  'return length': length('length of the wet return'),
  'return ΣK': resistance('sum of the resistance coefficients of the wet return'),
  'return rise': height('height from the top of the coil to the end of the wet return in the drum'),
  'roughness': quantity('length', 'roughness of all tubes and pipes; commercial steel has 0.00015 ft (0.046 mm)', {
    min: 0, max: 5e-3, limit: 'from drawn tube to badly corroded pipe, from memory',
  }),
} as const

export type LoopRows = { readonly [K in keyof typeof rows]: number }

/** The loop as the functions are given it: a range of rows. */
export const loopBlock = block('the loop: drum, liquid leg, coil and wet return', rows)

export const loopOf = (given: LoopRows): Loop => ({
  levelM: given['level above coil bottom'],
  leg: branch(given['leg bore'], given['leg length'], given['leg ΣK']),
  coilHeightM: given['coil height'],
  circuits: given.circuits,
  circuitBoreM: given['circuit bore'],
  circuitLengthM: given['circuit length'],
  wetReturn: branch(given['return bore'], given['return length'], given['return ΣK']),
  returnRiseM: given['return rise'],
  roughnessM: given.roughness,
})

/** Roughness beyond which the friction factor is not known, in the narrowest bore. */
export function tooRough({ roughnessM, leg, circuitBoreM, wetReturn }: Loop): Fault | undefined {
  const mostM = GREATEST_RELATIVE_ROUGHNESS * Math.min(leg.boreM, circuitBoreM, wetReturn.boreM)
  return roughnessM <= mostM
    ? undefined
    : outOfRange(`block row ${Object.keys(rows).indexOf('roughness') + 1}, roughness is ${formatNumber(roughnessM * 1e3)} mm; accepted is at most ${formatNumber(mostM * 1e3)} mm (relative roughness ${GREATEST_RELATIVE_ROUGHNESS} in the narrowest bore, where Moody’s chart ends)`)
}

const branch = (boreM: number, lengthM: number, sumOfK: number): Branch => ({ boreM, lengthM, resistance: sumOfK })
