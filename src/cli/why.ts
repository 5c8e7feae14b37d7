import { extname } from 'node:path'
import { Graph } from '../calc/graph.ts'
import { isCellError } from '../calc/values.ts'
import { dateInWords } from '../pages/date-words.ts'
import { reportSettingsOf } from '../pages/settings-of.ts'
import { derivationFile } from '../review/derivation/derivation-report.ts'
import { derivationText } from '../review/derivation/derivation-text.ts'
import { derive } from '../review/derivation/derive.ts'
import { handFile } from '../review/derivation/hand-pages.ts'
import { handSheet } from '../review/derivation/hand-sheet.ts'
import { Survey } from '../review/survey.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { inCase } from './in-case.ts'
import { locate, type Place } from './locate.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { openWorkbook, writeTo } from './workbook-file.ts'

/** How chosen results come about, down to the inputs: as text, as a report, or as a sheet to compute them on by hand. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { case: name, output, hand = false, blind = false, rows = false }, positionals: [path = '', ...cells] } = readArguments(
    args, { case: { type: 'string' }, output: { type: 'string', short: 'o' }, hand: { type: 'boolean' }, blind: { type: 'boolean' }, rows: { type: 'boolean' } }, ['FILE', 'CELL'], true,
  )
  if (blind && !hand) throw new BadUsage('--blind hides the values of a hand calculation sheet: give --hand too')
  if (hand && output === undefined) throw new BadUsage('-o OUT.html missing: a hand calculation sheet is a file to print')
  if (output !== undefined && extname(output).toLowerCase() !== '.html') throw new Refusal(`"${output}": accepted: a file that ends in .html`)
  const workbook = inCase(await openWorkbook(path, io), name)
  const places = cells.flatMap((text) => filled(locate(workbook, text)))
  if (places.length === 0) throw new Refusal(`${cells.join(', ')}: nothing stands there`)
  if (places.length > MOST_RESULTS) throw new Refusal(`${places.length} cells; accepted: up to ${MOST_RESULTS} results at a time`)
  const results = places.map(({ sheet, row, column }) => ({ sheet: sheet.name, row, column }))
  const graph = new Graph(workbook)
  const survey = new Survey(workbook, graph.allAreas())
  const input = { settings: reportSettingsOf(workbook), date: dateInWords(new Date()) }
  if (hand) await writeTo(output ?? '', handFile({ ...input, blind, sheets: results.map((place) => handSheet(survey, place)) }), false, io)
  else if (output === undefined) derivationText(derive(survey, results), { unfold: rows }).forEach((line) => io.out(line))
  else await writeTo(output, derivationFile({ ...input, unfold: rows, derivation: derive(survey, results) }), false, io)
  const failed = places.some(({ sheet, row, column }) => {
    const value = graph.value(sheet.name, row, column)
    return isCellError(value) || (value === false && sheet.rows[row]?.[column]?.role === 'check')
  })
  return failed ? NOT_MET : FINE
}

const MOST_RESULTS = 200

/** Of a range only what holds something. */
const filled = (places: readonly Place[]): readonly Place[] => places.filter(({ sheet, row, column }) => (sheet.rows[row]?.[column]?.content ?? null) !== null)
