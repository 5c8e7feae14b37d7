import { shortened } from '../../../functions/units/format.ts'
import { convert, toSi } from '../../../functions/units/convert.ts'
import { findUnit, unitCodes } from '../../../functions/units/units.ts'
import { isFormula, type CellContent, type Workbook } from '../../workbook/document.ts'
import { literalContent, meantText } from '../../workbook/entry.ts'
import type { ReadCell } from '../reading/contents.ts'
import { choiceOf, nearestChoice } from './choice-words.ts'
import { wordsOfHeading } from './heading-words.ts'
import type { ListColumn, WorkbookList } from './list.ts'
import { choiceKey, type ColumnMapping, type Mapping } from './mapping.ts'
import { checkNeeds, NOTHING, type CellRead, type CellRemark } from './row-needs.ts'
import { commaIn, readNumber, type CommaMeans } from './read-number.ts'
import { isBlankRow, isDash, sourceText, type SourceTable } from './source-table.ts'
import { unitOfTrade } from './source-units.ts'

export type { CellRemark }

/** A row of the file as a row of the list. */
export interface MappedRow {
  /** In the file, from 0. */
  readonly sourceRow: number
  /** For each of the list's columns what the cell is to hold. */
  readonly values: readonly CellContent[]
  /** Why the row cannot be taken as it is. */
  readonly problems: readonly CellRemark[]
  /** What should be looked at; the row can be taken. */
  readonly marks: readonly CellRemark[]
}

export interface MappingSurroundings {
  readonly workbook: Workbook
  /** The atmosphere where the plant stands, for gauge units; the standard one, with a mark, where it is not known. */
  readonly sitePa?: number | undefined
  readonly fileHasDecimalCommas?: boolean
  /** What the user has typed in place of what the file has, by {@link mendKey}; a number without a unit is in the list's. */
  readonly mended?: ReadonlyMap<string, string>
}

export const mendKey = (sourceRow: number, at: number): string => `${sourceRow}:${at}`

/** The rows of the file that hold something. */
export function sourceRows({ sheet, firstRow, lastRow }: SourceTable): number[] {
  const rows: number[] = []
  for (let row = firstRow; row <= lastRow; row++) if (!isBlankRow(sheet, row)) rows.push(row)
  return rows
}

/** All rows at once. */
export function mapRows(list: WorkbookList, source: SourceTable, mapping: Mapping, around: MappingSurroundings): MappedRow[] {
  return sourceRows(source).map(rowMapper(list, source, mapping, around))
}

/** Maps one row at a time, for whoever has something else to do between them. */
export function rowMapper(list: WorkbookList, source: SourceTable, mapping: Mapping, around: MappingSurroundings): (sourceRow: number) => MappedRow {
  const cells = list.columns.map((column, at) => cellMapper(column, at, source, mapping.columns.get(column.column), around))
  const tagAt = list.columns.findIndex(({ isTag }) => isTag)
  const tags = tagsOf(list, source, mapping, around, tagAt)
  return (sourceRow) => {
    const problems: CellRemark[] = []
    const marks: CellRemark[] = []
    const read = cells.map((cell) => cell(sourceRow, problems, marks))
    const values = read.map(({ value }) => value)
    checkNeeds(list, ({ column }) => mapping.columns.has(column), read, problems, marks)
    const tag = tagKey(values[tagAt] ?? null)
    const other = tag === '' ? undefined : tags.of(tag, sourceRow)
    const column = list.columns[tagAt]
    if (other !== undefined && column) {
      problems.push({ at: tagAt, heading: column.heading, found: read[tagAt]?.found ?? '', why: other, accepted: 'a tag that no other row has' })
    }
    return { sourceRow, values, problems, marks }
  }
}

type Tell = (why: string, accepted: string) => void

function cellMapper(column: ListColumn, at: number, source: SourceTable, mapping: ColumnMapping | undefined, around: MappingSurroundings) {
  const from = mapping?.from
  const name = source.columns.find((one) => one.column === from)?.name
  const comma = from === undefined || column.kind !== 'number' ? 'unknown' : commaIn(texts(source, from), around.fileHasDecimalCommas === true)
  const reader = column.kind === 'number' ? numberReader(column, mapping, around, name) : column.kind === 'choice' ? choiceReader(column, mapping) : textReader
  return (row: number, problems: CellRemark[], marks: CellRemark[]): CellRead => {
    const cells = source.sheet.rows[row]
    const mended = around.mended?.get(mendKey(row, at))
    const given = from === undefined ? undefined : cells?.[from]
    const fileText = sourceText(given)
    const typed = mended ?? (fileText === '' || isDash(fileText) ? mapping?.constant : undefined)
    const found = mended ?? (fileText === '' ? (mapping?.constant ?? '') : fileText)
    const tell = (list: CellRemark[]): Tell => (why, accepted) => void list.push({ at, heading: column.heading, found, why, accepted })
    if (typed === undefined && given !== undefined && typeof given.value === 'object' && given.value !== null) {
      tell(problems)(`the file has an error here (${given.value.error})`, 'a value')
      return { ...NOTHING, found }
    }
    const text = (typed ?? fileText).trim()
    if (text === '' || (column.kind === 'number' && isDash(text))) return { ...NOTHING, found }
    const rowUnit = typed === undefined && mapping?.unitColumn !== undefined ? sourceText(cells?.[mapping.unitColumn]) : undefined
    return reader({ text, cell: typed === undefined ? given : undefined, isTyped: typed !== undefined, rowUnit, comma: typed === undefined ? comma : 'unknown' }, tell(problems), tell(marks))
  }
}

interface Given {
  readonly text: string
  readonly cell: ReadCell | undefined
  readonly isTyped: boolean
  readonly rowUnit: string | undefined
  readonly comma: CommaMeans
}

