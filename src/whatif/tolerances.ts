import { formatNumber } from '../../functions/units/format.ts'
import { findUnit, units, type Dimension, type Unit } from '../../functions/units/units.ts'
import type { Tolerance } from '../workbook/given-tolerances.ts'

export interface UsualTolerance {
  readonly tolerance: Tolerance
  /** Where it comes from, for the user to judge. */
  readonly source: string
}

const PRACTICE = 'Common practice, no published source; edit'
const OURS = 'Chosen here as a start; edit'

const SHARES: { readonly [D in Dimension]?: readonly [share: number, source: string] } = {
  'power': [0.05, PRACTICE], 'length': [0.01, OURS], 'area': [0.02, OURS], 'volume': [0.02, OURS], 'mass': [0.02, OURS], 'mass flow': [0.05, OURS],
  'density': [0.01, OURS], 'specific volume': [0.01, OURS], 'energy per mass': [0.01, OURS], 'flow coefficient': [0.1, PRACTICE],
}
const OTHER_SHARE = 0.05
/** 1 Δ°F, or half a kelvin. */
const TEMPERATURE = { us: 1, si: 0.5 }
/** 1 psi, or 5 kPa: a gauge of the plant. */
const GAUGE = { us: 1, siPa: 5000 }

/** A tolerance for someone who has given none, by what the unit measures. Whole numbers without a unit are counts, and exact. */
export function usualTolerance(value: number, unit: Unit | undefined): UsualTolerance {
  if (unit === undefined) return { tolerance: { kind: 'share', share: Number.isInteger(value) ? 0 : OTHER_SHARE }, source: Number.isInteger(value) ? 'A whole number without a unit: taken as exact; edit' : OURS }
  if (unit.dimension === 'temperature' || unit.dimension === 'temperature difference') return { tolerance: { kind: 'size', size: isFahrenheit(unit) ? TEMPERATURE.us : TEMPERATURE.si }, source: PRACTICE }
  if (unit.gauge) return { tolerance: { kind: 'size', size: gaugeSize(unit) }, source: PRACTICE }
  const [share, source] = SHARES[unit.dimension] ?? [OTHER_SHARE, OURS]
  return { tolerance: { kind: 'share', share }, source }
}

/** How much that is at a value, in the unit of its cell; never negative. */
export const toleranceSize = (tolerance: Tolerance, value: number): number => Math.abs(tolerance.kind === 'size' ? tolerance.size : tolerance.share * value)

/** `± 5 %`; `± 1 Δ°F`; `± 1 psi` for a gauge pressure. */
export function toleranceWords(tolerance: Tolerance, unit: Unit | undefined): string {
  if (tolerance.kind === 'share') return `± ${formatNumber(tolerance.share * 100)} %`
  return `± ${formatNumber(tolerance.size)}${unit === undefined || unit.code === '-' ? '' : ` ${toleranceUnit(unit)}`}`
}

/** The unit in which a tolerance of so much is said: that of a difference. */
export function toleranceUnit(unit: Unit): string {
  if (unit.dimension === 'temperature') return isFahrenheit(unit) ? 'Δ°F' : findUnit(`Δ${unit.code}`)?.code ?? 'ΔK'
  if (!unit.gauge) return unit.code
  return units.find(({ dimension, gauge, factor }) => dimension === 'pressure' && !gauge && factor === Math.abs(unit.factor))?.code ?? unit.code
}

const isFahrenheit = ({ factor }: Unit): boolean => Math.abs(factor - 5 / 9) < 1e-12

function gaugeSize(unit: Unit): number {
  const psi = findUnit('psi')
  const isUs = psi !== undefined && (unit.code === 'psig' || unit.code.startsWith('inHg'))
  const size = Math.abs((isUs ? GAUGE.us * psi.factor : GAUGE.siPa) / unit.factor)
  return Number(size.toPrecision(2))
}
