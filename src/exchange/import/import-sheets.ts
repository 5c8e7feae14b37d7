import { parseReference, printAddress, quoteSheetName } from '../../workbook/address.ts'
import { foldCase, type CellContent, type Row, type Sheet, type Workbook } from '../../workbook/document.ts'
import { literalContent } from '../../workbook/entry.ts'
import { referencesIn } from '../../workbook/formula/references.ts'
import { MAX_COLUMNS, MAX_ROWS, MAX_SHEETS, MAX_TEXT } from '../../workbook/limits.ts'
import type { FileContents, ReadSheet } from '../reading/contents.ts'
import { CoveredCells } from './covered-cells.ts'
import { dateSystemOf } from './date-text.ts'
import { translateFormula, type ImportedNames } from './foreign-formula.ts'
import type { ImportRemark } from './import-remark.ts'
import { importedNames } from './imported-names.ts'
import { shortened } from './shortened.ts'
import { SheetMaking, type Draft } from './sheet-making.ts'

export interface ImportChoice {
  /** Positions of the sheets to bring in; absent: all that are not hidden. */
  readonly sheets?: ReadonlySet<number>
}

export interface ImportedSheet {
  readonly sheet: Sheet
  /** Where it comes from, for its values. */
  readonly from: ReadSheet
}

/** What comes of a file: sheets and names that a workbook can take as they are. */
export interface Imported {
  readonly sheets: readonly ImportedSheet[]
  readonly names: ReadonlyMap<string, string>
  readonly remarks: readonly ImportRemark[]
}

/** A file's sheets as sheets of a workbook, all at once. {@link importingSheets} */
export function importSheets(contents: FileContents, choice: ImportChoice = {}, target?: Workbook): Imported {
  const steps = importingSheets(contents, choice, target)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/**
 * A file's sheets as sheets of a workbook, step by step, each telling what share of the work is done. Formulas stay formulas where Lowside
 * computes the same; else they are texts that show them, with the file's value in a note. Nothing is dropped without a remark.
 * @param target the workbook that takes them: its names are taken already
 */
export function* importingSheets(contents: FileContents, { sheets: chosen = shownSheets(contents) }: ImportChoice, target?: Workbook): Generator<number, Imported> {
  const { called, names, sheetNames, remarks: nameRemarks } = importedNames(contents, chosen, {
    sheets: target?.sheets.map(({ name }) => name) ?? [], names: [...(target?.names.keys() ?? [])],
  })
  const room = MAX_SHEETS - (target?.sheets.length ?? 0)
  const remarks: ImportRemark[] = readerRemarks(contents, chosen)
  for (const { isLoss, place, words } of nameRemarks) remarks.push({ place, words, kind: isLoss ? 'left out' : 'written otherwise' })
  tellHidden(contents, chosen, remarks)

  const taken = [...sheetNames].slice(0, room).flatMap(([position, name]) => {
    const from = contents.sheets[position]
    return from === undefined ? [] : [{ name, from }]
  })
  for (const [, name] of [...sheetNames].slice(room)) remarks.push({ place: name, words: `left out: a workbook has up to ${MAX_SHEETS} sheets`, kind: 'left out' })

  const all = Math.max(1, 2 * taken.reduce((sum, { from }) => sum + from.rows.length, 0))
  let done = 0
  const covered = new CoveredCells(new Map(taken.map(({ name, from }) => [foldCase(name), widthOf(from)])))
  for (const refersTo of names.values()) {
    const reference = parseReference(refersTo)
    if (reference) covered.add(reference, '')
  }
  const drafts: Draft[] = []
  for (const { name, from } of taken) {
    const draft: Draft = { name, from, formulas: [] }
    drafts.push(draft)
    for (let row = 0; row < from.rows.length; row++) {
      translateRow(draft, row, called, covered, remarks)
      done++
      if (row % ROWS_AT_ONCE === 0) yield done / all
    }
  }
  const system = dateSystemOf(contents)
  const sheets: ImportedSheet[] = []
  for (const draft of drafts) {
    const making = new SheetMaking(draft, system, covered, remarks)
    const { rows } = draft.from
    for (let row = 0; row < rows.length; row++) {
      making.fill(row)
      done++
      if (row % ROWS_AT_ONCE === 0) yield done / all
    }
    const finishing: Row[] = []
    for (let row = 0; row < rows.length; row++) {
      finishing.push(making.finished(row))
      if (row % ROWS_AT_ONCE === 0) yield done / all
    }
    sheets.push({ from: draft.from, sheet: making.sheet(finishing) })
  }
  return { sheets, names, remarks: withoutRepeats(remarks) }
}

/** What reading has to say of a formula that is kept as text is said already. */
function withoutRepeats(remarks: readonly ImportRemark[]): ImportRemark[] {
  const asText = new Set(remarks.flatMap(({ kind, place }) => (kind === 'kept as text' ? [place] : [])))
  return remarks.filter(({ kind, place }) => kind !== 'left out' || !asText.has(place))
}

/** A row may have a hundred long formulas: few enough for half a frame. */
const ROWS_AT_ONCE = 4

const shownSheets = ({ sheets }: FileContents): ReadonlySet<number> => new Set(sheets.flatMap(({ hidden }, position) => (hidden ? [] : [position])))

const widthOf = ({ rows }: ReadSheet): number => {
  let columns = 0
  for (const row of rows) if (row && row.length > columns) columns = row.length
  return columns
}

const placeOf = (sheet: string, row: number, column: number): string => `${quoteSheetName(sheet)}!${printAddress(row, column)}`

function translateRow({ name, from, formulas }: Draft, row: number, called: ImportedNames, covered: CoveredCells, remarks: ImportRemark[]): void {
  const cells = from.rows[row]
  if (cells === undefined || row >= MAX_ROWS) return
  const translated: (CellContent | undefined)[] = []
  let hasFormula = false
  for (const [column, cell] of cells.entries()) {
    if (cell === undefined || column >= MAX_COLUMNS) continue
    if (cell.formula === undefined) continue
    hasFormula = true
    const result = translateFormula(cell.formula, called, cell.array)
    if ('reason' in result) {
      const text = `=${cell.formula}`
      remarks.push({ place: placeOf(name, row, column), words: `${shortened(text, LONGEST_SHOWN)}: ${result.reason}`, kind: 'kept as text' })
      translated[column] = literalContent(text.slice(0, MAX_TEXT - 1))
      continue
    }
    translated[column] = result.formula
    for (const { reference } of referencesIn(result.tokens)) covered.add(reference, name)
  }
  if (hasFormula) formulas[row] = translated
}

const LONGEST_SHOWN = 200

/** What reading left out, but for sheets that are not brought in. */
function readerRemarks({ sheets, remarks }: FileContents, chosen: ReadonlySet<number>): ImportRemark[] {
  const others = sheets.filter((_, position) => !chosen.has(position)).flatMap(({ name }) => [name, quoteSheetName(name)])
  return remarks.filter(({ place }) => !others.some((name) => place === name || place.startsWith(`${name}!`))).map((remark) => ({ ...remark, kind: 'left out' }))
}

function tellHidden({ sheets }: FileContents, chosen: ReadonlySet<number>, remarks: ImportRemark[]): void {
  for (const [position, { name, hidden }] of sheets.entries()) {
    if (!hidden) continue
    if (chosen.has(position)) remarks.push({ place: name, words: 'a hidden sheet of the file: it is shown here', kind: 'looks otherwise' })
    else remarks.push({ place: name, words: 'a hidden sheet of the file, which is not brought in', kind: 'left out' })
  }
}
