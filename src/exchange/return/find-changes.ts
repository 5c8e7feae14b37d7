import { Graph } from '../../calc/graph.ts'
import { foldCase } from '../../workbook/document.ts'
import { computingSheets, type ComputingSheets } from '../computing-file.ts'
import type { FileContents, ReadSheet } from '../reading/contents.ts'
import { workingsTitle } from '../workings/function-sheet.ts'
import type { Change } from './changes.ts'
import { expectedRows, type ExpectedRow } from './expected-sheet.ts'
import type { FileSheetPart } from './formula-back.ts'
import { sameFormulas } from './formulas-compared.ts'
import { rowMaps, type Layout } from './layout.ts'
import { nameChanges } from './name-changes.ts'
import { isDocumentSheet, type OwnWorkbook } from './own-workbook.ts'
import { alignRows } from '../../workbook/row-alignment.ts'
import { rowShifts, type RowShift } from './row-shifts.ts'
import { addedSheet } from './added-sheet.ts'
import { sheetChanges } from './sheet-changes.ts'
import { readRows, renamedSheets, rowsToAlign } from './sheet-matching.ts'
import { readingChanges, workingsChanges } from './workings-changes.ts'

/** A change before it has its number. */
export type Found = Change extends infer One ? (One extends Change ? Omit<One, 'id'> : never) : never

/** Told from time to time what share of the work is done; undefined while it cannot be said. */
type Report = (share: number | undefined) => void

/**
 * Everything in which a file that came back differs from what the export of its workbook writes. What cells show, where formulas give it, does not count, nor do looks
 * and widths. Rows that another program has inserted or taken away are one change, and what moved with them is none.
 */
export function changesInFile(own: Pick<OwnWorkbook, 'workbook' | 'exported' | 'sameWorkings' | 'marks'>, contents: FileContents, report: Report = () => undefined): readonly Change[] {
  const { workbook } = own
  const graph = new Graph(workbook, (share) => report(share < 1 ? share * BUILDING : undefined))
  const areas = graph.allAreas()
  const values = new Map([...areas].map(([sheet, area]) => [sheet, area.values] as const))
  const expected = computingSheets(workbook, values, { date: own.exported, checks: areas, report: (share) => report(BUILDING + (WRITING - BUILDING) * (share ?? 0)) })
  return [...allChanges(own, expected, contents, report)].map((found, id): Change => ({ ...found, id }))
}

/** Shares of the time, measured on 10 000 vessels. */
const BUILDING = 0.3
const WRITING = 0.6

function* allChanges({ workbook, sameWorkings, marks }: Pick<OwnWorkbook, 'workbook' | 'sameWorkings' | 'marks'>, expected: ComputingSheets, contents: FileContents, report: Report): Generator<Found> {
  const matched = matchSheets(expected, contents)
  const { shifts, renamed } = matched
  const layout: Layout = { rows: rowMaps(shifts), renamed }
  const formulas = sameFormulas(layout, sameWorkings ? undefined : expected.functions.map(({ sheet }) => sheet))
  const names = new Set([...workbook.names.keys(), ...contents.names.keys()].map(foldCase))
  const back = { sheets: partsByName(expected, contents, matched), layout, names }

  const order = contents.sheets.flatMap((sheet) => workbook.sheets.filter(({ name }) => matched.sheets.get(foldCase(name))?.read === sheet).map(({ name }) => name))
  if (workbook.sheets.length === order.length && workbook.sheets.some(({ name }, index) => name !== order[index])) {
    yield { kind: 'sheetsMoved', place: 'Sheets', was: workbook.sheets.map(({ name }) => name).join(', '), is: order.join(', '), order, taking: { words: 'Puts the sheets in the order of the file.' } }
  }
  let done = 0
  for (const { part, sheet } of expected.sheets) {
    const { read, rows } = matched.sheets.get(foldCase(sheet.name)) ?? {}
    if (part === 'own') {
      const document = workbook.sheets.find(({ name }) => name === sheet.name)
      if (document) yield* sheetChanges({ sheet: document, expected: rows ?? [], read, shifts: shifts.filter((one) => one.sheet === sheet.name), map: layout.rows.get(foldCase(sheet.name)), formulas, back })
    } else if (part === 'cover' || part === 'cases') yield* readingChanges(sheet.name, marks[part], read)
    else if (sameWorkings) yield* workingsChanges(sheet, read, expected.functions.find((one) => one.sheet === sheet.name), formulas)
    report(WRITING + (1 - WRITING) * (++done / expected.sheets.length))
  }
  if (!sameWorkings) {
    yield {
      kind: 'passedOver', place: 'Workings', was: 'as this Lowside writes them', is: 'as another version of Lowside wrote them',
      reason: 'The file was exported by another version of Lowside, which wrote its functions out otherwise: whether anyone changed the workings cannot be said. The workbook computes with its own.',
    }
  }
  for (const extra of matched.extra) yield addedSheet(extra, workbook, back)
  yield* nameChanges(workbook, expected.names, contents.names, formulas, back)
}

