import { units } from '../../../functions/units/units.ts'
import { sameFactor } from './meaning.ts'

/**
 * Which numbers in a formula can be what. A conversion stands between two units; a plain factor (a count, a half, ten per cent more)
 * leaves the dimension alone; any other number may bring one, as those of empirical formulas do, and nothing is held against it.
 */
export function mayBringDimension(number: number): boolean {
  return !isPlainFactor(Math.abs(number)) && !isConversion(number)
}

/** A ratio of two units of one dimension, to a thousandth: 60, 144, 2.2046, 0.3048. */
export function isConversion(number: number): boolean {
  const size = Math.abs(number)
  const bin = binOf(size)
  return [bin - 1, bin, bin + 1].some((near) => CONVERSIONS.get(near)?.some((ratio) => sameFactor(size, ratio, 1e-3)) === true)
}

/** A conversion that nobody takes for a count or a margin: one that has no business in a formula whose units agree without it. */
export function isTellingConversion(number: number): boolean {
  const size = Math.abs(number)
  const large = Math.round(1e6 * (size < 1 ? 1 / size : size)) / 1e6
  return isConversion(size) && !isPlainFactor(size) && large !== 100 && !(large <= 24 && Number.isInteger(large))
}

const isPlainFactor = (size: number): boolean =>
  size === 0 || isWholeOrHalf(size) || isWholeOrHalf(Math.round(1e9 / size) / 1e9) || sameFactor(size, Math.PI, 1e-3) || isMargin(size)

const isWholeOrHalf = (size: number): boolean => size <= 10 && Number.isInteger(size * 2)
/** A share or a margin: 0.85, 1.1. */
const isMargin = (size: number): boolean => size >= 0.5 && size <= 1.5 && Math.abs(size * 20 - Math.round(size * 20)) < 1e-9

/** Bins of a thousandth of a power of e. */
const binOf = (size: number): number => Math.floor(Math.log(size) * 1000)

/** Btu in a kWh, grains in a pound, and what stands between units that the table has no pair of. */
const OTHERS = [24, 1440, 7000, 3412.14, 3.41214, 8760, 5280, 9]

const CONVERSIONS: ReadonlyMap<number, readonly number[]> = conversions()

function conversions(): Map<number, number[]> {
  const found = new Map<number, number[]>()
  const add = (ratio: number): void => {
    const bin = binOf(ratio)
    found.set(bin, [...(found.get(bin) ?? []), ratio])
  }
  for (const one of units) {
    for (const other of units) {
      const ratio = Math.abs(one.factor / other.factor)
      if (one.dimension === other.dimension && !sameFactor(ratio, 1)) add(ratio)
    }
  }
  for (const ratio of OTHERS) {
    add(ratio)
    add(1 / ratio)
  }
  return found
}

/** What a missing factor is known by. */
const KNOWN: readonly (readonly [ratio: number, words: string])[] = [
  [60, '60 min are 1 h, 60 s are 1 min'], [3600, '3600 s are 1 h'], [12, '12 in are 1 ft'], [144, '144 in2 are 1 ft2'], [1728, '1728 in3 are 1 ft3'],
  [7.480519, '7.48 gal are 1 ft3'], [231, '231 in3 are 1 gal'], [2000, '2000 lb are 1 ton'], [2.204623, '2.2046 lb are 1 kg'], [1.8, '1.8 Δ°F are 1 ΔK'],
  [25.4, '25.4 mm are 1 in'], [0.3048, '0.3048 m are 1 ft'], [6.894757, '6.895 kPa are 1 psi'], [3.516853, '3.517 kW are 1 TR'], [12000, '12000 Btu/h are 1 TR'],
  [12, '12 MBH are 1 TR'], [100, '100 % are 1'], [9.80665, 'standard gravity, 9.80665 m/s2'], [1440, '1440 min are 1 d'], [86400, '86400 s are 1 d'], [24, '24 h are 1 d'],
]

/** "60 (60 min are 1 h, 60 s are 1 min)"; a ratio below 1 by what it divides. @param after words that belong to the number */
export function factorWords(ratio: number, after = ''): string {
  const size = ratio < 1 ? 1 / ratio : ratio
  const [known, words] = KNOWN.find(([one]) => sameFactor(size, one, 2e-4) || sameFactor(1 / size, one, 2e-4)) ?? [undefined, undefined]
  const shown = known !== undefined && sameFactor(1 / size, known, 2e-4) ? `1/${numberWords(known)}` : numberWords(size)
  return words === undefined ? `${shown}${after}` : `${shown}${after} (${words})`
}

export const numberWords = (value: number): string => String(Number(value.toPrecision(5)))

/** A conversion that anybody knows by its number: in a cell without unit no other number is taken for one. */
export const isWellKnown = (number: number): boolean => KNOWN.some(([ratio]) => sameFactor(number, ratio, 2e-4) || sameFactor(1 / number, ratio, 2e-4))

/** The factors that a number of a quantity may mean: each of its constants, or any of them together, may be a conversion, or none. */
export function factorsMeant(factor: number, constants: readonly number[]): readonly Meant[] {
  let meant: Meant[] = [{ factor, used: [] }]
  for (const [index, constant] of constants.slice(0, MOST_CONSTANTS).entries()) {
    meant = [...meant, ...meant.map((one) => ({ factor: one.factor / constant, used: [...one.used, index] }))]
  }
  return meant.toSorted((one, other) => one.used.length - other.used.length)
}

export interface Meant {
  readonly factor: number
  /** Which of the constants are conversions then, by their places. */
  readonly used: readonly number[]
}

const MOST_CONSTANTS = 8

/** How well a conversion that was typed agrees: people write 2.2 lb, 3.5 kW, 7.5 gal. */
export const TYPED_WITHIN = 1e-2
