import { formatQuantity } from './format.ts'
import { findUnit, units, type Dimension, type Unit } from './units.ts'

/** Units of both systems in which a limit is easy to read, those for large values first; a dimension left out has no two. */
const PAIRS: { readonly [D in Dimension]?: readonly (readonly [si: string, us: string])[] } = {
  'temperature': [['°C', '°F']],
  'temperature difference': [['ΔK', 'Δ°F']],
  'pressure': [['kPa', 'psia']],
  'length': [['m', 'ft'], ['mm', 'in']],
  'area': [['m2', 'ft2']],
  'volume': [['m3', 'ft3']],
  'mass': [['kg', 'lb']],
  'mass flow': [['kg/s', 'lb/min']],
  'volume flow': [['m3/h', 'cfm']],
  'velocity': [['m/s', 'ft/min']],
  'density': [['kg/m3', 'lb/ft3']],
  'specific volume': [['m3/kg', 'ft3/lb']],
  'energy per mass': [['kJ/kg', 'Btu/lb']],
  'power': [['kW', 'TR']],
  'flow coefficient': [['Kv', 'Cv']],
  'pressure per temperature difference': [['kPa/ΔK', 'psi/Δ°F']],
  'specific charge': [['kg/kW', 'lb/TR']],
  'heat flux': [['kW/m2', 'Btu/(h·ft2)']],
  'mass flux': [['kg/(m2·s)', 'lb/(ft2·s)']],
}

/** A limit for someone who reads, in both systems: `100000 kW = 28434.5 TR`. Nothing is nothing in any unit. */
export function formatForReading(si: number, dimension: Dimension, isDifference: boolean): string {
  const found = (PAIRS[dimension] ?? []).map((pair) => pair.flatMap((code) => findUnit(isDifference && code === 'psia' ? 'psi' : code) ?? []))
  const fitting = found.find(([large]) => large !== undefined && Math.abs(si) >= large.factor) ?? (si === 0 ? found[0] : found.at(-1)) ?? []
  const shown: readonly Unit[] = fitting.length > 0 ? fitting : units.filter((unit) => unit.dimension === dimension).slice(0, 1)
  const isPlainZero = si === 0 && shown.every(({ offset }) => offset === 0)
  return shown.slice(0, isPlainZero ? 1 : undefined).map((unit) => formatQuantity(si, unit)).join(' = ')
}
