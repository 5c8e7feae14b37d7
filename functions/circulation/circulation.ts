import { outOfRange, type Fault } from '../fault.ts'
import { bracketedRoot } from '../holdup/bracketed-root.ts'
import { formatNumber } from '../units/format.ts'
import { STANDARD_GRAVITY } from '../units/constants.ts'
import { balanceAt, losses, type Balance, type Loop, type LoopFluid, type SlipModel } from './balance.ts'

/** A loop in balance. The circulation number is the mass of liquid fed for each mass evaporated, 1 or more. */
export interface Circulation {
  readonly circulationNumber: number
  readonly balance: Balance
}

/** Above it next to nothing boils and the loop is one of liquid, for which its model is not meant. */
export const GREATEST_NUMBER = 1000

/**
 * Natural circulation of a gravity-fed coil at a load, W, above 0. The liquid enters saturated and the load fixes what evaporates, so
 * that more circulation always means more friction, more acceleration and heavier columns: losses rise steadily with the circulation
 * number (a test holds them to it), the balance has one root at most, and that one is stable.
 * A fault says what is missing where the level cannot drive even the least flow that the load evaporates.
 */
export function circulation(loop: Loop, fluid: LoopFluid, loadW: number, model: SlipModel): Circulation | Fault {
  const at = (circulationNumber: number) => balanceAt(circulationNumber, loop, fluid, loadW, model)
  const excessPa = (balance: Balance) => balance.drivingHeadPa - losses(balance)

  const least = at(1)
  // Without lift, the return level with coil and drum, rounding leaves no difference at any number: 0 is refused as well.
  if (excessPa(least) <= 0) return driesOut(least, fluid.liquidDensity)
  if (excessPa(at(GREATEST_NUMBER)) > 0) {
    return outOfRange(`at this load the coil would be fed more than ${GREATEST_NUMBER} times what it evaporates: it is a loop of liquid, for which this balance is not meant; accepted is a higher load`)
  }
  const circulationNumber = Math.exp(bracketedRoot((logarithm) => excessPa(at(Math.exp(logarithm))), 0, Math.log(GREATEST_NUMBER)))
  return { circulationNumber, balance: at(circulationNumber) }
}

function driesOut(least: Balance, liquidDensity: number): Fault {
  const missingPa = losses(least) - least.drivingHeadPa
  const missingM = missingPa / (liquidDensity * STANDARD_GRAVITY)
  const kilopascal = (pascal: number) => `${short(pascal / 1e3)} kPa`
  return outOfRange(
    `the level cannot drive this load: were all liquid fed to evaporate (circulation number 1), the loop would take up ${kilopascal(losses(least))} and the level ` +
    `gives ${kilopascal(least.drivingHeadPa)}; missing at best are ${kilopascal(missingPa)}, ${short(missingM)} m or ${short(missingM / 0.3048)} ft of liquid, and the coil would dry out: ` +
    'a higher level, more or wider circuits, wider legs or less load',
  )
}

const short = (value: number): string => formatNumber(Number(value.toPrecision(3)))
