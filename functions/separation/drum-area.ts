import { unit } from '../arguments.ts'
import { define, type Source } from '../define.ts'
import { isFault } from '../fault.ts'
import { drumDiameterArgument, drumLevelArgument, levelInDrum } from './drum-level.ts'

/** Cross-section, m2, below a level in a horizontal cylinder; level 0 to the diameter, m. */
export function liquidAreaBelow(diameterM: number, levelM: number): number {
  // From the bottom to where the level meets the wall, seen from the centre.
  const angle = 2 * Math.asin(Math.sqrt(levelM / diameterM))
  return (diameterM / 2) ** 2 * (angle - Math.sin(angle) * Math.cos(angle))
}

/** Cross-section, m2, above a level in a horizontal cylinder; level 0 to the diameter, m. */
export const vaporAreaAbove = (diameterM: number, levelM: number): number => liquidAreaBelow(diameterM, diameterM - levelM)

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
})
