import { isPressure, isTemperature } from './dimension.ts'
import { numberWords } from './constants.ts'
import type { Quantity } from './meaning.ts'

/** The unit that a number turns out to be in: "psig", "lb/min·h", "Δ°F"; "no unit" of a ratio. */
export function unitWords({ symbol, dimension, zero: { points, gauge } }: Quantity): string {
  const [first, ...others] = symbol
  if (first === undefined) return 'no unit'
  if (others.length === 0 && first[1] === 1) {
    const [code] = first
    if ((isTemperature(dimension) && points === 0) || (isPressure(dimension) && points === 0 && gauge === 0)) return differenceCode(code) ?? code
    return isPressure(dimension) && gauge === 0 ? (ABSOLUTE[code] ?? code) : code
  }
  const over = symbol.filter(([, exponent]) => exponent > 0).map(powerWords)
  const under = symbol.filter(([, exponent]) => exponent < 0).map(([code, exponent]) => powerWords([code, -exponent]))
  const top = over.length === 0 ? '1' : over.join('·')
  return under.length === 0 ? top : under.length === 1 ? `${top}/${under[0]}` : `${top}/(${under.join('·')})`
}

/** "a number in psig", "a sum of temperatures in °F". */
export function quantityWords(quantity: Quantity): string {
  const unit = unitWords(quantity)
  if (unit === 'no unit') return 'a ratio without unit'
  const { dimension, zero } = quantity
  if (zero.points > 1 && isTemperature(dimension)) return `a sum of temperatures in ${unit}`
  return zero.gauge > 1 && isPressure(dimension) ? `a sum of pressures in ${unit}` : `a number in ${unit}`
}

/** The unit that a difference has, of the code of a temperature or a pressure. */
export const differenceCode = (code: string): string | undefined => DIFFERENCES[code]

export function timesSymbol(one: Quantity['symbol'], other: Quantity['symbol'], exponent: number): Quantity['symbol'] {
  const found = new Map(one)
  for (const [code, power] of other) found.set(code, (found.get(code) ?? 0) + power * exponent)
  return [...found].filter(([, power]) => Math.abs(power) > 1e-9)
}

/** The unit of a number that a conversion was made of: "°F / 1.8". */
export function convertedSymbol(symbol: Quantity['symbol'], by: number): Quantity['symbol'] {
  const [first] = symbol
  if (first === undefined || symbol.length > 1) return symbol
  const [, code = first[0], sign = '×', number = '1'] = /^(.*) ([×/]) ([\d.e+-]+)$/.exec(first[0]) ?? []
  const total = (sign === '/' ? 1 / Number(number) : Number(number)) * by
  const shown = total >= 1 ? `× ${numberWords(total)}` : `/ ${numberWords(1 / total)}`
  return [[Math.abs(total - 1) < 1e-6 ? code : `${code} ${shown}`, first[1]]]
}

function powerWords([code, exponent]: readonly [string, number]): string {
  const isPlain = /^[^/·.() ]+(?:\([ag]\))?$/u.test(code)
  const base = isPlain ? code : `(${code})`
  if (exponent === 1) return base
  if (Number.isInteger(exponent)) return isPlain && !/\d$/.test(code) ? `${base}${exponent}` : `(${code})^${exponent}`
  return `${base}^${numberWords(exponent)}`
}

/** What the difference of two is in. */
const DIFFERENCES: Readonly<Record<string, string>> = {
  '°F': 'Δ°F', '°C': 'Δ°C', 'K': 'ΔK', '°R': 'Δ°F', 'psia': 'psi', 'psig': 'psi', 'kPa(g)': 'kPa', 'bar(g)': 'bar', 'inHg vac': 'inHg',
}

/** What a gauge pressure is in with the atmosphere's added. */
const ABSOLUTE: Readonly<Record<string, string>> = { 'psig': 'psia', 'kPa(g)': 'kPa', 'bar(g)': 'bar', 'inHg vac': 'inHg' }
