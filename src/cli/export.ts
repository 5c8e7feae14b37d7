import { readFile } from 'node:fs/promises'
import { extname } from 'node:path'
import { Graph } from '../calc/graph.ts'
import { exportXlsx } from '../exchange/xlsx.ts'
import { reportFile } from '../report/report-file.ts'
import type { Workbook } from '../workbook/document.ts'
import { readArguments } from './arguments.ts'
import { FINE, type ExitCode, type Io } from './io.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { openWorkbook, writeTo } from './workbook-file.ts'

type Writer = (workbook: Workbook, date: Date) => Promise<string | Uint8Array>

/** What each ending of a file's name stands for. */
const WRITERS: ReadonlyMap<string, Writer> = new Map<string, Writer>([
  ['.xlsx', (workbook, date) => exportXlsx(workbook, new Graph(workbook).allValues(), { date })],
  ['.html', async (workbook, date) => {
    const graph = new Graph(workbook)
    const figureStyle = await readFile(new URL('../figures/figures.css', import.meta.url), 'utf8')
    return reportFile({ workbook, values: graph.allAreas(), states: graph.states(), date, figureStyle })
  }],
])

/** A workbook as a file for other programs, or as a report to read and print. An earlier export of that name is replaced. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { output }, positionals: [path = ''] } = readArguments(args, { output: { type: 'string', short: 'o' } }, ['FILE'])
  if (output === undefined) throw new BadUsage('-o OUT.xlsx or OUT.html missing')
  const writer = WRITERS.get(extname(output).toLowerCase())
  if (writer === undefined) throw new Refusal(`"${output}": this version writes files that end in ${[...WRITERS.keys()].join(', ')}`)
  await writeTo(output, await writer(await openWorkbook(path, io), new Date()), false, io)
  return FINE
}
