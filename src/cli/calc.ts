import { Graph } from '../calc/graph.ts'
import { isCellError, type CellValue } from '../calc/values.ts'
import { eachCell } from '../workbook/cells.ts'
import type { Workbook } from '../workbook/document.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { inCase } from './in-case.ts'
import { listCases } from './list-cases.ts'
import { locate, printPlace, type Place } from './locate.ts'
import { printValue, tabbed } from './print-value.ts'
import { BadUsage } from './refusal.ts'
import { setInput } from './set-input.ts'
import { openWorkbook } from './workbook-file.ts'

/** Recalculates a workbook, in another case or with other inputs if asked, and prints cells of it; or what comes out in every case. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { set = [], get = [], case: name, cases = false }, positionals: [path = ''] } = readArguments(
    args, { set: { type: 'string', multiple: true }, get: { type: 'string', multiple: true }, case: { type: 'string' }, cases: { type: 'boolean' } }, ['FILE'],
  )
  if (cases && name !== undefined) throw new BadUsage('--cases shows every case, --case one of them: give one of the two')
  const workbook = set.reduce(setInput, inCase(await openWorkbook(path, io), name))
  if (cases) return listCases(workbook, get.flatMap((text) => locate(workbook, text)).map(({ sheet, row, column }) => ({ sheet: sheet.name, row, column })), io)
  const places = get.length === 0 ? resultsAndChecks(workbook) : get.flatMap((text) => locate(workbook, text))
  const graph = new Graph(workbook)
  let failed = false
  for (const place of places) {
    const value = valueAt(graph, place)
    io.out(tabbed([printPlace(place), printValue(value), unitAt(graph, place)]))
    if (isCellError(value)) io.err(`${value.error}: ${printPlace(place)}: ${value.message}`)
    if (isCellError(value) || (value === false && roleAt(place) === 'check')) failed = true
  }
  return failed ? NOT_MET : FINE
}

function resultsAndChecks({ sheets }: Workbook): Place[] {
  const places: Place[] = []
  for (const sheet of sheets) {
    eachCell(sheet, ({ role }, row, column) => {
      if (role === 'result' || role === 'check') places.push({ sheet, row, column })
    })
  }
  return places
}

const valueAt = (graph: Graph, { sheet, row, column }: Place): CellValue => graph.value(sheet.name, row, column)

/** A unit may itself be a formula, so that it follows another cell's. */
function unitAt(graph: Graph, { sheet, row, column }: Place): string {
  const unit = unitOfValue(sheet, { row, column })
  return unit === undefined ? '' : printValue(valueAt(graph, { sheet, ...unit }))
}

const roleAt = ({ sheet, row, column }: Place) => sheet.rows[row]?.[column]?.role
