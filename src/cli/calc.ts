import { Graph } from '../calc/graph.ts'
import { isCellError, type CellValue } from '../calc/values.ts'
import { eachCell } from '../workbook/cells.ts'
import type { Workbook } from '../workbook/document.ts'
import { unitOfValue } from '../workbook/unit-scope.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { locate, printPlace, type Place } from './locate.ts'
import { printValue, tabbed } from './print-value.ts'
import { setInput } from './set-input.ts'
import { openWorkbook } from './workbook-file.ts'

/** Recalculates a workbook, with other inputs if asked, and prints cells of it. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { set = [], get = [] }, positionals: [path = ''] } = readArguments(
    args, { set: { type: 'string', multiple: true }, get: { type: 'string', multiple: true } }, ['FILE'],
  )
  const workbook = set.reduce(setInput, await openWorkbook(path, io))
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
