import { unit } from '../arguments.ts'
import { define, type Source } from '../define.ts'
import { isFault } from '../fault.ts'
import type { Expression } from '../workings/expression.ts'
import { bareSi, type Steps } from '../workings/workings.ts'
import { drumDiameterArgument, drumLevelArgument, levelInDrum, levelInDrumWritten } from './drum-level.ts'

/** Cross-section, m2, below a level in a horizontal cylinder; level 0 to the diameter, m. */
export function liquidAreaBelow(diameterM: number, levelM: number): number {
  // From the bottom to where the level meets the wall, seen from the centre.
  const angle = 2 * Math.asin(Math.sqrt(levelM / diameterM))
  return (diameterM / 2) ** 2 * (angle - Math.sin(angle) * Math.cos(angle))
}

/** Cross-section, m2, above a level in a horizontal cylinder; level 0 to the diameter, m. */
export const vaporAreaAbove = (diameterM: number, levelM: number): number => liquidAreaBelow(diameterM, diameterM - levelM)

/** Cross-section, m2, in workings: of the liquid for its level, of the gas space for its own height. */
export function segmentAreaSteps(diameterM: Expression, heightM: Expression, steps: Steps): Expression {
  const angle = steps.step('half the angle that the level spans, seen from the centre', 'rad', `2*ASIN(SQRT(${heightM}/${diameterM}))`)
  return `(${diameterM}/2)^2*(${angle}-SIN(${angle})*COS(${angle}))`
}

const SOURCES: readonly Source[] = [
  { cite: 'Geometry of the circle; Jones, Calculating Tank Volume (2003)', confidence: 'confirmed' },
]

const drumArguments = { diameter: drumDiameterArgument, level: drumLevelArgument, unit: unit(['area']) }

export const liquidArea = define({
  name: 'LIQUID.AREA',
  group: 'Vapour–liquid separation',
  gives: 'the cross-section of the liquid in a horizontal drum',
  use: 'Times the straight length it is the liquid held by the cylinder; VESSEL.LIQUID adds the heads.',
  arguments: drumArguments,
  result: 'area',
  equation: 'A = R² (θ − sin θ cos θ), cos θ = 1 − h/R, R = D/2',
  sources: SOURCES,
  cautions: ['A share of the diameter is not a share of the area: 80 % of the diameter is 86 % of the area.'],
  examples: [{ formula: '=LIQUID.AREA("36 in","12 in","ft2")', value: '2.06255' }],
  compute: ({ diameter, level }) => {
    const levelM = levelInDrum(level, diameter)
    return isFault(levelM) ? levelM : liquidAreaBelow(diameter, levelM)
  },
  workings: ({ diameter, level }, steps) => segmentAreaSteps(diameter, levelInDrumWritten(bareSi(level), diameter), steps),
})

export const vaporArea = define({
  name: 'VAPOR.AREA',
  group: 'Vapour–liquid separation',
  gives: 'the cross-section of the gas space above the liquid in a horizontal drum',
  use: 'The vapour flow divided by it is the velocity along the drum.',
  arguments: drumArguments,
  result: 'area',
  equation: 'A = π D²/4 − area of the liquid',
  sources: SOURCES,
  cautions: ['Take the highest level that can stand in the drum, not the one usually held: the gas space is least there.'],
  examples: [{ formula: '=VAPOR.AREA("36 in","12 in","ft2")', value: '5.00603' }],
  compute: ({ diameter, level }) => {
    const levelM = levelInDrum(level, diameter)
    return isFault(levelM) ? levelM : vaporAreaAbove(diameter, levelM)
  },
  workings: ({ diameter, level }, steps) => {
    const height = steps.step('height of the gas space', 'm', `${diameter}-${levelInDrumWritten(bareSi(level), diameter)}`)
    return segmentAreaSteps(diameter, height, steps)
  },
})
