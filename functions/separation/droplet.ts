import { liquidDensity, vaporDensity, vaporViscosity } from '../ammonia/saturation.ts'
import { saturationTemperatureArgument } from '../ammonia/saturation-argument.ts'
import { saturatedAt } from '../ammonia/saturation-workings.ts'
import { quantity, quantityOf, unit } from '../arguments.ts'
import { lower, upper } from '../range.ts'
import { define } from '../define.ts'
import { outOfRange } from '../fault.ts'
import { FENGHOUR_1995, GAO_2023 } from '../sources.ts'
import { formatQuantity } from '../units/format.ts'
import { DRAG_EQUATIONS, DRAG_SOURCES, lawArgument, STOKES_CAUTION } from './drag.ts'
import { num, unless, type Expression } from '../workings/expression.ts'
import { bareSi, type Steps } from '../workings/workings.ts'
import { terminalDiameterSteps, terminalVelocitySteps, type WrittenPhases } from './settling-workings.ts'
import { terminalDiameter, terminalVelocity } from './settling.ts'

const SMALLEST_M = 1e-6
const LARGEST_M = 5e-3

const SPHERE_CAUTION =
  'A droplet is taken as a rigid sphere. Above about 1 mm it flattens and falls more slowly than computed (from memory).'
const CARRYOVER_CAUTION =
  'Still, even flow is assumed. Foaming, boiling swell, pulsing suction or a jet from the inlet carry liquid over at lower velocities; ' +
  'liquid in the suction can wreck a compressor. Codes and licensed practice decide.'

const words = {
  equation: `v = √(4 g d (ρL − ρV) / (3 C ρV)), Re = ρV v d / μV, ρL, ρV and μV at saturation. ${DRAG_EQUATIONS}`,
  sources: [...DRAG_SOURCES, GAO_2023, FENGHOUR_1995],
  cautions: [STOKES_CAUTION, SPHERE_CAUTION, CARRYOVER_CAUTION],
}

export const dropletVelocity = define({
  name: 'DROPLET.VELOCITY',
  group: 'Vapour–liquid separation',
  gives: 'the terminal velocity of an ammonia droplet falling through saturated vapour',
  use: 'To size the gas space of a drum for a droplet: rising vapour slower than this lets the droplet fall. 150 µm is a usual target for gravity separation (from memory).',
  arguments: {
    diameter: quantity('length', 'diameter of the droplet', {
      min: SMALLEST_M, max: LARGEST_M, limit: 'smaller droplets drift with the vapour, larger ones break up; from memory',
    }),
    temperature: saturationTemperatureArgument('saturation temperature in the drum'),
    unit: unit(['velocity']),
    law: lawArgument,
  },
  result: 'velocity',
  ...words,
  examples: [
    { formula: '=DROPLET.VELOCITY("150 µm","20 °F","ft/min")', value: '80.007' },
    { formula: '=DROPLET.VELOCITY("0.2 mm","-40 °C","m/s","Clift")', value: '0.96302' },
  ],
  compute: ({ diameter, temperature, law }) => terminalVelocity(diameter, ...phasesAt(temperature), law),
  workings: ({ diameter, temperature, law }, steps) => terminalVelocitySteps(diameter, phaseSteps(temperature, steps), law, steps),
})

export const dropletDiameter = define({
  name: 'DROPLET.DIAMETER',
  group: 'Vapour–liquid separation',
  gives: 'the diameter of the droplet that just hangs in vapour rising at a velocity',
  use: 'To see what a velocity, a separation factor or a table of allowed velocities means: larger droplets fall, smaller ones are carried along.',
  arguments: {
    velocity: quantityOf(['velocity'], 'velocity of the rising vapour', { above: 0, limit: 'the vapour rises' }),
    temperature: saturationTemperatureArgument('saturation temperature in the drum'),
    unit: unit(['length']),
    law: lawArgument,
  },
  result: 'length',
  ...words,
  examples: [{ formula: '=DROPLET.DIAMETER("170 ft/min","20 °F","µm")', value: '296.41' }],
  compute: ({ velocity, temperature, law }) => {
    const phases = phasesAt(temperature)
    const diameter = terminalDiameter(velocity.si, ...phases, law)
    if (diameter >= lower(SMALLEST_M) && diameter <= upper(LARGEST_M)) return diameter
    const show = (si: number) => formatQuantity(si, velocity.unit)
    const fall = (diameterM: number) => show(terminalVelocity(diameterM, ...phases, law))
    return outOfRange(
      `velocity is ${show(velocity.si)}; accepted at this temperature is ${fall(SMALLEST_M)} to ${fall(LARGEST_M)} (droplets of 1 µm to 5 mm; from memory)`,
    )
  },
  workings: ({ velocity, temperature, law }, steps) => {
    const found = terminalDiameterSteps(bareSi(velocity), phaseSteps(temperature, steps), law, steps)
    const diameter = steps.step('diameter', 'm', found)
    return unless(`AND(${diameter}>=${num(lower(SMALLEST_M))},${diameter}<=${num(upper(LARGEST_M))})`, diameter)
  },
})

/** What a droplet's fall depends on, in the order in which the settling functions take it. */
const phasesAt = (temperatureK: number) => [liquidDensity(temperatureK), vaporDensity(temperatureK), vaporViscosity(temperatureK)] as const

/** The same in workings. */
function phaseSteps(temperatureK: Expression, steps: Steps): WrittenPhases {
  const saturated = saturatedAt(temperatureK, steps)
  return {
    liquidDensity: steps.step('density of the liquid', 'kg/m3', saturated.liquidDensity),
    vaporDensity: steps.step('density of the vapour', 'kg/m3', saturated.vaporDensity),
    vaporViscosity: steps.step('viscosity of the vapour', 'Pa·s', saturated.vaporViscosity),
  }
}
