import { liquidDensity, vaporDensity } from '../ammonia/saturation.ts'
import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { choice, quantity, quantityOf, unit, type SiQuantity } from '../arguments.ts'
import { define, type FunctionDefinition, type Source } from '../define.ts'
import { isFault, outOfRange, type Fault } from '../fault.ts'
import { ROUNDING } from '../rounding.ts'
import { GAO_2023 } from '../sources.ts'
import { formatNumber, formatQuantity } from '../units/format.ts'
import { bareSi } from '../workings/workings.ts'
import { headNames, type HeadName } from './heads.ts'
import { levelSteps } from './level-workings.ts'
import { filledVesselSteps, vesselSteps, vesselSurfaceSteps, vesselVolumeSteps } from './vessel-workings.ts'
import { insideHeight, liquidLevel, liquidVolume, vesselSurface, vesselVolume, type Position, type Vessel } from './vessel.ts'

const group = 'Liquid holdup and charge'

const diameter = (words: string) => quantity('length', words, { min: 0.01, max: 10, limit: 'the vessels of refrigerating plants; lines have PIPE.VOLUME' })

const length = quantity('length', 'length of the shell, tangent line to tangent line, straight flanges included; 0 only between heads that are not flat', {
  min: 0, max: 100, limit: 'the vessels of refrigerating plants',
})

const headChoice = choice(
  'both heads: "flat"; "2:1" semi-ellipsoidal; "hemi" hemispherical; "dished 6%" flanged and dished, crown radius 1 D, knuckle 0.06 D; "dished 10%" Klöpper, crown radius 1 D, knuckle 0.1 D',
  headNames,
)

const shape = {
  diameter: diameter('inside diameter'),
  length,
  heads: headChoice,
  position: choice<Position>('how the vessel stands', ['horizontal', 'vertical']),
}

const level = quantityOf(['length', 'share'], 'liquid level from the lowest point inside (in a vertical vessel the bottom of its lower head), as a length or in % of the inside height')

const GEOMETRY: Source = { cite: 'Jones, Calculating Tank Volume (2003): cylinder, ellipsoidal and hemispherical heads, full and in part', confidence: 'confirmed' }
const TORISPHERE: Source = {
  cite: 'Geometry of a spherical crown tangent to a toroidal knuckle, agreeing with an independent integration of the profile to 8 digits', confidence: 'confirmed',
}
const HEAD_STANDARDS: Source = {
  cite: 'Crown and knuckle radii: ASME BPVC Section VIII Division 1, UG-32 (1 D, 6 %) and DIN 28011 (1 D, 10 %)', confidence: 'common practice',
}
const SPHEROID: Source = { cite: 'Surface of a half oblate spheroid, closed form', confidence: 'confirmed' }

const CAPACITY_EQUATION = 'V = π/4 D² L + 2 c D³; c of one head: flat 0, 2:1 π/24, hemi π/12, dished 6% 0.080999, dished 10% 0.098966'
const LIQUID_EQUATION =
  'horizontal: V = L [R² arccos((R − h)/R) − (R − h) √(2 R h − h²)] + both heads, of which 2:1 and hemi hold π a h² (1 − h/(3 R)) ' +
  'and dished heads are integrated over crown and knuckle; vertical: the bottom head up to its depth, then π/4 D² per height, the top head by symmetry'

const NOTHING_DEDUCTED = 'Wall thickness is not deducted: give the inside diameter. Internals (baffles, coils, dip tubes, stubs) are not deducted either.'
const HEAD_TYPES =
  'A flanged and dished head with a 6 % knuckle holds 0.0810 D³, a 10 % knuckle 0.0990 D³, a 2:1 head 0.1309 D³: take the type from the vessel drawing. ' +
  'Crown and knuckle radii count as shares of the diameter given; the standards count from the outside diameter.'
const SIGHT_COLUMN =
  'The level is that of quiet liquid inside the vessel, not the reading of a sight column: its lower end is seldom at the vessel’s lowest point, and its liquid may be colder or warmer.'
const NOT_PROPORTIONAL = 'Level and volume are not proportional: in a horizontal vessel 80 % of the diameter is 86 % of the volume.'

