import { num, unless, type Expression } from './expression.ts'
import type { Steps } from './workings.ts'

/**
 * The root above 0 of a function that rises from below zero at `low` to zero or more at `high`, sought in the logarithm of the unknown; an
 * error where the ends do not enclose it. Two halvings, then regula falsi by the Pegasus rule (Dowell & Jarratt, BIT 12 (1972) 503):
 * it keeps the bracket, gains digits at order 1.64 and needs no more than the newest point and the one across the root, so that
 * each step is four columns and those that `valueAt` takes.
 *
 * @param valueAt the function's value at an expression of the unknown; it may take steps of its own
 */
export function positiveRootSteps(
  steps: Steps, what: string, unit: string, low: number, high: number, count: number, valueAt: (unknown: Expression, name: string) => Expression,
): Expression {
  const valueStep = (unknown: Expression, where: string) => steps.step(`${what} ${where}, value`, '', valueAt(unknown, `${what} ${where}`))
  const atLow = valueStep(num(low), `at ${low}`)
  const atHigh = valueStep(num(high), `at ${high}`)
  let across: Expression = steps.step(`${what}, end below the root`, unit, unless(`AND(${atLow}<0,${atHigh}>=0)`, num(low)))
  let atAcross = atLow
  let newest: Expression = num(high)
  let atNewest = atHigh
  for (let number = 1; number <= count; number++) {
    const where = `step ${number}`
    const halving = number <= HALVINGS
    const [last, atLast] = [newest, atNewest]
    newest = steps.step(`${what}, ${where}`, unit, halving
      ? `SQRT(${last}*${across})`
      : `IF(${atLast}=0,${last},${last}*(${across}/${last})^(${atLast}/(${atLast}-${atAcross})))`)
    if (number === count) break
    atNewest = valueStep(newest, where)
    const crossed = `${atNewest}*${atLast}<0`
    across = steps.step(`${what} across the root, ${where}`, unit, `IF(${crossed},${last},${across})`)
    // An end that stays counts less and less, so that it is left soon.
    atAcross = steps.step(`${what} across the root, ${where}, value`, '',
      `IF(${crossed},${atLast},${halving ? atAcross : `IF(${atLast}=0,${atAcross},${atAcross}*${atLast}/(${atLast}+${atNewest}))`})`)
  }
  return newest
}

const HALVINGS = 2
