import { num, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import { FULL_WITHIN } from './vessel.ts'
import { atMost, lyingVolume, ringVolume, type WrittenVessel } from './vessel-workings.ts'

/** The level, at unit diameter, that holds a volume of liquid, which is checked against the vessel's. */
export function levelSteps(liquid: Expression, vessel: WrittenVessel, steps: Steps): Expression {
  const held = steps.step('liquid / D³', '', atMost(liquid, vessel.volume))
  const missing = steps.step('empty / D³', '', `IF(${vessel.volume}-${held}<=${num(FULL_WITHIN)}*${vessel.volume},0,${vessel.volume}-${held})`)
  const atEnd = steps.step('the same, from the nearer end', '', `MIN(${held},${missing})`)
  // Below this share, where no level is seen, a level for the share itself will do: logarithms need more than 0.
  const nearer = steps.step('the same, above 0', '', `MAX(${atEnd},1E-15*${vessel.volume})`)
  const level = `IF(${vessel.lying},${lyingLevel(nearer, vessel, steps)},${standingLevel(nearer, vessel, steps)})`
  const fromEnd = steps.step('level / D, from the nearer end', '', `IF(${atEnd}=0,0,${level})`)
  return `IF(${held}<=${vessel.volume}/2,${fromEnd},${vessel.height}-${fromEnd})`
}

const VOLUMES_TRIED = 5

/**
 * Secants in logarithms of level and volume. There the volume is nearly straight, of slope 1.3 to 2, and the first guess, from what shell
 * and heads hold near the bottom, is within a fifth: four volumes leave 3e-10 in the worst of vessels, five nothing beyond rounding.
 * No step may go on by more than half of the last, so that rounding cannot throw it off once it has arrived.
 */
function lyingLevel(liquid: Expression, vessel: WrittenVessel, steps: Steps): Expression {
  const { length, head } = vessel
  const tried = (level: Expression, number: number) => {
    const what = `step ${number}`
    const at = steps.step(`${what}: level / D`, '', `MIN(0.5,${level})`)
    return { level: at, value: steps.step(`${what}: ln of the liquid held there`, '', `LN((${lyingVolume(at, what, vessel, steps)})/${liquid})`) }
  }
  let before = tried(`1/SQRT((4/3*${length}/${liquid})^(4/3)+6*${head.volume}/${liquid})`, 1)
  let last = tried(`${before.level}*EXP(${before.value}/${num(-1.6)})`, 2)
  const next = () =>
    `IF(ABS(${before.value}-${last.value})<1E-14,${last.level},${last.level}*(${last.level}/${before.level})^` +
    `MAX(${num(-0.5)},MIN(0.5,${last.value}/(${before.value}-${last.value}))))`
  for (let number = 3; number <= VOLUMES_TRIED; number++) [before, last] = [last, tried(next(), number)]
  return `MIN(0.5,${next()})`
}

/** Closed for the shell, spheroids and a crown; in a knuckle Newton's method, from below, where the area shrinks steadily with the depth. */
function standingLevel(liquid: Expression, { head }: WrittenVessel, steps: Steps): Expression {
  const { depth, volume, knuckle, crown, crownHeight, ring, touchDepth } = head
  // A cap of a sphere or spheroid of height t × radius holds t² (3 − t)/2 of its half; t² (3 − t) = 4 sin² 3φ has the root 2 sin² φ + √3 sin 2φ.
  const angle = steps.step('a third of the angle of the cubic', 'rad', `ASIN(SQRT(MIN(1,${liquid}/(2*IF(${knuckle}>0,2/3*PI()*${crown}^3,MAX(${volume},${liquid}))))))/3`)
  const cap = `IF(${knuckle}>0,${crown},${depth})*(2*SIN(${angle})^2+SQRT(3)*SIN(2*${angle}))`
  const inRing = steps.step('part of a knuckle to its tangent line, empty / D³', '', `MAX(0,${volume}-${liquid})`)
  let z = steps.step('depth of that part / D, step 0', '', `MIN(${touchDepth},4/PI()*${inRing})`)
  for (let number = 1; number <= 3; number++) {
    z = steps.step(`depth of that part / D, step ${number}`, '', `IF(${knuckle}>0,MIN(${touchDepth},${z}-(${ringVolume(z, head)}-${inRing})/(PI()*(${ring}+SQRT(${knuckle}^2-${z}^2))^2)),0)`)
  }
  const inCrown = `OR(${knuckle}=0,${liquid}<=PI()*${crownHeight}^2*(${crown}-${crownHeight}/3))`
  return `IF(${liquid}>=${volume},${depth}+4/PI()*(${liquid}-${volume}),IF(${inCrown},${cap},${depth}-${z}))`
}
