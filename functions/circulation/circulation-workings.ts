import { byName, unless, type Expression } from '../workings/expression.ts'
import { positiveRootSteps } from '../workings/positive-root.ts'
import type { Steps } from '../workings/workings.ts'
import { balanceSteps, type WrittenRows } from './balance-workings.ts'
import { GREATEST_NUMBER } from './circulation.ts'
import { PARTS, partNames, type Part } from './parts.ts'

/** The loop in balance as `circulation` finds it, with each part of the balance in a column; an error where it finds none. */
export function circulationSteps(given: WrittenRows, model: Expression, steps: Steps): { readonly circulationNumber: Expression; readonly parts: Readonly<Record<Part, Expression>> } {
  const terms = balanceSteps(given, model, steps)
  const circulationNumber = positiveRootSteps(steps, 'circulation number', '-', 1, GREATEST_NUMBER, ROOT_STEPS, (n, at) => {
    const legs = steps.step(`${at}: leg loss, return friction and column`, 'Pa', `${terms.legLossPa(n)}+${terms.returnFrictionPa(n)}+${terms.returnColumnPa(n)}`)
    const coil = steps.step(`${at}: coil friction, acceleration and column`, 'Pa', `${terms.coilFrictionPa(n)}+${terms.coilAccelerationPa(n)}+${terms.coilColumnPa(n)}`)
    // Where friction governs, losses are a power of the number.
    return `LN((${legs}+${coil})/(${terms.drivingHeadPa(n)}))`
  })
  const columns = partNames.map((part) => {
    const [key, dimension] = PARTS[part]
    return [part, steps.step(part, SI_UNIT[dimension], terms[key](circulationNumber))] as const
  })
  return { circulationNumber, parts: Object.fromEntries(columns) as Record<Part, Expression> } // each part is a column
}

/** One part by its name; an error where the unit asked for is of another dimension than the part. */
export function partSteps(given: WrittenRows, part: Expression, dimensionAsked: Expression, model: Expression, steps: Steps): Expression {
  const { circulationNumber, parts } = circulationSteps(given, model, steps)
  const cases = partNames.map((name) => [name, unless(`${dimensionAsked}="${PARTS[name][1]}"`, parts[name])] as const)
  // The driving head does not depend on the number: where there is none it is refused as well.
  return unless(`${circulationNumber}>0`, byName(part, Object.fromEntries(cases)))
}

/** All that the loop takes up at a circulation number that is given. */
export function lossSteps(given: WrittenRows, circulationNumber: Expression, model: Expression, steps: Steps): Expression {
  const terms = balanceSteps(given, model, steps)
  const n = steps.step('circulation number', '-', circulationNumber)
  const legs = steps.step('leg loss, return friction and column', 'Pa', `${terms.legLossPa(n)}+${terms.returnFrictionPa(n)}+${terms.returnColumnPa(n)}`)
  const coil = steps.step('coil friction, acceleration and column', 'Pa', `${terms.coilFrictionPa(n)}+${terms.coilAccelerationPa(n)}+${terms.coilColumnPa(n)}`)
  return `${legs}+${coil}`
}

/** Ordinary loops settle to rounding in eleven; this many left no more than 1e-7 in 900 000 random loops over all of the block's ranges. */
const ROOT_STEPS = 15

const SI_UNIT = { 'pressure': 'Pa', 'velocity': 'm/s', 'mass flow': 'kg/s' } as const