type Reader = (given: Given, problem: Tell, mark: Tell) => CellRead

const textReader: Reader = ({ text, cell }) => {
  const value = cell?.value
  return { value: typeof value === 'number' || typeof value === 'boolean' ? value : literalContent(text), found: text }
}

function choiceReader({ choices }: ListColumn, mapping: ColumnMapping | undefined): Reader {
  const accepted = choices.join(', ')
  return ({ text }, problem, mark) => {
    const mapped = mapping?.choices.get(choiceKey(text)) ?? choices.find((choice) => choiceKey(choice) === choiceKey(text))
    if (mapped !== undefined) return { value: literalContent(mapped), found: text }
    const meant = choiceOf(text, choices)
    if (meant) {
      if (!meant.isSure) mark(`taken for ${meant.choice}`, accepted)
      return { value: literalContent(meant.choice), found: text }
    }
    const near = nearestChoice(text, choices)
    problem(near === undefined ? 'no choice that the formulas know' : `no choice that the formulas know; nearest is ${near}`, accepted)
    return { ...NOTHING, found: text }
  }
}

function numberReader(column: ListColumn, mapping: ColumnMapping | undefined, around: MappingSurroundings, name: string | undefined): Reader {
  const to = column.unit === undefined ? undefined : findUnit(column.unit)
  const chosen = mapping?.unit === undefined ? undefined : findUnit(mapping.unit)
  const isCount = wordsOfHeading(column.heading, false).has('quantity')
  const accepted = to ? `a number in a unit of ${to.dimension}: ${unitCodes(to.dimension).slice(0, 6).join(', ')}` : isCount ? 'a whole number from 1 up' : 'a number'
  return ({ text, cell, isTyped, rowUnit, comma }, problem, mark) => {
    const read = typeof cell?.value === 'number' ? { value: cell.value } : readNumber(text, comma)
    if ('why' in read) {
      problem(read.why, accepted)
      return { ...NOTHING, found: text }
    }
    if (read.mark !== undefined) mark(read.mark, accepted)
    if (!to) {
      if (read.unit) problem(`“${read.unit.code}” stands here, but the column has no unit`, accepted)
      else if (isCount && !(read.value >= 1 && Number.isInteger(read.value))) problem('no number of pieces', accepted)
      return { value: read.value, found: text }
    }
    const named = rowUnit === undefined || rowUnit === '' ? undefined : unitOfTrade(rowUnit)
    if (rowUnit !== undefined && rowUnit !== '' && !named) {
      problem(`“${shortened(rowUnit)}” beside it is no unit known here`, accepted)
      return { ...NOTHING, found: text }
    }
    const isPercent = typeof cell?.value === 'number' && to.dimension === 'share' && (cell.format ?? '').includes('%')
    const unit = read.unit ?? named ?? (isPercent ? findUnit('-') : undefined) ?? (isTyped ? to : chosen)
    if (!unit) {
      problem(name === undefined ? 'no unit' : `no unit: neither the cell nor the heading “${shortened(name)}” names one`, accepted)
      return { ...NOTHING, found: text }
    }
    const asked = unit.dimension === 'temperature' && to.dimension === 'temperature difference' && read.unit ? findUnit(`Δ${unit.code}`) : undefined
    const from = asked ?? unit
    if (asked) mark(`${unit.code} is read as a difference of temperature`, accepted)
    if (from.dimension !== to.dimension) {
      problem(`${from.code} is a ${from.dimension}, here stands a ${to.dimension}`, accepted)
      return { ...NOTHING, found: text }
    }
    if (from.gauge !== to.gauge && around.sitePa === undefined) mark('gauge and absolute pressure: reckoned with the standard atmosphere, 101.325 kPa', accepted)
    const sitePa = around.sitePa
    const value = convert(read.value, from, to, sitePa)
    if (!Number.isFinite(value)) {
      problem('too large for a number', accepted)
      return { ...NOTHING, found: text }
    }
    return { value, found: text, si: toSi(read.value, from, sitePa) }
  }
}

function* texts(source: SourceTable, column: number): Generator<string> {
  for (let row = source.firstRow; row <= source.lastRow; row++) {
    const value = source.sheet.rows[row]?.[column]?.value
    if (typeof value === 'string') yield value
  }
}

const tagKey = (value: CellContent): string => (typeof value === 'number' ? String(value) : (meantText(value) ?? '')).trim().toLowerCase()

/** Tags that are taken: by rows of the list, or by another row of the file. */
function tagsOf(list: WorkbookList, source: SourceTable, mapping: Mapping, around: MappingSurroundings, tagAt: number) {
  const column = list.columns[tagAt]
  const inList = new Map<string, number>()
  const inFile = new Map<string, number>()
  if (column) {
    const sheet = around.workbook.sheets.find(({ name }) => name === list.sheet)
    for (let row = list.firstRow; row <= list.lastRow; row++) {
      const content = sheet?.rows[row]?.[column.column]?.content ?? null
      const key = isFormula(content) ? '' : tagKey(content)
      if (key !== '') inList.set(key, row)
    }
    const read = cellMapper(column, tagAt, source, mapping.columns.get(column.column), around)
    for (const row of sourceRows(source)) {
      const key = tagKey(read(row, [], []).value)
      if (key !== '' && !inFile.has(key)) inFile.set(key, row)
    }
  }
  return {
    /** In words where else the tag is. */
    of(tag: string, sourceRow: number): string | undefined {
      const listed = inList.get(tag)
      if (listed !== undefined) return `the list has this tag already, in row ${listed + 1}`
      const first = inFile.get(tag)
      return first === undefined || first === sourceRow ? undefined : `row ${first + 1} of the file has this tag too`
    },
  }
}
