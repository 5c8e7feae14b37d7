import { num, type Expression } from './expression.ts'
import type { Steps } from './workings.ts'

/**
 * The root of a function that is below zero at `low` and above zero at `high`, in a fixed number of steps of regula falsi with the
 * Illinois halving (Dowell & Jarratt, BIT 11 (1971) 168): it keeps the bracket and gains digits at order 1.44. Each step is six columns.
 * Take the unknown and the function so that they are nearly in proportion, in logarithms for instance: fifteen steps then reach rounding.
 *
 * @param valueAt the function's value at an expression of the unknown; it may take steps of its own
 */
export function bracketedRootSteps(
  steps: Steps, what: string, unit: string, low: Expression, high: Expression, count: number, valueAt: (unknown: Expression, name: string) => Expression,
): Expression {
  const step = (label: string, formula: Expression, stepUnit = unit) => steps.step(`${what}, ${label}`, stepUnit, formula)
  let from = step('lower end', low)
  let to = step('upper end', high)
  let atFrom = step('value at the lower end', valueAt(from, `${what} at the lower end`), '')
  let atTo = step('value at the upper end', valueAt(to, `${what} at the upper end`), '')
  let before: Expression = num(0)
  for (let number = 1; number <= count; number++) {
    const next = step(`step ${number}`, `IF(${atTo}=${atFrom},${to},(${from}*${atTo}-${to}*${atFrom})/(${atTo}-${atFrom}))`)
    const atNext = step(`value ${number}`, valueAt(next, `${what} at step ${number}`), '')
    const [oldFrom, oldTo, oldAtFrom, oldAtTo] = [from, to, atFrom, atTo]
    from = step(`lower end ${number}`, `IF(${atNext}<0,${next},${oldFrom})`)
    to = step(`upper end ${number}`, `IF(${atNext}<0,${oldTo},${next})`)
    // The end that stays twice in a row counts half, so that it is left soon.
    atFrom = step(`value at the lower end ${number}`, `IF(${atNext}<0,${atNext},IF(${before}>0,${oldAtFrom}/2,${oldAtFrom}))`, '')
    atTo = step(`value at the upper end ${number}`, `IF(${atNext}<0,IF(${before}<0,${oldAtTo}/2,${oldAtTo}),${atNext})`, '')
    before = step(`side ${number}`, `IF(${atNext}<0,-1,1)`, '')
  }
  return step('root', `IF(ABS(${atFrom})<ABS(${atTo}),${from},${to})`)
}
