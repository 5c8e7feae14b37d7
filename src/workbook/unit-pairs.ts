export type UnitSystem = 'US' | 'SI'

/** US unit and the SI unit that Restate turns it into; of several with one SI unit, the first is the way back. */
const PAIRS: readonly (readonly [us: string, si: string])[] = [
  ['°F', '°C'],
  ['°R', 'K'],
  ['Δ°F', 'ΔK'],
  ['psia', 'kPa'],
  ['psi', 'kPa'],
  ['inHg', 'kPa'],
  ['inH2O', 'kPa'],
  ['psig', 'kPa(g)'],
  ['inHg vac', 'kPa(g)'],
  ['in', 'mm'],
  ['ft', 'm'],
  ['in2', 'mm2'],
  ['ft2', 'm2'],
  ['ft3', 'm3'],
  ['gal', 'L'],
  ['lb', 'kg'],
  ['ton', 't'],
  ['lb/min', 'kg/s'],
  ['lb/s', 'kg/s'],
  ['lb/h', 'kg/h'],
  ['cfm', 'm3/h'],
  ['gpm', 'L/s'],
  ['ft/min', 'm/s'],
  ['ft/s', 'm/s'],
  ['lb/ft3', 'kg/m3'],
  ['ft3/lb', 'm3/kg'],
  ['Btu/lb', 'kJ/kg'],
  ['TR', 'kW'],
  ['MBH', 'kW'],
  ['hp', 'kW'],
  ['Btu/h', 'W'],
  ['lb/(ft·s)', 'Pa·s'],
  ['Cv', 'Kv'],
  ['psi/Δ°F', 'kPa/ΔK'],
  ['lb/TR', 'kg/kW'],
  ['Btu/(h·ft2)', 'W/m2'],
  ['lb/(ft2·s)', 'kg/(m2·s)'],
]

/** SI units that no US unit turns into, and what they turn into. */
const SI_ONLY: readonly (readonly [si: string, us: string])[] = [
  ['Δ°C', 'Δ°F'],
  ['bar', 'psia'],
  ['MPa', 'psia'],
  ['bar(g)', 'psig'],
  ['cm', 'in'],
  ['m3/s', 'cfm'],
]

const TO_SI: ReadonlyMap<string, string> = new Map(PAIRS)

const TO_US: ReadonlyMap<string, string> = new Map([...SI_ONLY, ...PAIRS.toReversed().map(([us, si]) => [si, us] as const)])

/** The code of the unit that stands for it in that system; undefined if it serves in both, or has no counterpart. */
export function counterpart(code: string, system: UnitSystem): string | undefined {
  return (system === 'SI' ? TO_SI : TO_US).get(code)
}
