import { block, type Expression } from '../workings/expression.ts'
import type { Steps } from '../workings/workings.ts'
import type { WrittenHead } from './heads-workings.ts'

/**
 * Liquid in both heads of a lying vessel of unit diameter up to a level, 0 to 0.5, by the closed forms and the integral of the code.
 * Angles are arc tangents of half angles, which lose no digits at either end.
 */
export function lyingHeads(level: Expression, halfWidth: Expression, what: string, head: WrittenHead, steps: Steps): Expression {
  const { touchRadius, depth, knuckle } = head
  const chord = `(0.5-${level})`
  const halfChord = steps.step(
    `${what}: half-width of the surface where crown and knuckle touch / D`, '', `SQRT(MAX(0,(${touchRadius}-${chord})*(${touchRadius}+${chord})))`,
  )
  const dished = `2*(${underCrown(chord, halfChord, head)}+${underKnuckle(chord, halfWidth, halfChord, what, head, steps)})`
  return `IF(${knuckle}>0,${dished},PI()*${depth}*${level}^2*(1-2/3*${level}))`
}

/** The column over a circle segment, up to the crown, less what lies behind the tangent line. */
function underCrown(chord: Expression, halfChord: Expression, { crown, centre, touchRadius, touchDepth }: WrittenHead): Expression {
  const cosine = `(${centre}+${touchDepth})`
  const sector = `2*${touchRadius}^2*ATAN(${halfChord}/(${touchRadius}+${chord}))`
  const triangle = `${chord}*${halfChord}`
  const column =
    `(${touchDepth}-${centre})/2*(${sector}-${triangle})+${cosine}/6*(${sector}+${triangle})` +
    `-(${crown}^2*${chord}-${chord}^3/3)*ATAN(${halfChord}/${cosine})` +
    `-4/3*${crown}^2*${cosine}*ATAN(${halfChord}/(${touchRadius}+${chord}))` +
    `+4/3*${crown}^3*ATAN(${crown}*${halfChord}/(${touchRadius}*SQRT(${crown}^2-${chord}^2)+${cosine}*${chord}))`
  return `IF(${halfChord}=0,0,${column})`
}

/** Shells about the axis from where crown and knuckle touch, or from the chord, to the wall: a sum over the nodes of the rule. */
function underKnuckle(
  chord: Expression, halfWidth: Expression, halfChord: Expression, what: string, { ring, knuckle }: WrittenHead, steps: Steps,
): Expression {
  const half = steps.step(`${what}: half the angle from which the knuckle counts`, 'rad', `IF(${halfChord}=0,0,ASIN(MIN(1,${halfChord}/${halfWidth}))/2)`)
  const range = `(PI()/4-${half})`
  const psi = `(PI()/4+${half}+${range}*${block('heads', 'node')})`
  const s = `${halfWidth}*SIN(${psi})`
  const radius = `SQRT(${chord}^2+(${s})^2)`
  const integrand = `SIN(${psi})*COS(${psi})^2*SQRT((${radius}-${ring}+${knuckle})/(${radius}+0.5))*ATAN(${s}/(${radius}+${chord}))`
  return steps.step(
    `${what}: liquid under one knuckle / D³`, '', `IF(${knuckle}>0,4*${halfWidth}^3*${range}*SUMPRODUCT(${block('heads', 'weight')}*${integrand}),0)`,
  )
}
