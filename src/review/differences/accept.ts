import { switchCase } from '../../workbook/case-switching.ts'
import { BASE, casesOf, currentName } from '../../workbook/cases.ts'
import { removeSheet, renameSheet } from '../../workbook/commands.ts'
import { foldCase, sheetByName, sheetIndex, usedRange, type Cell, type Sheet, type Workbook } from '../../workbook/document.ts'
import { applyEdits, type CellChange, type Edit } from '../../workbook/edits.ts'
import { deleteLinesAtOnce, insertLinesAtOnce } from '../../workbook/line-commands.ts'
import { acceptCells } from './accept-cells.ts'
import { acceptCases, acceptFigures, acceptNames, acceptReport, acceptTolerances } from './accept-outside.ts'
import { differencesIn, inSystem, SAME_CASE } from './compare-workbooks.ts'
import type { Comparison, Difference, Subject } from './difference.ts'
import type { Found } from './found.ts'
import type { Layout, SheetPair } from './layout.ts'
import { lineRuns } from './line-map.ts'
import { NO_AREAS, Side, sidesOf, type Sides } from './sides.ts'

/** What the step is called that undoes it. */
export const DIFFERENCES_ACCEPTED = 'Side of the other workbook'

/**
 * The edits that let the workbook now take the side of the one before for some differences of a comparison of the two; those that refuse it are passed over.
 * What follows from what came back follows: a row that is put back gives formulas the references back that they lost with it.
 * @param now the workbook as it was compared
 * @param ids the numbers of the differences
 * @throws WorkbookProblem where the workbook would be one that no file accepts
 */
export function acceptDifferences(before: Workbook, now: Workbook, { differences, layout, restatedTo }: Pick<Comparison, 'differences' | 'layout' | 'restatedTo'>, ids: readonly number[]): Edit[] {
  const taken = ids.flatMap((id) => differences[id] ?? []).filter(({ accept }) => 'words' in accept)
  if (taken.length === 0) return []
  const draft = new Draft(now)
  draft.act(switchCase(now, null))
  const side = new Side(inSystem(before, restatedTo), NO_AREAS)
  const sides = (): Sides => sidesOf(side, new Side(draft.workbook, NO_AREAS), draft.layout)
  draft.layout = layout

  const structural = taken.filter(({ subject }) => isStructural(subject))
  const others = taken.filter(({ subject }) => !isStructural(subject))
  const known = structural.length === 0 ? undefined : keysOf(sides())
  takeParts(draft, sides, others)
  if (known !== undefined) {
    takeStructure(draft, side, structural)
    // What was the same but for what has come back or gone is made the same again.
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const following = [...differencesIn(sides(), SAME_CASE)].filter((one) => 'words' in one.accept && keyOf(one) !== undefined && !known.has(keyOf(one) ?? ''))
      if (following.length === 0) break
      takeParts(draft, sides, following)
    }
  }
  const wanted = taken.some(({ subject }) => subject.of === 'current case') ? currentName(before) : currentName(now)
  const { list } = casesOf(draft.workbook)
  const at = list.findIndex(({ name }) => foldCase(name) === foldCase(wanted))
  draft.act(wanted === BASE || at < 0 ? [] : switchCase(draft.workbook, at))
  return draft.edits
}

/** What follows from what follows: a name that means a formula again. Twice is enough, and no circle goes on. */
const MOST_ROUNDS = 3

class Draft {
  workbook: Workbook
  layout: Layout = { pairs: [] }
  readonly edits: Edit[] = []

  constructor(workbook: Workbook) {
    this.workbook = workbook
  }

  act(edits: readonly Edit[]): void {
    this.workbook = applyEdits(this.workbook, edits).workbook
    for (const edit of edits) this.edits.push(edit)
  }
}

const isStructural = ({ of }: Subject): boolean => of === 'lines' || of === 'sheet' || of === 'order of sheets'

/** All that leaves rows, columns and sheets where they are. */
function takeParts(draft: Draft, sides: () => Sides, chosen: readonly Found[]): void {
  const of = (...kinds: readonly Subject['of'][]): readonly Found[] => chosen.filter(({ subject }) => kinds.includes(subject.of))
  const steps: readonly (readonly [readonly Found[], (sides: Sides, chosen: readonly Found[]) => Edit[]])[] = [
    [of('cell'), acceptCells],
    [of('name'), acceptNames],
    [of('title', 'purpose', 'prepared by', 'checked by'), acceptReport],
    [of('case', 'order of cases', 'compared results'), acceptCases],
    [of('tolerance'), acceptTolerances],
    [of('figure', 'order of figures'), acceptFigures],
  ]
  for (const [some, accept] of steps) if (some.length > 0) draft.act(accept(sides(), some))
}