export const vesselFunctions: readonly FunctionDefinition[] = [
  define({
    name: 'VESSEL.VOLUME',
    group,
    gives: 'internal volume of a cylindrical vessel with two equal heads',
    use: 'For the capacity of drums, receivers and traps. For the part of it that liquid fills use VESSEL.LIQUID; for lines PIPE.VOLUME.',
    arguments: { ...shape, unit: unit(['volume']) },
    result: 'volume',
    compute: (given) => {
      const vessel = vesselOf(given)
      return isFault(vessel) ? vessel : vesselVolume(vessel)
    },
    workings: vesselVolumeSteps,
    equation: CAPACITY_EQUATION,
    sources: [GEOMETRY, TORISPHERE, HEAD_STANDARDS],
    cautions: [NOTHING_DEDUCTED, HEAD_TYPES],
    examples: [
      { formula: '=VESSEL.VOLUME("36 in","10 ft","2:1","horizontal","ft3")', value: '77.7544' },
      { formula: '=VESSEL.VOLUME("1200 mm","3 m","dished 10%","vertical","m3")', value: '3.73495' },
    ],
  }),
  define({
    name: 'VESSEL.LIQUID',
    group,
    gives: 'volume of the liquid in a vessel at a level',
    use: 'For ballast and surge volumes between levels (one level less the other) and for the share of a vessel that is filled. The inverse is VESSEL.LEVEL.',
    arguments: { ...shape, level, unit: unit(['volume']) },
    result: 'volume',
    compute: (given) => {
      const filled = filledVessel(given)
      return isFault(filled) ? filled : filled.liquidM3
    },
    workings: (given, steps) => filledVesselSteps(given, steps).liquidM3,
    equation: LIQUID_EQUATION,
    sources: [GEOMETRY, TORISPHERE, HEAD_STANDARDS],
    cautions: [SIGHT_COLUMN, NOT_PROPORTIONAL, NOTHING_DEDUCTED, HEAD_TYPES],
    examples: [
      { formula: '=VESSEL.LIQUID("36 in","10 ft","2:1","horizontal","80 %","ft3")', value: '66.9551' },
      { formula: '=VESSEL.LIQUID("0.9144 m","2.4384 m","dished 6%","vertical","500 mm","m3")', value: '0.288591' },
    ],
  }),
  define({
    name: 'VESSEL.LEVEL',
    group,
    gives: 'level at which a vessel holds a volume of liquid',
    use: 'For where a control level or a cut-out must stand so that a ballast or surge volume lies below or above it. The inverse is VESSEL.LIQUID.',
    arguments: { ...shape, liquidVolume: quantityOf(['volume'], 'volume of the liquid, 0 to the volume of the vessel'), unit: unit(['length']) },
    result: 'length',
    compute: (given) => {
      const vessel = vesselOf(given)
      if (isFault(vessel)) return vessel
      const liquidM3 = within(given.liquidVolume, vesselVolume(vessel), 'liquid volume', 'the volume of this vessel')
      return isFault(liquidM3) ? liquidM3 : liquidLevel(vessel, liquidM3)
    },
    workings: (given, steps) => `${given.diameter}*(${levelSteps(`${bareSi(given.liquidVolume)}/${given.diameter}^3`, vesselSteps(given, steps), steps)})`,
    equation: 'solves VESSEL.LIQUID(level) = liquid volume for the level, from the lowest point inside',
    sources: [GEOMETRY, TORISPHERE, HEAD_STANDARDS],
    cautions: [SIGHT_COLUMN, NOT_PROPORTIONAL, NOTHING_DEDUCTED, HEAD_TYPES],
    examples: [{ formula: '=VESSEL.LEVEL("36 in","10 ft","2:1","horizontal","40 ft3","in")', value: '18.4018' }],
  }),
  define({
    name: 'VESSEL.CHARGE',
    group,
    gives: 'mass of ammonia in a vessel, saturated liquid below the level and saturated vapour above',
    use: 'For the charge of a plant, one row a vessel. For coils and lines use HOLDUP.MASS.',
    arguments: { ...shape, level, temperature: saturationTemperatureArgument('saturation temperature in the vessel'), unit: unit(['mass']) },
    result: 'mass',
    compute: (given) => {
      const filled = filledVessel(given)
      return isFault(filled) ? filled : filled.liquidM3 * liquidDensity(given.temperature) + filled.vaporM3 * vaporDensity(given.temperature)
    },
    workings: (given, steps) => {
      const { liquidM3, volumeM3 } = filledVesselSteps(given, steps)
      const ammonia = saturatedAt(given.temperature, steps)
      return `${liquidM3}*${ammonia.liquidDensity}+(${volumeM3}-${liquidM3})*${ammonia.vaporDensity}`
    },
    equation: 'm = V_liquid ρ_liquid(T) + (V − V_liquid) ρ_vapour(T)',
    sources: [GEOMETRY, TORISPHERE, HEAD_STANDARDS, GAO_2023],
    cautions: [
      'For a quiet vessel at one temperature. Vapour bubbles in boiling liquid make the true charge smaller at the same level; liquid colder than saturation makes it larger.',
      SIGHT_COLUMN, NOT_PROPORTIONAL, NOTHING_DEDUCTED, HEAD_TYPES,
    ],
    examples: [{ formula: '=VESSEL.CHARGE("36 in","10 ft","2:1","horizontal","40 %","20 °F","lb")', value: '1176.3' }],
  }),
  define({
    name: 'VESSEL.SURFACE',
    group,
    gives: 'outside surface of shell and heads',
    use: 'For the fire case of EN 13136 (RELIEF.FIRE), insulation and paint. RELIEF.CAPACITY does not need it: that rule takes diameter times length.',
    arguments: { diameter: diameter('outside diameter of the shell'), length, heads: headChoice, unit: unit(['area']) },
    result: 'area',
    compute: ({ diameter: diameterM, length: lengthM, heads: headName }) => emptyShape(lengthM, headName) ?? vesselSurface(diameterM, lengthM, headName),
    workings: vesselSurfaceSteps,
    equation: 'A = π D L + 2 s D²; s of one head: flat π/4, 2:1 1.0840, hemi π/2, dished 6% 0.9306, dished 10% 0.9900',
    sources: [SPHEROID, TORISPHERE, HEAD_STANDARDS],
    cautions: ['Diameter is the outside diameter, not the inside diameter of the other VESSEL functions. Nozzles, manways, boots and supports are not counted.', HEAD_TYPES],
    examples: [
      { formula: '=VESSEL.SURFACE("1 m","3 m","2:1","m2")', value: '11.5927' },
      { formula: '=VESSEL.SURFACE("36 in","10 ft","dished 6%","ft2")', value: '110.998' },
    ],
  }),
]

