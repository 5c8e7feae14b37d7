import { ROUNDING } from '../rounding.ts'
import { num, unless, type Expression } from '../workings/expression.ts'
import type { Steps, Written } from '../workings/workings.ts'
import type { SiQuantity } from '../arguments.ts'
import { headRow, headSteps, headValue, type WrittenHead } from './heads-workings.ts'
import { lyingHeads } from './lying-heads-workings.ts'

interface WrittenShape {
  readonly diameter: Expression
  readonly length: Expression
  readonly heads: Expression
  readonly position: Expression
}

/** A vessel of unit diameter in workings: real lengths are × D, volumes × D³. */
export interface WrittenVessel {
  readonly lying: Expression
  readonly length: Expression
  readonly height: Expression
  readonly volume: Expression
  readonly head: WrittenHead
}

/** Two flat heads without a shell enclose nothing: that is an error. */
export const unlessEmpty = ({ length, heads }: Pick<WrittenShape, 'length' | 'heads'>, value: Expression): Expression =>
  unless(`OR(${length}>0,${heads}<>"flat")`, value)

const capacity = (length: Expression, headVolume: Expression): Expression => `PI()/4*${length}+2*${headVolume}`

/** Internal volume, m³. */
export function vesselVolumeSteps({ diameter, length, heads }: Omit<WrittenShape, 'position'>, steps: Steps): Expression {
  const headVolume = headValue(headRow(heads, steps), 'volume')
  return unlessEmpty({ length, heads }, `${diameter}^3*(${capacity(`${length}/${diameter}`, headVolume)})`)
}

/** Outside surface, m². */
export function vesselSurfaceSteps({ diameter, length, heads }: Omit<WrittenShape, 'position'>, steps: Steps): Expression {
  const surface = headValue(headRow(heads, steps), 'surface')
  return unlessEmpty({ length, heads }, `PI()*${diameter}*${length}+2*${surface}*${diameter}^2`)
}

export function vesselSteps({ diameter, length: lengthM, heads, position }: WrittenShape, steps: Steps): WrittenVessel {
  const head = headSteps(headRow(heads, steps), steps)
  const length = steps.step('length / D', '', unlessEmpty({ length: lengthM, heads }, `${lengthM}/${diameter}`))
  const lying = `${position}="horizontal"`
  return {
    head, length, lying,
    height: steps.step('inside height / D', '', `IF(${lying},1,${length}+2*${head.depth})`),
    volume: steps.step('volume of the vessel / D³', '', capacity(length, head.volume)),
  }
}

/** Volume of the vessel and of the liquid in it, m³, at a level; an error where that is not inside. */
export function filledVesselSteps(given: WrittenShape & { readonly level: Written<SiQuantity> }, steps: Steps) {
  const vessel = vesselSteps(given, steps)
  const { height, volume, lying } = vessel
  const { si, dimension } = given.level
  const stated = steps.step('level / D, as given', '', `IF(${dimension}="share",${si}*${height},${si}/${given.diameter})`)
  const level = steps.step('level / D', '', atMost(stated, height))
  const nearer = steps.step('level / D, from the nearer end', '', `MIN(${level},${height}-${level})`)
  const inHalf = steps.step('the same, at most half a diameter', '', `MIN(0.5,${nearer})`)
  const lower = steps.step('volume at the nearer end / D³', '', `IF(${lying},${lyingVolume(inHalf, 'level', vessel, steps)},${standingVolume(nearer, vessel)})`)
  return {
    liquidM3: steps.step('liquid', 'm3', `${given.diameter}^3*IF(${level}<=${height}/2,${lower},${volume}-${lower})`),
    volumeM3: `${given.diameter}^3*${volume}`,
  }
}

/** The value where it lies between 0 and a bound, the latter to rounding, which it does not pass. */
export const atMost = (value: Expression, most: Expression): Expression =>
  unless(`AND(${value}>=0,${value}<=${most}*${num(1 + ROUNDING)})`, `MIN(${value},${most})`)

/** Liquid up to a level, 0 to 0.5, in a lying vessel of unit diameter: the segment along the shell and the part of both heads. */
export function lyingVolume(level: Expression, what: string, { length, head }: WrittenVessel, steps: Steps): Expression {
  const halfWidth = steps.step(`${what}: half-width of the surface / D`, '', `SQRT(${level}*(1-${level}))`)
  return `${length}*(ASIN(SQRT(${level}))/2-${halfWidth}*(0.5-${level}))+${lyingHeads(level, halfWidth, what, head, steps)}`
}

/** Liquid up to a level, at most half the height, in a standing vessel of unit diameter: the bottom head, then the shell above it. */
export function standingVolume(level: Expression, { head }: WrittenVessel): Expression {
  const { depth, volume, knuckle, crown, crownHeight } = head
  const dished = `IF(${level}<=${crownHeight},PI()*${level}^2*(${crown}-${level}/3),${volume}-${ringVolume(`(${depth}-${level})`, head)})`
  const spheroid = `PI()/4*(${level}/${depth})^2*(${depth}-${level}/3)`
  return `IF(${level}>=${depth},${volume}+PI()/4*(${level}-${depth}),IF(${knuckle}>0,${dished},${spheroid}))`
}

/** Volume of the knuckle's part between the tangent line and a plane this far from it, at most to where it touches the crown. */
export const ringVolume = (z: Expression, { ring, knuckle }: WrittenHead): Expression =>
  `PI()*((${ring}^2+${knuckle}^2)*${z}-${z}^3/3+${ring}*(${z}*SQRT(${knuckle}^2-${z}^2)+${knuckle}^2*ASIN(${z}/${knuckle})))`
