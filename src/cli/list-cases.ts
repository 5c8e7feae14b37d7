import { caseOutcomes, comparedText } from '../calc/case-outcomes.ts'
import { Graph } from '../calc/graph.ts'
import { casesOf } from '../workbook/cases.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import type { Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { tabbed, printValue } from './print-value.ts'
import { Refusal } from './refusal.ts'

/**
 * Prints what comes out in the base and in every case: a line a result, a column a case, numbers in full; at last how many checks are met.
 * @param asked which results; those that the workbook compares where there are none
 * @throws Refusal where there are no cases
 */
export function listCases(workbook: Workbook, asked: readonly CellPlace[], io: Io): ExitCode {
  const { list, compared } = casesOf(workbook)
  if (list.length === 0) throw new Refusal('the workbook has no cases')
  const places = asked.length > 0 ? asked : compared
  const comparing = applyEdits(workbook, [{ kind: 'cases', cases: { ...casesOf(workbook), compared: places } }]).workbook
  const outcomes = caseOutcomes(new Graph(comparing))
  const [base] = outcomes
  io.out(tabbed(['cell', 'result', 'unit', ...outcomes.map(({ name }) => name)]))
  for (const [index, place] of places.entries()) {
    const of = base?.compared[index]
    io.out(tabbed([printCellPlace(place), of?.label ?? '', of?.unit ?? '', ...outcomes.map(({ compared: values }) => {
      const value = values[index]
      return value === undefined ? '' : value.check ? comparedText(value) : printValue(value.value)
    })]))
  }
  io.out(tabbed(['', 'checks met', '', ...outcomes.map(({ checks, notMet }) => `${checks - notMet.length} of ${checks}`)]))
  for (const { name, notMet } of outcomes) for (const check of notMet) io.err(`${name}: ${printCellPlace(check)}: ${check.label ?? ''}: ${check.words}`)
  return outcomes.some(({ notMet, errors }) => notMet.length > 0 || errors > 0) ? NOT_MET : FINE
}
