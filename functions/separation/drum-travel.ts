import { number, optional, quantity, unit } from '../arguments.ts'
import { define } from '../define.ts'
import { isFault, outOfRange } from '../fault.ts'
import { unless } from '../workings/expression.ts'
import { bareSi } from '../workings/workings.ts'
import { segmentAreaSteps, vaporAreaAbove } from './drum-area.ts'
import { drumDiameterArgument, drumLevelArgument, levelBelowTop, levelBelowTopWritten } from './drum-level.ts'

/**
 * Travel of the vapour, m, during which a droplet falls from the top of a horizontal drum to the level.
 *
 * @param diameterM inside diameter, m
 * @param levelM level above the lowest point, m, 0 or more and below the diameter
 * @param volumeFlow vapour leaving the drum, m3/s
 * @param dropletVelocityMps terminal velocity of the droplet, m/s
 * @param inlets 1, or 2 at opposite ends with the outlet between them
 */
export function leastTravel(diameterM: number, levelM: number, volumeFlow: number, dropletVelocityMps: number, inlets: number): number {
  const vaporVelocityMps = volumeFlow / (inlets * vaporAreaAbove(diameterM, levelM))
  return ((diameterM - levelM) * vaporVelocityMps) / dropletVelocityMps
}

export const drumTravel = define({
  name: 'DRUM.TRAVEL',
  group: 'Vapour–liquid separation',
  gives: 'the least distance from inlet to outlet of a horizontal drum',
  use:
    'So that a droplet at the very top of the gas space falls to the liquid before the vapour reaches the outlet. ' +
    'With two inlets at opposite ends and the outlet in the middle, from each inlet.',
  arguments: {
    diameter: drumDiameterArgument,
    level: drumLevelArgument,
    vapourFlow: quantity('volume flow', 'volume flow of all vapour leaving the drum', { min: 0, limit: 'the vapour leaves' }),
    dropletVelocity: quantity('velocity', 'terminal velocity of the droplet, by DROPLET.VELOCITY', { above: 0, limit: 'the droplet falls' }),
    unit: unit(['length']),
    inlets: optional(number('number of inlets, 1 or 2', { min: 1, max: 2, limit: 'an end each, the outlet between' }), 1, '1'),
  },
  result: 'length',
  equation: 'L = u H / v, H = D − level, u = V / (inlets · A), A the gas space above the level, v the velocity of the droplet',
  sources: [{ cite: 'Fall and travel in the same time; the form is that of process engineering notes', confidence: 'confirmed' }],
  cautions: [
    'Even flow over the gas space is assumed. The inlet is turned down or baffled, the outlet drawn from the top.',
    'Take the high-level cut-out as level. A least value: nozzles, volumes and codes may ask for more, and licensed practice decides.',
  ],
  examples: [
    { formula: '=DRUM.TRAVEL("36 in","18 in","126.2 cfm","111.9 ft/min","in")', value: '5.7438' },
    { formula: '=DRUM.TRAVEL("36 in","18 in","126.2 cfm","111.9 ft/min","in",2)', value: '2.8719' },
  ],
  compute: ({ diameter, level, vapourFlow, dropletVelocity, inlets }) => {
    if (!Number.isInteger(inlets)) return outOfRange(`inlets is ${inlets}; accepted is 1 or 2 (an end each, the outlet between)`)
    const levelM = levelBelowTop(level, diameter)
    return isFault(levelM) ? levelM : leastTravel(diameter, levelM, vapourFlow, dropletVelocity, inlets)
  },
  workings: ({ diameter, level, vapourFlow, dropletVelocity, inlets }, steps) => {
    const height = steps.step('height of the gas space', 'm', `${diameter}-${levelBelowTopWritten(bareSi(level), diameter)}`)
    const area = steps.step('area of the gas space', 'm2', segmentAreaSteps(diameter, height, steps))
    const whole = unless(`OR(${inlets}=1,${inlets}=2)`, inlets)
    const vaporVelocity = steps.step('velocity of the vapour along the drum', 'm/s', `${vapourFlow}/(${whole}*${area})`)
    return `${height}*${vaporVelocity}/${dropletVelocity}`
  },
})
