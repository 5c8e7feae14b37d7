import { isCellError } from '../calc/values.ts'
import { calledCell } from './place.ts'
import { besideUnit } from './quantity-words.ts'
import type { Solution, Solved, Tried } from './solve.ts'

/** How a search ended, in one or two sentences for the user. */
export function solvedWords(solved: Solved): string {
  const { kind, solutions, input, target, gaps } = solved
  const bounds = `between ${quantity(solved.bounds.from, input.unitText)} and ${quantity(solved.bounds.to, input.unitText)}`
  const aim = solved.wanted === undefined ? 'is just met' : `comes to ${quantity(solved.wanted, target.unitText)}`
  const name = calledCell(target)
  const errors = gaps.length === 0 ? '' : ` ${gapWords(solved)}`
  const turns = solved.isMonotonic ? '' : ' On the way it both rises and falls.'
  switch (kind) {
    case 'found': return `${name} ${aim}: ${solutionWords(solved, solutions[0])}.${turns}${errors}`
    case 'several': return `${name} ${aim} at ${solutions.length} inputs ${bounds}: ${solutions.map((one) => solutionWords(solved, one)).join('; ')}.${errors}`
    case 'everywhere': return solved.wanted === undefined ? `${name} is met everywhere ${bounds}.${errors}` : `${name} ${aim} whatever ${calledCell(input)} is.${errors}`
    case 'independent': return `${name} does not hang on ${calledCell(input)}: it is ${valueWords(solved.base, target.unitText)} throughout.${errors}`
    case 'no number': return `${name} has no ${solved.wanted === undefined ? 'verdict' : 'number'} anywhere ${bounds}: ${gaps[0]?.words ?? 'no reason is known'}.`
    case 'none': return `No input ${bounds} does: ${name} ${solved.wanted === undefined ? 'is met nowhere' : `never ${aim}`}.${nearestWords(solved)}${turns}${errors}`
  }
}

/** One solution: the input, and what is special about it. */
export function solutionWords({ input, target }: Pick<Solved, 'input' | 'target'>, solution: Solution | undefined): string {
  if (solution === undefined) return ''
  const at = `${calledCell(input)} = ${quantity(solution.at.input, input.unitText)}`
  switch (solution.kind) {
    case 'exact': return at
    case 'stretch': return `${at} to ${quantity(solution.until.input, input.unitText)}`
    case 'step': return `${at}, where it steps from ${valueWords(solution.before, target.unitText)} to ${valueWords(solution.at, target.unitText)}`
    case 'limit': return `${at}; it holds from there ${solution.holds === 'below' ? 'down' : 'up'}`
  }
}

function nearestWords({ nearest, input, target }: Solved): string {
  return nearest === undefined ? '' : ` Nearest is ${valueWords(nearest, target.unitText)} at ${quantity(nearest.input, input.unitText)}.`
}

function gapWords({ gaps, input, target }: Solved): string {
  const [first] = gaps
  if (first === undefined) return ''
  const more = gaps.length === 1 ? '' : ` (and at ${gaps.length - 1} more stretches)`
  return `From ${quantity(first.from, input.unitText)} to ${quantity(first.to, input.unitText)}${more} ${calledCell(target)} has no value: ${first.words}.`
}

function valueWords({ reading: { value, check } }: Tried, unitText: string | undefined): string {
  if (check !== undefined) return check.words
  if (typeof value === 'number') return quantity(value, unitText)
  return isCellError(value) ? value.error : String(value)
}

/** Eight digits: enough to type, few enough to read. */
const quantity = (value: number, unitText: string | undefined): string => besideUnit(String(Number(value.toPrecision(8))), unitText)
