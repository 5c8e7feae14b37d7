import type { CellValue } from '../calc/values.ts'
import { isCellError } from '../calc/values.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'
import type { Watched } from '../whatif/probe.ts'
import { readRange } from '../whatif/range-text.ts'
import { sweep, type Sweep, type SweepLimit, type SweepPoint, type Variation } from '../whatif/sweep.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import type { Workbook } from '../workbook/document.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { printValue } from './print-value.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { setInput } from './set-input.ts'
import { assignment, locateAll, locateOne } from './whatif-arguments.ts'
import { openWorkbook } from './workbook-file.ts'

const USUAL_POINTS = 21

/** Varies one or two inputs and prints what comes of it as CSV (RFC 4180); where a check turns goes to standard error. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { vary = [], get = [], set = [], points }, positionals: [path = ''] } = readArguments(args, {
    vary: { type: 'string', multiple: true }, get: { type: 'string', multiple: true }, set: { type: 'string', multiple: true }, points: { type: 'string' },
  }, ['FILE'])
  if (vary.length === 0) throw new BadUsage('--vary missing')
  if (get.length === 0) throw new BadUsage('--get missing')
  const count = pointsOf(points)
  const workbook = set.reduce(setInput, await openWorkbook(path, io))
  const watch = locateAll(workbook, get)
  if (watch.length === 0) throw new Refusal(`--get ${get.map((one) => `"${one}"`).join(' ')}: there is nothing but empty cells and units`)
  const ready = sweep(workbook, { vary: vary.map((text) => variation(workbook, text, count)), watch })
  io.out(record(heading(ready)))
  let hasErrors = false
  for (const event of ready.events()) {
    if (event.kind === 'limit') io.err(limitWords(ready, event))
    else {
      io.out(record(fields(ready, event)))
      hasErrors ||= event.readings.some(({ value }) => isCellError(value))
    }
  }
  return hasErrors ? NOT_MET : FINE
}

function pointsOf(text: string | undefined): number {
  const points = text === undefined ? USUAL_POINTS : Number(text)
  if (!Number.isInteger(points) || points < 1) throw new BadUsage(`--points ${text}: accepted is a whole number from 1 on`)
  return points
}

function variation(workbook: Workbook, text: string, points: number): Variation {
  const parts = assignment(text)
  if (parts === undefined) throw new Refusal(`--vary "${text}": write an address, "=" and the numbers, such as "Sheet!C5=10:100:10"`)
  const place = locateOne(workbook, '--vary', parts.address)
  const { spacing, unit } = readRange(parts.rest, points)
  return { place, spacing, ...(unit === undefined ? {} : { unit }) }
}

const heading = ({ axes, watched }: Sweep): string[] => [
  ...axes.map(({ input, unitText }) => titleOf(input, input.label, unitText)),
  ...watched.flatMap((one) => {
    const title = titleOf(one, one.label, one.unitText)
    return one.isCheck ? [title, `${title}: margin`] : [title]
  }),
]

/** A check's margin is a share of what it is compared with; empty where it has none. */
const fields = ({ watched }: Sweep, { given, readings }: SweepPoint): string[] => [
  ...given.map(String),
  ...readings.flatMap(({ value, check }, at) => (watched[at]?.isCheck === true ? [csvValue(value), check?.margin === undefined ? '' : String(check.margin)] : [csvValue(value)])),
]

const titleOf = (place: CellPlace, label: string | undefined, unitText: string | undefined): string =>
  [printCellPlace(place), label, unitText === undefined || unitText === '-' ? undefined : `(${unitText})`].filter((part) => part !== undefined).join(' ')

/** A text that another program would take for a formula is marked as text. */
const csvValue = (value: CellValue): string => (typeof value === 'string' && /^[=+\-@\t\r]/.test(value) ? `'${value}` : printValue(value))

const record = (values: readonly string[]): string => values.map((value) => (/[",\r\n]/.test(value) ? `"${value.replaceAll('"', '""')}"` : value)).join(',')

function limitWords({ axes, watched }: Sweep, { watched: at, row, from, to, last, first }: SweepLimit): string {
  const [along, second] = axes
  const check: Watched | undefined = watched[at]
  if (along === undefined || check === undefined) throw new WorkbookProblem('a limit belongs to a watched check')
  const unit = along.unitText === undefined || along.unitText === '-' ? '' : ` ${along.unitText}`
  const where = second === undefined ? '' : ` at ${printCellPlace(second.input)} = ${second.numbers[row]}`
  return `${titleOf(check, check.label, undefined)} turns from ${verdictWords(from)} to ${verdictWords(to)} between ${printCellPlace(along.input)} = ${last} and ${first}${unit}${where}`
}

const verdictWords = (verdict: SweepLimit['from']): string => (verdict === 'none' ? 'no verdict' : verdict)
