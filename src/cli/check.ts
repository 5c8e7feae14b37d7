import { Graph } from '../calc/graph.ts'
import type { Change } from '../exchange/return/changes.ts'
import { readArguments } from './arguments.ts'
import { findings, type Finding } from './findings.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { inCase } from './in-case.ts'
import { tabbed } from './print-value.ts'
import { BadWorkbook, changeReason, openWithChanges } from './workbook-file.ts'

/**
 * What there is to look at in a workbook; of a spreadsheet file that came back also what was changed in it beside inputs. Of a file that is no workbook everything that
 * is wrong with it is listed.
 */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { json = false, case: name }, positionals: [path = ''] } = readArguments(args, { json: { type: 'boolean' }, case: { type: 'string' } }, ['FILE'])
  try {
    const { workbook, setAside } = await openWithChanges(path, io)
    const graph = new Graph(inCase(workbook, name))
    const found = [...findings(graph), ...setAside.map(changeFinding)]
    list(found, json, io)
    if (!json && found.length === 0) io.out(allWellWords(graph))
    return found.length > 0 ? NOT_MET : FINE
  } catch (error) {
    if (error instanceof BadWorkbook) list(error.problems.map(({ message }) => ({ severity: 'error', place: path, reason: message })), json, io)
    throw error
  }
}

/** What another program changed in a spreadsheet file, and was not taken over. */
const changeFinding = (change: Change): Finding => ({ severity: 'warning', place: change.place, reason: `set aside: ${changeReason(change)}` })

function list(found: readonly Finding[], json: boolean, io: Io): void {
  if (json) io.out(JSON.stringify(found, undefined, 1))
  else for (const { severity, place, reason } of found) io.out(tabbed([severity, place, reason]))
}

function allWellWords(graph: Graph): string {
  const checks = graph.states().reduce((sum, state) => sum + state.checks, 0)
  return `no findings: no error values, ${checks === 0 ? 'no checks in the workbook' : checks === 1 ? 'its one check is met' : `all ${checks} checks are met`}`
}