interface GivenShape {
  readonly diameter: number
  readonly length: number
  readonly heads: HeadName
  readonly position: Position
}

const vesselOf = ({ diameter: diameterM, length: lengthM, heads: headName, position }: GivenShape): Vessel | Fault =>
  emptyShape(lengthM, headName) ?? { diameterM, lengthM, headName, position }

/** Two heads meet without a shell in a sphere or a lens; two flat ones enclose nothing. */
const emptyShape = (lengthM: number, headName: HeadName): Fault | undefined =>
  headName === 'flat' && lengthM === 0 ? outOfRange('length is 0 between flat heads: such a vessel holds nothing; accepted is more than 0, or heads that are not flat') : undefined

function filledVessel(given: GivenShape & { readonly level: SiQuantity }): { liquidM3: number; vaporM3: number } | Fault {
  const vessel = vesselOf(given)
  if (isFault(vessel)) return vessel
  const heightM = insideHeight(vessel)
  const share = given.level.unit.dimension === 'share'
  const top = share ? `the inside height of this vessel, ${formatNumber(heightM)} m` : 'the inside height of this vessel'
  const resolved = within(given.level, share ? 1 : heightM, 'level', top)
  if (isFault(resolved)) return resolved
  const liquidM3 = liquidVolume(vessel, share ? resolved * heightM : resolved)
  return { liquidM3, vaporM3: vesselVolume(vessel) - liquidM3 }
}

/** The SI value, or a fault where it lies outside 0 … most. */
function within({ si, unit: given }: SiQuantity, most: number, label: string, mostIs: string): number | Fault {
  if (si >= 0 && si <= most * (1 + ROUNDING)) return Math.min(si, most)
  return outOfRange(`${label} is ${formatQuantity(si, given)}; accepted is ${formatQuantity(0, given)} to ${formatQuantity(most, given)} (${mostIs})`)
}
