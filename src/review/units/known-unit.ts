import { normaliseUnitText } from '../../../functions/units/spelling.ts'
import { findUnit, type Unit } from '../../../functions/units/units.ts'
import { dimensionOf, MONEY, NO_DIMENSION, times, toPower, type Dimension } from './dimension.ts'
import { ANY_ZERO, type Quantity, type Zero } from './meaning.ts'

/**
 * A number 1 in a unit; undefined where the text names none. Beside the units that functions take, it reads what people write in
 * plain arithmetic: units made of units (Btu/(lb·°F), kWh/yr), work and force, money.
 */
export function unitQuantity(text: string): Quantity | undefined {
  if (known.has(text)) return known.get(text)
  const unit = findUnit(text)
  const found = unit === undefined ? compound(text) : ofUnit(unit)
  if (known.size < MOST_KEPT) known.set(text, found)
  return found
}

const known = new Map<string, Quantity | undefined>()
const MOST_KEPT = 2000

/** A unit of functions. */
export function ofUnit(unit: Unit): Quantity {
  return {
    kind: 'quantity', dimension: dimensionOf(unit.dimension), factor: unit.factor * (unit.dimension === 'flow coefficient' ? KV : 1), zero: zeroOf(unit),
    constants: [], loose: false, symbol: unit.code === '-' ? [] : [[unit.code, 1]],
  }
}

/** 1 m³/h at 1 bar. */
const KV = 1 / 3600 / Math.sqrt(1e5)

function zeroOf({ code, dimension, offset, gauge }: Unit): Zero {
  if (dimension === 'temperature') return { ...ANY_ZERO, points: 1, offset }
  if (dimension === 'temperature difference') return { ...ANY_ZERO, points: 0 }
  if (gauge) return { ...ANY_ZERO, points: 1, gauge: 1 }
  // Of all other units of pressure the unit does not tell: kPa is written for both.
  return code === 'psia' ? { ...ANY_ZERO, points: 1 } : ANY_ZERO
}

interface Size {
  readonly dimension: Dimension
  readonly factor: number
}

/** A product or quotient of units; undefined where any of them is unknown. */
function compound(text: string): Quantity | undefined {
  if (!/[^\d\s./()]/u.test(text)) return undefined
  const parts = normaliseUnitText(text).match(/[()/]|\.|(?:[A-Za-zΔμ°%$€£]+(?:\([ag]\))?|\d+(?:\.\d+)?(?![A-Za-z]))(?:-?\d+)?|\s+|./gu)?.filter((part) => part.trim() !== '') ?? []
  let at = 0
  const product = (): Size | undefined => {
    let size = factor()
    while (size !== undefined && at < parts.length && parts[at] !== ')') {
      const over = parts[at] === '/'
      if (over || parts[at] === '.') at++
      const next = factor()
      size = next && { dimension: times(size.dimension, next.dimension, over ? -1 : 1), factor: over ? size.factor / next.factor : size.factor * next.factor }
    }
    return size
  }
  const factor = (): Size | undefined => {
    const part = parts[at++]
    if (part !== '(') {
      const size = part === undefined ? undefined : atom(part)
      // "psi/100 ft": the hundred belongs to the feet.
      const isCount = part !== undefined && /^\d/.test(part) && /^[A-Za-z]/.test(parts[at] ?? '')
      const counted = isCount ? atom(parts[at++] ?? '') : undefined
      return size && isCount ? counted && { dimension: counted.dimension, factor: size.factor * counted.factor } : size
    }
    const inner = product()
    return parts[at++] === ')' ? inner : undefined
  }
  const size = product()
  if (size === undefined || at < parts.length) return undefined
  return { kind: 'quantity', ...size, zero: ANY_ZERO, constants: [], loose: false, symbol: [[text, 1]] }
}

function atom(part: string): Size | undefined {
  const whole = simple(part)
  if (whole !== undefined) return whole
  const [, code = '', exponent = ''] = /^(.*?)(-?\d+)$/u.exec(part) ?? []
  const base = code === '' ? undefined : simple(code)
  return base && { dimension: toPower(base.dimension, Number(exponent)), factor: base.factor ** Number(exponent) }
}

function simple(code: string): Size | undefined {
  if (/^\d+(?:\.\d+)?$/.test(code)) return { dimension: NO_DIMENSION, factor: Number(code) }
  const unit = Object.hasOwn(OTHERS, code) ? undefined : findUnit(code)
  if (unit !== undefined) return unit.gauge ? undefined : { dimension: dimensionOf(unit.dimension), factor: ofUnit(unit).factor }
  return Object.hasOwn(OTHERS, code) ? OTHERS[code] : undefined
}

const ENERGY: Dimension = [1, 2, -2, 0, 0]
const FORCE: Dimension = [1, 1, -2, 0, 0]
const TIME: Dimension = [0, 0, 1, 0, 0]
const BTU = 1055.05585262
const POUND = 0.45359237
const FREE_FALL = 9.80665

/** Factors as in `functions/units/units.ts`; exact, or NIST SP 811 appendix B. */
const OTHERS: Readonly<Record<string, Size>> = {
  J: { dimension: ENERGY, factor: 1 }, kJ: { dimension: ENERGY, factor: 1e3 }, MJ: { dimension: ENERGY, factor: 1e6 }, GJ: { dimension: ENERGY, factor: 1e9 },
  Wh: { dimension: ENERGY, factor: 3600 }, kWh: { dimension: ENERGY, factor: 3.6e6 }, MWh: { dimension: ENERGY, factor: 3.6e9 },
  Btu: { dimension: ENERGY, factor: BTU }, MMBtu: { dimension: ENERGY, factor: 1e6 * BTU }, TRh: { dimension: ENERGY, factor: 12000 * BTU },
  N: { dimension: FORCE, factor: 1 }, kN: { dimension: FORCE, factor: 1e3 }, lbf: { dimension: FORCE, factor: POUND * FREE_FALL }, kgf: { dimension: FORCE, factor: FREE_FALL },
  sec: { dimension: TIME, factor: 1 }, hr: { dimension: TIME, factor: 3600 }, day: { dimension: TIME, factor: 86400 }, days: { dimension: TIME, factor: 86400 },
  yr: { dimension: TIME, factor: 365 * 86400 }, year: { dimension: TIME, factor: 365 * 86400 }, rpm: { dimension: [0, 0, -1, 0, 0], factor: 1 / 60 },
  lbm: { dimension: [1, 0, 0, 0, 0], factor: POUND }, MW: { dimension: [1, 2, -3, 0, 0], factor: 1e6 }, scfm: { dimension: [0, 3, -1, 0, 0], factor: 0.3048 ** 3 / 60 },
  ppm: { dimension: NO_DIMENSION, factor: 1e-6 },
  'k$': { dimension: MONEY, factor: 1e3 }, 'k€': { dimension: MONEY, factor: 1e3 }, 'M$': { dimension: MONEY, factor: 1e6 },
  $: { dimension: MONEY, factor: 1 }, '€': { dimension: MONEY, factor: 1 }, '£': { dimension: MONEY, factor: 1 }, USD: { dimension: MONEY, factor: 1 }, EUR: { dimension: MONEY, factor: 1 },
}
