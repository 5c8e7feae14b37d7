import { readFile } from 'node:fs/promises'
import { extname } from 'node:path'
import { caseOutcomes } from '../calc/case-outcomes.ts'
import { Graph } from '../calc/graph.ts'
import { csvFiles } from '../exchange/csv.ts'
import { exportOds } from '../exchange/ods.ts'
import { exportXlsx } from '../exchange/xlsx.ts'
import { reportFile } from '../report/report-file.ts'
import { reviewed } from '../review/reviewed.ts'
import { casesOf } from '../workbook/cases.ts'
import type { Workbook } from '../workbook/document.ts'
import { readArguments } from './arguments.ts'
import { writeCsvFolder } from './csv-folder.ts'
import { inCase } from './in-case.ts'
import { FINE, type ExitCode, type Io } from './io.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { allTemplates } from './templates.ts'
import { openWorkbook, writeTo } from './workbook-file.ts'

type Writer = (workbook: Workbook, date: Date, io: Io) => Promise<string | Uint8Array>

/** What each ending of a file's name stands for. */
const WRITERS: ReadonlyMap<string, Writer> = new Map<string, Writer>([
  ['.xlsx', (workbook, date) => withValues(exportXlsx, workbook, date)],
  ['.ods', (workbook, date) => withValues(exportOds, workbook, date)],
  ['.html', async (workbook, date, io) => {
    const graph = new Graph(workbook)
    const values = graph.allAreas()
    const figureStyle = await readFile(new URL('../figures/figures.css', import.meta.url), 'utf8')
    return reportFile({ workbook, values, states: graph.states(), date, figureStyle, reviewed: reviewed(workbook, values, await allTemplates(io)) })
  }],
])

function withValues(write: typeof exportXlsx, workbook: Workbook, date: Date): Promise<Uint8Array> {
  const graph = new Graph(workbook)
  const areas = graph.allAreas()
  return write(workbook, new Map([...areas].map(([sheet, { values }]) => [sheet, values])), { date, checks: areas, ...(casesOf(workbook).list.length > 0 ? { cases: caseOutcomes(graph) } : {}) })
}

/** Values go into a folder of this ending, a file a sheet. */
const FOLDER_ENDING = '.csv'
const ENDINGS = [...WRITERS.keys(), FOLDER_ENDING]

/** A workbook as a file for other programs, as values, or as a report to read and print. An earlier export of that name is replaced. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { output, case: name }, positionals: [path = ''] } = readArguments(args, { output: { type: 'string', short: 'o' }, case: { type: 'string' } }, ['FILE'])
  if (output === undefined) throw new BadUsage('-o OUT missing: the name of the file to write')
  const ending = extname(output.replace(/[/\\]+$/, '')).toLowerCase()
  if (ending === FOLDER_ENDING) {
    const workbook = inCase(await openWorkbook(path, io), name)
    await writeCsvFolder(output, csvFiles(workbook, new Graph(workbook).allValues(), { date: new Date() }), io)
    return FINE
  }
  const writer = WRITERS.get(ending)
  if (writer === undefined) throw new Refusal(`"${output}": this version writes files that end in ${ENDINGS.join(', ')}`)
  await writeTo(output, await writer(inCase(await openWorkbook(path, io), name), new Date(), io), false, io)
  return FINE
}