/** What of the workbook before may come to differ as rows and sheets come and go, by its place before or its name; undefined for what cannot. */
function keyOf({ before, subject }: Found): string | undefined {
  if (subject.of === 'cell') return before && subject.part === 'content' ? `cell ${before.sheet}!${before.row}:${before.column}` : undefined
  if (subject.of === 'name') return `name ${subject.name}`
  if (subject.of === 'case') return before ? `case ${subject.name} ${before.sheet}!${before.row}:${before.column}` : undefined
  if (subject.of === 'tolerance') return before ? `tolerance ${before.sheet}!${before.row}:${before.column}` : undefined
  if (subject.of === 'figure') return subject.before === undefined ? undefined : `figure ${subject.before}`
  return subject.of === 'compared results' ? subject.of : undefined
}

function keysOf(sides: Sides): ReadonlySet<string> {
  return new Set([...differencesIn(sides, SAME_CASE)].flatMap((one) => keyOf(one) ?? []))
}

/** Lines from the end of a sheet on, so that those above keep their numbers; then sheets. */
function takeStructure(draft: Draft, before: Side, chosen: readonly Difference[]): void {
  const lines = chosen.flatMap(({ sheet, subject }) => (sheet !== undefined && subject.of === 'lines' ? [{ sheet, ...subject }] : []))
  for (const { name } of draft.workbook.sheets) {
    for (const axis of ['rows', 'columns'] as const) {
      const own = lines.filter((one) => one.sheet === name && one.axis === axis)
      // What is gone from the end comes first to nothing of its number.
      for (const one of own.filter(({ beyond }) => beyond)) takeBeyond(draft, before, name, one)
      const inserted = own.filter(({ beyond, side }) => !beyond && side === 'now').toSorted((a, b) => b.at - a.at)
      draft.act(deleteLinesAtOnce(draft.workbook, name, axis, inserted))
      for (const { at, count } of inserted) changeRuns(draft, name, axis, (runs) => runs.map((run) => (run.now >= at + count ? { ...run, now: run.now - count } : run)))
      const gone = own.filter(({ beyond, side }) => !beyond && side === 'before').toSorted((a, b) => b.at - a.at)
      draft.act(insertLinesAtOnce(draft.workbook, name, axis, gone.map(({ at, count }) => ({ at: putBack(draft, name, axis, at, count), count }))))
      putCells(draft, before, name, axis, gone)
    }
  }
  for (const { subject } of chosen) if (subject.of === 'sheet') takeSheet(draft, before, subject.name)
  if (chosen.some(({ subject }) => subject.of === 'order of sheets')) draft.act(sheetOrder(draft, before.workbook))
  draft.layout = { pairs: draft.layout.pairs.map((pair) => asFarAsFilled(pair, sheetByName(draft.workbook, pair.now))) }
}

/** How far the sheet now reaches by then decides what counts as lines beyond the last one. */
function asFarAsFilled(pair: SheetPair, sheet: Sheet | undefined): SheetPair {
  if (sheet === undefined) return pair
  const { rows, columns } = usedRange(sheet)
  return { ...pair, rows: lineRuns(pair.rows.runs, pair.rows.before, rows), columns: lineRuns(pair.columns.runs, pair.columns.before, columns) }
}

type Axis = 'rows' | 'columns'
type Runs = SheetPair['rows']['runs']

function changeRuns(draft: Draft, sheet: string, axis: Axis, change: (runs: Runs) => Runs): void {
  draft.layout = { pairs: draft.layout.pairs.map((pair) => (pair.now === sheet ? { ...pair, [axis]: lineRuns(change(pair[axis].runs), pair[axis].before, pair[axis].now) } : pair)) }
}

/** Where lines that are gone are to be opened again: after the last line before them that is still there. From then on they count as open. */
function putBack(draft: Draft, sheet: string, axis: Axis, at: number, count: number): number {
  const pair = draft.layout.pairs.find(({ now }) => now === sheet)
  const runs = pair?.[axis].runs ?? []
  const earlier = runs.filter(({ old }) => old < at).at(-1)
  const now = earlier === undefined ? 0 : earlier.now + earlier.count
  changeRuns(draft, sheet, axis, (all) => joined([
    ...all.filter(({ old }) => old < at), { old: at, now, count }, ...all.filter(({ old }) => old >= at).map((run) => ({ ...run, now: run.now + count })),
  ]))
  return now
}

/** Runs that go on from one another are one. */
function joined(runs: Runs): Runs {
  const found: { old: number; now: number; count: number }[] = []
  for (const run of runs) {
    const last = found.at(-1)
    if (last && run.old - last.old === run.now - last.now && run.old === last.old + last.count) last.count += run.count
    else found.push({ ...run })
  }
  return found
}

