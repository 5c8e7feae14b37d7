import { extname } from 'node:path'
import { Graph } from '../calc/graph.ts'
import { exportXlsx } from '../exchange/xlsx.ts'
import type { Workbook } from '../workbook/document.ts'
import { readArguments } from './arguments.ts'
import { FINE, type ExitCode, type Io } from './io.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { openWorkbook, writeTo } from './workbook-file.ts'

/** What each ending of a file's name stands for. */
const WRITERS: ReadonlyMap<string, (workbook: Workbook) => Uint8Array> = new Map([
  ['.xlsx', (workbook: Workbook) => exportXlsx(workbook, new Graph(workbook).allValues(), { date: new Date() })],
])

/** A workbook as a file for other programs. An earlier export of that name is replaced. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { output }, positionals: [path = ''] } = readArguments(args, { output: { type: 'string', short: 'o' } }, ['FILE'])
  if (output === undefined) throw new BadUsage('-o OUT.xlsx missing')
  const writer = WRITERS.get(extname(output).toLowerCase())
  if (writer === undefined) throw new Refusal(`"${output}": this version writes files that end in ${[...WRITERS.keys()].join(', ')}`)
  await writeTo(output, writer(await openWorkbook(path, io)), false, io)
  return FINE
}