interface Matched {
  /** By the name at export, in small letters; the rows only of sheets of the workbook. */
  readonly sheets: ReadonlyMap<string, { readonly read: ReadSheet | undefined; readonly rows?: readonly ExpectedRow[] }>
  readonly extra: readonly ReadSheet[]
  readonly renamed: ReadonlyMap<string, string>
  readonly shifts: readonly RowShift[]
}

/** Which sheet of the file is which, by name, and by what stands on it where the name is another; and how rows have moved on those of the workbook. */
function matchSheets({ sheets, functions }: ComputingSheets, contents: FileContents): Matched {
  const byName = new Map(contents.sheets.filter((sheet) => !isDocumentSheet(sheet)).map((sheet) => [foldCase(sheet.name), sheet]))
  const all = sheets.map(({ part, sheet }) => ({ sheet, rows: part === 'own' ? [...expectedRows(sheet)] : undefined, read: byName.get(foldCase(sheet.name)) }))
  const taken = new Set(all.map(({ read }) => read))
  const extra = [...byName.values()].filter((sheet) => !taken.has(sheet))
  const missing = all.filter(({ read }) => read === undefined)
  const renamedWorkings = missing.flatMap(({ sheet }): [string, ReadSheet][] => {
    const rows = functions.find((one) => one.sheet === sheet.name)
    const now = rows && extra.find((one) => one.rows[0]?.[0]?.value === workingsTitle(rows.definition))
    return now ? [[foldCase(sheet.name), now]] : []
  })
  const unknown = extra.filter((sheet) => !renamedWorkings.some(([, now]) => now === sheet))
  const renamedOwn = unknown.length === 0 ? [] : renamedSheets(missing.flatMap(({ sheet, rows }) => (rows ? [{ name: sheet.name, rows: rowsToAlign(rows) }] : [])), unknown)
  const renames = new Map([...renamedWorkings, ...renamedOwn])
  const found = all.map(({ read, ...one }) => ({ ...one, read: read ?? renames.get(foldCase(one.sheet.name)) }))
  return {
    sheets: new Map(found.map(({ sheet, read, rows }) => [foldCase(sheet.name), { read, ...(rows ? { rows } : {}) }])),
    extra: extra.filter((sheet) => ![...renames.values()].includes(sheet)),
    renamed: new Map([...renames].map(([name, { name: now }]) => [name, now])),
    shifts: found.flatMap(({ sheet, read, rows }) => (read && rows ? rowShifts(sheet.name, alignRows(rowsToAlign(rows), rowsToAlign(readRows(read)))) : [])),
  }
}

function partsByName({ sheets, functions }: ComputingSheets, contents: FileContents, matched: Matched): ReadonlyMap<string, FileSheetPart> {
  const parts = new Map(contents.sheets.map(({ name }): [string, FileSheetPart] => [foldCase(name), { part: 'new' }]))
  for (const { part, sheet } of sheets) {
    const rows = functions.find((one) => one.sheet === sheet.name)
    const name = foldCase(matched.sheets.get(foldCase(sheet.name))?.read?.name ?? sheet.name)
    parts.set(name, part === 'own' ? { part, name: sheet.name } : rows ? { part: 'workings', rows } : { part: 'added' })
  }
  return parts
}