/** Puts the cells of lines into their places, those in lines that are still gone left out. */
function putCells(draft: Draft, before: Side, name: string, axis: Axis, lines: readonly { readonly at: number; readonly count: number }[]): void {
  const pair = draft.layout.pairs.find(({ now }) => now === name)
  const sheet = pair && before.sheet(pair.before)
  if (!sheet || lines.length === 0) return
  const { way } = sidesOf(before, new Side(draft.workbook, NO_AREAS), draft.layout)
  const cells: CellChange[] = []
  for (const { cell, row, column } of cellsOfLines(sheet, axis, lines)) {
    const place = way.place({ sheet: sheet.name, row, column })
    if (place) cells.push({ row: place.row, column: place.column, cell: there(way, cell, sheet.name) })
  }
  draft.act([{ kind: 'cells', sheet: name, cells }])
}

const there = (way: Sides['way'], cell: Cell, host: string): Cell => (typeof cell.content === 'string' && cell.content.startsWith('=') ? { ...cell, content: way.formula(cell.content, host) } : cell)

function* cellsOfLines({ rows }: Sheet, axis: Axis, lines: readonly { readonly at: number; readonly count: number }[]): Generator<{ readonly cell: Cell; readonly row: number; readonly column: number }> {
  const isIn = (line: number): boolean => lines.some(({ at, count }) => line >= at && line < at + count)
  for (const key in rows) {
    const row = Number(key)
    if (axis === 'rows' && !isIn(row)) continue
    for (const place in rows[row]) {
      const cell = rows[row]?.[Number(place)]
      if (cell && (axis === 'rows' || isIn(Number(place)))) yield { cell, row, column: Number(place) }
    }
  }
}

/** Lines after the last one of the other side: their cells come back or go, and nothing moves. */
function takeBeyond(draft: Draft, before: Side, name: string, { side, axis, at, count }: { readonly side: 'before' | 'now'; readonly axis: Axis; readonly at: number; readonly count: number }): void {
  if (side === 'before') return putCells(draft, before, name, axis, [{ at, count }])
  const sheet = sheetByName(draft.workbook, name)
  if (sheet) draft.act([{ kind: 'cells', sheet: name, cells: [...cellsOfLines(sheet, axis, [{ at, count }])].map(({ row, column }) => ({ row, column, cell: null })) }])
}

/** Puts a sheet back, takes one away, or gives it its name again. */
function takeSheet(draft: Draft, before: Side, name: string): void {
  const pair = draft.layout.pairs.find(({ now }) => now === name)
  if (pair) {
    draft.act(renameSheet(draft.workbook, pair.now, pair.before))
    draft.layout = { pairs: draft.layout.pairs.map((one) => (one === pair ? { ...one, now: pair.before } : one)) }
    return
  }
  const isPaired = (old: string): boolean => draft.layout.pairs.some((one) => foldCase(one.before) === foldCase(old))
  const sheet = before.sheet(name)
  if (sheet === undefined || isPaired(name)) return draft.act(removeSheet(draft.workbook, name))
  const { way } = sidesOf(before, new Side(draft.workbook, NO_AREAS), draft.layout)
  const earlier = before.workbook.sheets.slice(0, sheetIndex(before.workbook, name)).findLast((one) => isPaired(one.name))
  const after = draft.layout.pairs.find((one) => foldCase(one.before) === foldCase(earlier?.name ?? ''))
  const at = after === undefined ? 0 : sheetIndex(draft.workbook, after.now) + 1
  draft.act([{ kind: 'addSheet', at, sheet: { ...sheet, rows: sheet.rows.map((row) => row?.map((cell) => cell && there(way, cell, sheet.name))) } }])
  const used = usedRange(sheet)
  draft.layout = { pairs: [...draft.layout.pairs, { before: sheet.name, now: sheet.name, rows: lineRuns([], used.rows, used.rows), columns: lineRuns([], used.columns, used.columns) }] }
}

/** The sheets that both have change places among themselves; those that only this workbook has stay where they are. */
function sheetOrder(draft: Draft, before: Workbook): Edit[] {
  const wanted = before.sheets.flatMap(({ name }) => draft.layout.pairs.find((pair) => foldCase(pair.before) === foldCase(name))?.now ?? [])
  const paired = new Set(wanted)
  let next = 0
  return draft.workbook.sheets.map(({ name }) => (paired.has(name) ? (wanted[next++] ?? name) : name)).map((sheet, to): Edit => ({ kind: 'moveSheet', sheet, to }))
}
