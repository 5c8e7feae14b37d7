import { STANDARD_ATMOSPHERE_PA, STANDARD_GRAVITY } from './constants.ts'
import { normaliseUnitText } from './spelling.ts'

/** What a quantity measures. A temperature and a temperature difference are two dimensions, so that 32 is never added to a difference. */
export type Dimension =
  | 'temperature' | 'temperature difference' | 'pressure' | 'length' | 'area' | 'volume' | 'mass'
  | 'mass flow' | 'volume flow' | 'velocity' | 'density' | 'specific volume' | 'energy per mass' | 'power'
  | 'viscosity' | 'surface tension' | 'flow coefficient' | 'pressure per temperature difference'
  | 'specific charge' | 'heat flux' | 'mass flux' | 'time' | 'share'

/**
 * A unit: SI value = value × factor + offset, and for a gauge unit + the site's atmospheric pressure.
 * SI is K, Pa, m, m², m³, kg, kg/s, m³/s, m/s, kg/m³, m³/kg, J/kg, W, Pa·s, N/m, Kv (m³/h at 1 bar), Pa/K, kg/W, W/m², kg/(m²·s), s.
 */
export interface Unit {
  readonly code: string
  readonly aliases: readonly string[]
  readonly dimension: Dimension
  readonly factor: number
  readonly offset: number
  /** Relative to the site's atmospheric pressure. */
  readonly gauge: boolean
}

// Exact by definition: international foot and pound, Btu (International Table), US gallon (NIST SP 811, B.6 and B.8).
const FOOT = 0.3048
const INCH = 0.0254
const POUND = 0.45359237
const GALLON = 3.785411784e-3
const BTU = 1055.05585262
const PSI = (POUND * STANDARD_GRAVITY) / INCH ** 2
const RANKINE = 5 / 9
const TON_OF_REFRIGERATION = (12000 * BTU) / 3600
// Conventional manometer units as NIST SP 811 prints them, seven digits.
const INCH_OF_MERCURY = 3386.389
const MILLIMETRE_OF_MERCURY = 133.3224
const INCH_OF_WATER = 249.0889

type Row = readonly [code: string, aliases: string, factor: number, offset?: number]

const TABLE: Readonly<Record<Dimension, readonly Row[]>> = {
  'temperature': [
    ['°F', 'F degF', RANKINE, 459.67 * RANKINE], ['°C', 'C degC', 1, 273.15], ['K', '', 1], ['°R', 'R degR', RANKINE],
  ],
  'temperature difference': [['Δ°F', 'dF', RANKINE], ['Δ°C', 'dC', 1], ['ΔK', 'dK', 1]],
  'pressure': [
    ['Pa', '', 1], ['kPa', '', 1e3], ['MPa', '', 1e6], ['bar', '', 1e5], ['psi', '', PSI], ['psia', '', PSI], ['atm', '', STANDARD_ATMOSPHERE_PA],
    ['inHg', '', INCH_OF_MERCURY], ['inH2O', '', INCH_OF_WATER], ['kgf/cm2', '', 98066.5], ['mmHg', '', MILLIMETRE_OF_MERCURY],
  ],
  'length': [['m', '', 1], ['mm', '', 1e-3], ['cm', '', 1e-2], ['in', '', INCH], ['ft', '', FOOT], ['µm', 'um', 1e-6]],
  'area': [['m2', '', 1], ['mm2', '', 1e-6], ['in2', '', INCH ** 2], ['ft2', '', FOOT ** 2]],
  'volume': [['m3', '', 1], ['L', '', 1e-3], ['ft3', '', FOOT ** 3], ['in3', '', INCH ** 3], ['gal', '', GALLON]],
  'mass': [['kg', '', 1], ['g', '', 1e-3], ['lb', '', POUND], ['t', '', 1e3], ['ton', '', 2000 * POUND]],
  'mass flow': [
    ['kg/s', '', 1], ['kg/h', '', 1 / 3600], ['lb/min', '', POUND / 60], ['lb/h', '', POUND / 3600], ['lb/s', '', POUND],
  ],
  'volume flow': [
    ['m3/s', '', 1], ['m3/h', '', 1 / 3600], ['L/s', '', 1e-3], ['cfm', '', FOOT ** 3 / 60], ['gpm', '', GALLON / 60],
  ],
  'velocity': [['m/s', '', 1], ['ft/s', '', FOOT], ['ft/min', 'fpm', FOOT / 60]],
  'density': [['kg/m3', '', 1], ['lb/ft3', '', POUND / FOOT ** 3]],
  'specific volume': [['m3/kg', '', 1], ['ft3/lb', '', FOOT ** 3 / POUND]],
  'energy per mass': [['kJ/kg', '', 1e3], ['J/kg', '', 1], ['Btu/lb', '', 2326]],
  'power': [
    ['W', '', 1], ['kW', '', 1e3], ['TR', '', TON_OF_REFRIGERATION], ['Btu/h', '', BTU / 3600], ['MBH', '', (1e3 * BTU) / 3600],
    ['hp', '', 550 * FOOT * POUND * STANDARD_GRAVITY],
  ],
  'viscosity': [
    ['Pa·s', 'Pa.s', 1], ['mPa·s', 'mPa.s', 1e-3], ['cP', '', 1e-3], ['µPa·s', 'uPa.s', 1e-6], ['lb/(ft·s)', 'lb/(ft.s)', POUND / FOOT],
  ],
  'surface tension': [['N/m', '', 1], ['mN/m', '', 1e-3], ['dyn/cm', '', 1e-3]],
  'flow coefficient': [['Kv', '', 1], ['Cv', '', ((GALLON * 3600) / 60) * Math.sqrt(1e5 / PSI)]],
  'pressure per temperature difference': [['psi/Δ°F', 'psi/dF', PSI / RANKINE], ['kPa/ΔK', 'kPa/dK', 1e3]],
  'specific charge': [['lb/TR', '', POUND / TON_OF_REFRIGERATION], ['kg/kW', '', 1e-3]],
  'heat flux': [['kW/m2', '', 1e3], ['W/m2', '', 1], ['Btu/(h·ft2)', 'Btu/(h.ft2)', BTU / 3600 / FOOT ** 2]],
  'mass flux': [['kg/(m2·s)', 'kg/(m2.s)', 1], ['lb/(ft2·s)', 'lb/(ft2.s)', POUND / FOOT ** 2]],
  'time': [['s', '', 1], ['min', '', 60], ['h', '', 3600], ['d', '', 86400]],
  'share': [['-', '', 1], ['%', '', 1e-2]],
}

