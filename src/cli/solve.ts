import { readBounds, readNumber } from '../whatif/range-text.ts'
import { printCellPlace } from '../workbook/cell-place.ts'
import { solve, type Goal, type Solution, type Solved, type Tried } from '../whatif/solve.ts'
import { solvedWords } from '../whatif/solve-words.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { printValue, tabbed } from './print-value.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { setInput } from './set-input.ts'
import { assignment, locateOne } from './whatif-arguments.ts'
import { openWorkbook } from './workbook-file.ts'

/**
 * Looks for the input that brings a result to a target, or a check to where it is just met. Prints for each solution the input's address, value and unit,
 * and what the result is with it; what else there is to say goes to standard error.
 */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { target, by, within, set = [] }, positionals: [path = ''] } = readArguments(args, {
    target: { type: 'string' }, by: { type: 'string' }, within: { type: 'string' }, set: { type: 'string', multiple: true },
  }, ['FILE'])
  if (target === undefined) throw new BadUsage('--target missing')
  if (by === undefined) throw new BadUsage('--by missing')
  const parts = assignment(target)
  if (parts === undefined) throw new Refusal(`--target "${target}": write an address, "=" and what it should come to, such as "Sheet!C20=36" or "Sheet!C30=met"`)
  const workbook = set.reduce(setInput, await openWorkbook(path, io))
  const solved = solve(workbook, {
    by: locateOne(workbook, '--by', by), target: locateOne(workbook, '--target', parts.address), goal: goalOf(parts.rest),
    ...(within === undefined ? {} : { within: readBounds(within) }),
  })
  for (const solution of solved.solutions) printSolution(solved, solution, io)
  if (!saysItAll(solved)) io.err(oneLine(solvedWords(solved)))
  return solved.solutions.length > 0 ? FINE : NOT_MET
}

const goalOf = (text: string): Goal => (text.trim().toLowerCase() === 'met' ? { kind: 'met' } : { kind: 'number', ...readNumber(text) })

function printSolution({ input, target }: Solved, solution: Solution, io: Io): void {
  const print = ({ input: number, reading }: Tried): void => {
    io.out(tabbed([printCellPlace(input), String(number), input.unitText ?? '', printCellPlace(target), printValue(reading.value), reading.check?.words ?? target.unitText ?? '']))
  }
  print(solution.at)
  if (solution.kind === 'stretch') print(solution.until)
}

/** One input that brings the result right to its target needs no more words. */
const saysItAll = ({ kind, solutions, isMonotonic, gaps }: Solved): boolean => kind === 'found' && solutions[0]?.kind === 'exact' && isMonotonic && gaps.length === 0

const oneLine = (text: string): string => text.replace(/\s+/g, ' ')
