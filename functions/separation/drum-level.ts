import { quantity, quantityOf, type SiQuantity } from '../arguments.ts'
import { outOfRange, type Fault } from '../fault.ts'
import { formatQuantity } from '../units/format.ts'
import { ROUNDING } from '../rounding.ts'
import { num, unless, type Expression } from '../workings/expression.ts'

export const drumDiameterArgument = quantity('length', 'inside diameter of the horizontal drum', { above: 0, limit: 'a drum has a diameter' })

export const drumLevelArgument = quantityOf(['length'], 'level of the liquid above the lowest point inside', {
  min: 0, limit: 'the level counts from the lowest point inside',
})

/** The level, m, of a drum that may be full, or the fault that it lies above the top. */
export function levelInDrum(level: SiQuantity, diameterM: number): number | Fault {
  if (level.si <= diameterM * (1 + ROUNDING)) return Math.min(level.si, diameterM)
  return outOfRange(`level is ${shown(level)}; accepted is 0 to ${formatQuantity(diameterM, level.unit)} (the inside diameter)`)
}

/** The same in workings: an error where the level lies above the top. */
export const levelInDrumWritten = (levelM: Expression, diameterM: Expression): Expression =>
  unless(`${levelM}<=${diameterM}*${num(1 + ROUNDING)}`, `MIN(${levelM},${diameterM})`)

/** The level, m, of a drum with a gas space, or the fault that there is none. */
export function levelBelowTop(level: SiQuantity, diameterM: number): number | Fault {
  if (level.si < diameterM * (1 - ROUNDING)) return level.si
  return outOfRange(
    `level is ${shown(level)}; accepted is less than ${formatQuantity(diameterM, level.unit)} (the inside diameter: a full drum has no gas space)`,
  )
}

/** The same in workings: an error where there is no gas space. */
export const levelBelowTopWritten = (levelM: Expression, diameterM: Expression): Expression =>
  unless(`${levelM}<${diameterM}*${num(1 - ROUNDING)}`, levelM)

const shown = (level: SiQuantity): string => formatQuantity(level.si, level.unit)