const GAUGE: readonly Row[] = [
  ['psig', '', PSI], ['kPa(g)', 'kPag', 1e3], ['bar(g)', 'barg', 1e5],
  ['inHg vac', '', -INCH_OF_MERCURY],
]

const unit = (dimension: Dimension, [code, aliases, factor, offset = 0]: Row, gauge: boolean): Unit => ({
  code, aliases: aliases === '' ? [] : aliases.split(' '), dimension, factor, offset, gauge,
})

/** Every unit Lowside knows, in the order in which a picker would show them. */
export const units: readonly Unit[] = (Object.keys(TABLE) as Dimension[]).flatMap((dimension) => [
  ...TABLE[dimension].map((row) => unit(dimension, row, false)),
  ...(dimension === 'pressure' ? GAUGE.map((row) => unit(dimension, row, true)) : []),
])

const bySpelling = new Map<string, Unit>(
  units.flatMap((one) => [one.code, ...one.aliases].map((text) => [normaliseUnitText(text), one])),
)
// Cells repeat few unit texts very often: the text as typed is looked up first.
const byTypedText = new Map<string, Unit>()
const TYPED_TEXTS_KEPT = 1000

/** The unit a text names, or undefined. Spelling is exact but for superscripts, carets, micro and delta signs, middle dots and spaces. */
export function findUnit(text: string): Unit | undefined {
  const known = byTypedText.get(text)
  if (known !== undefined) return known
  const found = bySpelling.get(normaliseUnitText(text))
  if (found !== undefined && byTypedText.size < TYPED_TEXTS_KEPT) byTypedText.set(text, found)
  return found
}

/** The codes of a dimension, for messages and pickers. */
export const unitCodes = (dimension: Dimension): readonly string[] =>
  units.filter((one) => one.dimension === dimension).map((one) => one.code)

/** For a text that names no unit: the unit that differs from it only in capitals, blanks or signs, if there is just one. */
export function similarUnit(text: string): Unit | undefined {
  const fold = (spelling: string) => normaliseUnitText(spelling).toLowerCase().replace(/[\s°.·()]/g, '')
  const alike = units.filter((one) => [one.code, ...one.aliases].some((spelling) => fold(spelling) === fold(text)))
  return alike.length === 1 ? alike[0] : undefined
}
