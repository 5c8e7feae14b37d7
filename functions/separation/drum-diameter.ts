import { quantity, unit } from '../arguments.ts'
import { define } from '../define.ts'

/** Inside diameter, m, of a circle through which a volume flow, m3/s, passes at a velocity, m/s. */
export const diameterForFlow = (volumeFlow: number, velocityMps: number): number =>
  Math.sqrt((4 * volumeFlow) / (Math.PI * velocityMps))

export const drumDiameter = define({
  name: 'DRUM.DIAMETER',
  group: 'Vapour–liquid separation',
  gives: 'the least inside diameter of a vertical drum',
  use: 'With the vapour leaving the drum, flash gas included (SUCTION.FLOW), and the velocity allowed in it.',
  arguments: {
    vapourFlow: quantity('volume flow', 'volume flow of the rising vapour', { min: 0, limit: 'the vapour rises' }),
    velocity: quantity('velocity', 'velocity allowed for the rising vapour', { above: 0, limit: 'the vapour rises' }),
    unit: unit(['length']),
  },
  result: 'length',
  equation: 'D = √(4 V / (π v))',
  sources: [{ cite: 'Continuity of the flow through a circle', confidence: 'confirmed' }],
  cautions: [
    'Vapour by latent heat alone leaves out the flash gas: fed with liquid at 86 to 95 °F, a drum at −40 to 28 °F gives off 1.16 to 1.30 times as much. Use SUCTION.FLOW.',
    'A least value: the next size made, the volumes that must be held and the vessel code decide.',
  ],
  examples: [{ formula: '=DRUM.DIAMETER("126.2 cfm","166.66 ft/min","in")', value: '11.783' }],
  compute: ({ vapourFlow, velocity }) => diameterForFlow(vapourFlow, velocity),
  workings: ({ vapourFlow, velocity }) => `SQRT(4*${vapourFlow}/(PI()*${velocity}))`,
})
