import { quantity, unit } from '../arguments.ts'
import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { latentHeat, liquidEnthalpy, vaporDensity, vaporEnthalpy } from '../ammonia/saturation.ts'
import { define } from '../define.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { ENERGY_BALANCE } from '../sources.ts'
import { findUnit } from '../units/units.ts'
import { unless, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import { formatQuantity } from '../units/format.ts'

const group = 'Load and flow'

/** Mass that leaves the drum as vapour for a load, kg/s: the drum boils off what its coils evaporate and what flashes at the feed valve. */
export const feedFlow = (loadW: number, drumK: number, liquidK: number): number => loadW / (vaporEnthalpy(drumK) - liquidEnthalpy(liquidK))

/** Share of the fed liquid that flashes when its pressure falls to the drum's. */
export const flashFraction = (liquidK: number, drumK: number): number =>
  (liquidEnthalpy(liquidK) - liquidEnthalpy(drumK)) / latentHeat(drumK)

/** Mass evaporated in the coil, kg/s. */
export const boilingFlow = (loadW: number, drumK: number): number => loadW / latentHeat(drumK)

const load = quantity('power', 'refrigeration load of the coils on the drum', { min: 0, max: 1e8, limit: 'loads up to 100 MW' })
const drum = saturationTemperatureArgument('saturation temperature in the drum')
const liquid = saturationTemperatureArgument('temperature of the saturated liquid fed to the drum, as it stands before the feed valve')

/** Liquid colder than the drum has a lower saturation pressure than it, and could not flow in. */
const tooCold = ({ liquid: liquidK, drum: drumK }: { liquid: number; drum: number }): Fault | undefined =>
  liquidK >= drumK
    ? undefined
    : outOfRange(`liquid is ${both(liquidK)}, colder than the drum at ${both(drumK)}: saturated liquid could not flow in; accepted is a liquid at least as warm as the drum`)

interface WrittenFeed {
  readonly load: Expression
  readonly drum: Expression
  readonly liquid: Expression
}

/** The mass fed, kg/s, and the drum's vapour, in workings; an error where the liquid is too cold. */
function feedSteps({ load: loadW, drum: drumK, liquid: liquidK }: WrittenFeed, steps: Steps) {
  const inDrum = saturatedAt(drumK, steps, 'drum')
  const fed = saturatedAt(unless(`${liquidK}>=${drumK}`, liquidK), steps, 'liquid')
  const rise = steps.step('hg of the drum − hf of the liquid', 'J/kg', `${inDrum.vaporEnthalpy}-${fed.liquidEnthalpy}`)
  return { flow: `${loadW}/${rise}`, inDrum }
}

const FAHRENHEIT = findUnit('°F')
const CELSIUS = findUnit('°C')
const both = (temperatureK: number): string =>
  [FAHRENHEIT, CELSIUS].flatMap((one) => (one === undefined ? [] : [formatQuantity(temperatureK, one)])).join(' = ')

const FLASH_COUNTS = 'Latent heat alone gives 16 to 30 % too little: the vapour that flashes at the feed valve passes through the drum as well.'
const SATURATED = 'The liquid counts as saturated at its temperature; subcooled liquid of the same temperature differs little.'

export const flowDefinitions = [
  define({
    name: 'FLASH.FRACTION', group,
    gives: 'the share of the fed liquid that turns to vapour at the feed valve',
    use: 'Shows what the liquid’s temperature costs: every degree of subcooling less is vapour that cools nothing.',
    arguments: { liquid, drum },
    equation: 'x = (hf,liquid − hf,drum) / hfg,drum',
    sources: [ENERGY_BALANCE], cautions: [SATURATED],
    examples: [{ formula: '=FLASH.FRACTION("86 °F","5 °F")', value: '0.1602' }],
    result: 'number',
    compute: (given) => tooCold(given) ?? flashFraction(given.liquid, given.drum),
    workings: ({ liquid: liquidK, drum: drumK }, steps) => {
      const inDrum = saturatedAt(drumK, steps, 'drum')
      const fed = saturatedAt(unless(`${liquidK}>=${drumK}`, liquidK), steps, 'liquid')
      const drumLiquid = steps.step('hf of the drum', 'J/kg', inDrum.liquidEnthalpy)
      return `(${fed.liquidEnthalpy}-${drumLiquid})/(${inDrum.vaporEnthalpy}-${drumLiquid})`
    },
  }),
  define({
    name: 'FEED.FLOW', group,
    gives: 'the mass of liquid fed to the drum for a load, and of vapour leaving it',
    use: 'Sizes the feed valve, the suction line, the regulator and the drum. In steady state what is fed leaves as vapour.',
    arguments: { load, drum, liquid, unit: unit(['mass flow']) },
    equation: 'm = Q / (hg,drum − hf,liquid)',
    sources: [ENERGY_BALANCE], cautions: [FLASH_COUNTS, SATURATED],
    examples: [{ formula: '=FEED.FLOW("1 TR","5 °F","86 °F","lb/min")', value: '0.4220' }],
    result: 'mass flow',
    compute: (given) => tooCold(given) ?? feedFlow(given.load, given.drum, given.liquid),
    workings: (given, steps) => feedSteps(given, steps).flow,
  }),
  define({
    name: 'SUCTION.FLOW', group,
    gives: 'the volume flow of saturated vapour leaving the drum',
    use: 'The flow that the drum has to separate and the suction line to carry.',
    arguments: { load, drum, liquid, unit: unit(['volume flow']) },
    equation: 'V = Q / (hg,drum − hf,liquid) / ρV,drum',
    sources: [ENERGY_BALANCE], cautions: [FLASH_COUNTS],
    examples: [{ formula: '=SUCTION.FLOW("1 TR","5 °F","86 °F","cfm")', value: '3.438' }],
    result: 'volume flow',
    compute: (given) => tooCold(given) ?? feedFlow(given.load, given.drum, given.liquid) / vaporDensity(given.drum),
    workings: (given, steps) => {
      const { flow, inDrum } = feedSteps(given, steps)
      return `${flow}/${inDrum.vaporDensity}`
    },
  }),
  define({
    name: 'BOILING.FLOW', group,
    gives: 'the mass evaporated in the coil for a load',
    use: 'The evaporated part of the circulation; not the vapour that leaves the drum, which includes the flash gas (FEED.FLOW).',
    arguments: { load, drum, unit: unit(['mass flow']) },
    equation: 'm = Q / hfg,drum',
    sources: [ENERGY_BALANCE], cautions: ['Do not size the drum or its suction line by it.'],
    examples: [{ formula: '=BOILING.FLOW("1 TR","20 °F","lb/min")', value: '0.3620' }],
    result: 'mass flow',
    compute: (given) => boilingFlow(given.load, given.drum),
    workings: ({ load: loadW, drum: drumK }, steps) => {
      const inDrum = saturatedAt(drumK, steps, 'drum')
      return `${loadW}/(${inDrum.vaporEnthalpy}-${inDrum.liquidEnthalpy})`
    },
  }),
]
