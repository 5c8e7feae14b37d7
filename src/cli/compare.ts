import { basename, extname } from 'node:path'
import { Graph } from '../calc/graph.ts'
import { compareWorkbooks } from '../review/differences/compare-workbooks.ts'
import type { Comparison, Difference, Effect } from '../review/differences/difference.ts'
import { printedEffect } from '../review/differences/printed-effect.ts'
import { differencesReport } from '../review/differences/report.ts'
import { resultsCase, toCase } from '../review/differences/results-case.ts'
import { matchTemplate } from '../review/match-template.ts'
import { quoteSheetName } from '../workbook/address.ts'
import { printCellPlace } from '../workbook/cell-place.ts'
import type { Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { inCase } from './in-case.ts'
import { locate } from './locate.ts'
import { printValue, tabbed } from './print-value.ts'
import { BadUsage, Refusal } from './refusal.ts'
import { allTemplates } from './templates.ts'
import { openWorkbook, writeTo } from './workbook-file.ts'

/** How two workbooks differ, or one from the template that it came from. */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { json = false, get = [], case: name, output, template = false }, positionals: [first = '', second] } = readArguments(args, {
    json: { type: 'boolean' }, get: { type: 'string', multiple: true }, case: { type: 'string' }, output: { type: 'string', short: 'o' }, template: { type: 'boolean' },
  }, args.includes('--template') ? ['FILE'] : ['BEFORE', 'NOW'])
  if (output !== undefined && extname(output).toLowerCase() !== '.html') throw new Refusal(`"${output}": accepted: a file that ends in .html`)
  if (output !== undefined && json) throw new BadUsage('--json prints, -o writes a report: give one of the two')
  const path = second ?? first
  const opened = await openWorkbook(path, io, 'all')
  const now = inCase(opened, name)
  // A template has no cases of this workbook.
  const before = template ? await templateOf(path, opened, io) : { workbook: inCase(await openWorkbook(first, io, 'all'), name), words: basename(first) }
  const chosen = get.flatMap((text) => locate(now, text)).map(({ sheet, row, column }) => ({ sheet: sheet.name, row, column }))
  const results = resultsCase(before.workbook, now)
  const [was, is] = [calculatedIn(results, before.workbook), calculatedIn(results, now)]
  const comparison = compareWorkbooks(was, is, { results: chosen, sides: template ? 'template' : 'workbooks' })
  if (output !== undefined) await writeTo(output, differencesReport({ before: was, now: is, comparison, date: new Date(), beforeWords: before.words, nowWords: basename(path) }), false, io)
  else if (json) io.out(JSON.stringify(listed(comparison), undefined, 1))
  else for (const line of lines(comparison)) io.out(line)
  return comparison.differences.length === 0 ? FINE : NOT_MET
}

const calculatedIn = (name: string, workbook: Workbook) => ({ workbook, areas: new Graph(applyEdits(workbook, toCase(workbook, name)).workbook).allAreas() })

async function templateOf(path: string, workbook: Workbook, io: Io): Promise<{ readonly workbook: Workbook; readonly words: string }> {
  const templates = await allTemplates(io)
  const match = matchTemplate(workbook, templates)
  const template = templates.find(({ title }) => title === match?.title)
  if (template === undefined) throw new Refusal(`${path}: it is like none of the templates; "compare BEFORE ${path}" compares it with a workbook`)
  return { workbook: template, words: `the template “${template.title}”` }
}

function lines({ differences, effects }: Comparison): string[] {
  if (differences.length === 0 && effects.length === 0) return ['no differences']
  return [
    ...(differences.length === 0 ? ['no differences'] : differences.map((one) => tabbed([one.kind, placeOf(one), told(one.label, one.was, one.is)]))),
    ...effects.map((effect) => {
      const { was, is, change } = printedEffect(effect)
      return tabbed(['effect', printCellPlace(effect.now), `${told(effect.label, was, is)}${change === '' ? '' : `, ${change}`}`])
    }),
  ]
}

const told = (label: string | undefined, was: string, is: string): string => `${label === undefined ? '' : `${label}: `}${was} → ${is}`

/** `Duty!C20`, or the sheet; empty for what belongs to the workbook as a whole. Of lines the label says which. */
function placeOf({ sheet, now, before, subject }: Pick<Difference, 'sheet' | 'now' | 'before' | 'subject'>): string {
  const place = subject.of === 'lines' ? undefined : (now ?? before)
  return place === undefined ? (sheet === undefined ? '' : quoteSheetName(sheet)) : printCellPlace(place)
}

/** As JSON: places as addresses, values as they are. */
const listed = ({ differences, effects, resultsCompared, resultsOf }: Comparison): unknown => ({
  differences: differences.map((one) => ({
    kind: one.kind, ...(one.sheet === undefined ? {} : { sheet: one.sheet }),
    ...(one.now === undefined ? {} : { now: printCellPlace(one.now) }), ...(one.before === undefined ? {} : { before: printCellPlace(one.before) }),
    ...(one.label === undefined ? {} : { label: one.label }), was: one.was, is: one.is,
  })),
  effects: effects.map(listedEffect),
  resultsCompared,
  resultsOf,
})

const listedEffect = ({ before, now, label, unitBefore, unit, was, is, change, turned }: Effect): unknown => ({
  now: printCellPlace(now), ...(before === undefined ? {} : { before: printCellPlace(before) }), ...(label === undefined ? {} : { label }),
  was: jsonValue(was), ...(unitBefore === undefined ? {} : { unitBefore }), is: jsonValue(is), ...(unit === undefined ? {} : { unit }),
  ...(change === undefined ? {} : { change }), ...(turned ? { turned } : {}),
})

const jsonValue = (value: Effect['was']): unknown => (typeof value === 'object' && value !== null ? printValue(value) : value)
