import { findUnit, type Unit } from '../../../functions/units/units.ts'
import type { ReadSheet } from '../reading/contents.ts'
import { choiceOf } from './choice-words.ts'
import { likeness, wordsOfHeading } from './heading-words.ts'
import type { ListColumn, WorkbookList } from './list.ts'
import { choiceKey, NO_CHOICES, type ColumnMapping, type Mapping } from './mapping.ts'
import { readNumber } from './read-number.ts'
import { examplesOf, sourceTable, sourceText, type SourceColumn, type SourceTable } from './source-table.ts'
import { headingParts } from './source-units.ts'

/** The list on a sheet of someone's file, its heading row being looked for with the list's own headings in mind unless it is given. */
export function sourceFor(list: WorkbookList, sheet: ReadSheet, headingRow?: number | null): SourceTable {
  const wanted = list.columns.map((column) => wordsOfHeading(column.heading, isLength(unitOf(column))))
  return sourceTable(sheet, headingRow, (heading) => {
    const { words, unit } = headingParts(heading)
    const spoken = wordsOfHeading(words, isLength(unit))
    return wanted.some((one) => likeness(one, spoken, () => 1) > 0.6)
  })
}

/** Which column of the file goes where, by headings, units and what stands below them. What is not plain says so. */
export function suggestMapping(list: WorkbookList, source: SourceTable): Mapping {
  const pairs = list.columns.flatMap((column) => source.columns.map((from) => ({ column, from, score: fit(list, source, column, from) })))
    .filter(({ score }) => score >= LEAST)
    .toSorted((one, other) => other.score - one.score)
  const taken = new Set<number>(source.columns.flatMap(({ unitColumn }) => unitColumn ?? []))
  const columns = new Map<number, ColumnMapping>()
  for (const { column, from, score } of pairs) {
    if (columns.has(column.column) || taken.has(from.column)) continue
    taken.add(from.column)
    const rival = pairs.find((other) => other.column === column && other.from !== from && score - other.score < CLOSE && !taken.has(other.from.column))
    const doubt = rival ? `“${rival.from.name}” would fit as well` : score < SURE ? 'the headings differ' : undefined
    columns.set(column.column, suggestColumn(column, source, from, doubt))
  }
  return { columns: new Map(list.columns.flatMap(({ column }) => (columns.has(column) ? [[column, columns.get(column) ?? { choices: NO_CHOICES }]] : []))) }
}

/** A column of the file for one of the list, with the unit and the choices that its texts suggest. */
export function suggestColumn(column: ListColumn, source: SourceTable, from: SourceColumn, doubt?: string): ColumnMapping {
  const unit = column.unit === undefined ? {} : suggestedUnit(column, source, from)
  const choices = column.kind === 'choice' ? suggestedChoices(column, source, from) : { map: NO_CHOICES, unsure: undefined }
  const unsure = doubt ?? unit.unsure ?? choices.unsure
  return {
    from: from.column,
    ...(unit.unit === undefined ? {} : { unit: unit.unit }),
    ...(unit.unitColumn === undefined ? {} : { unitColumn: unit.unitColumn }),
    choices: choices.map,
    ...(unsure === undefined ? {} : { unsure }),
  }
}

/** Below `LEAST` no column is suggested, below `SURE` it is marked, as where another is as close as `CLOSE`. */
const [LEAST, SURE, CLOSE] = [0.42, 0.62, 0.08]

function fit(list: WorkbookList, source: SourceTable, column: ListColumn, from: SourceColumn): number {
  const to = unitOf(column)
  const spoken = wordsOfHeading(`${from.words} ${from.aside ?? ''}`, isLength(from.unit) || (isLength(to) && looksNumeric(source, from)))
  const wanted = wordsOfHeading(column.heading, isLength(to))
  const weight = weightIn(list)
  let score = likeness(wanted, spoken, weight)
  if (score === 0) return 0
  if (to && from.unit) score += isOfKind(from.unit, to) ? 0.15 : -1
  if (!to && from.unit && column.kind !== 'text') score -= 0.3
  const examples = examplesOf(source.sheet, from.column, source.firstRow)
  if (examples.length === 0) score -= 0.1
  else if (column.kind === 'number') score += looksNumeric(source, from) ? 0.05 : -0.4
  else if (column.kind === 'choice') score += 0.3 * (examples.filter((text) => choiceOf(text, column.choices)).length / examples.length) - 0.1
  else if (!column.isTag && looksNumeric(source, from)) score -= 0.3
  return score
}

/** A word that many headings of the list have tells less of each. */
function weightIn(list: WorkbookList): (word: string) => number {
  const counts = new Map<string, number>()
  for (const column of list.columns) for (const word of wordsOfHeading(column.heading, isLength(unitOf(column)))) counts.set(word, (counts.get(word) ?? 0) + 1)
  return (word) => 1 / (counts.get(word) ?? 1)
}

interface SuggestedUnit {
  readonly unit?: string
  readonly unitColumn?: number
  readonly unsure?: string
}

function suggestedUnit(column: ListColumn, source: SourceTable, from: SourceColumn): SuggestedUnit {
  const to = unitOf(column)
  if (!to) return {}
  const given = from.unit
  if (from.unitColumn !== undefined) return { unitColumn: from.unitColumn, ...(given ? { unit: given.code } : {}) }
  const examples = examplesOf(source.sheet, from.column, source.firstRow)
  if (given) {
    const difference = given.dimension === 'temperature' && to.dimension === 'temperature difference' ? differenceOf(given) : undefined
    if (difference) return { unit: difference.code, unsure: `${given.code} is read as a difference of temperature` }
    if (given.code === 'psi' && to.dimension === 'pressure' && to.gauge) return { unit: 'psi', unsure: 'psi counts from vacuum here; psig from the atmosphere' }
    return { unit: given.code }
  }
  if (examples.length > 0 && examples.every((text) => hasOwnUnit(text))) return {}
  if (to.dimension === 'share' && examples.length > 0) {
    const isSmall = examples.every((text) => Math.abs(Number(text)) <= 1)
    const isPercentFormat = examplesHavePercent(source, from)
    if (isPercentFormat) return {}
    return { unit: isSmall ? '-' : '%', unsure: `no unit in the file: read as ${isSmall ? 'parts of 1' : 'percent'}` }
  }
  return { unsure: 'no unit in the file: choose one' }
}

function suggestedChoices(column: ListColumn, source: SourceTable, from: SourceColumn): { readonly map: ReadonlyMap<string, string>; readonly unsure: string | undefined } {
  const map = new Map<string, string>()
  let unsure: string | undefined
  for (const text of distinctTexts(source, from.column)) {
    const found = choiceOf(text, column.choices)
    if (!found) unsure ??= `“${text}” is none of ${column.choices.join(', ')}`
    else if (!found.isSure) unsure ??= `“${text}” is taken for ${found.choice}`
    if (found && found.choice !== text) map.set(choiceKey(text), found.choice)
  }
  return { map, unsure }
}

/** More different texts than this are no choices. */
const MOST_TEXTS = 60

/** The different texts of a column, as far as they can be choices. */
export function distinctTexts(source: SourceTable, column: number): string[] {
  const found = new Map<string, string>()
  for (let row = source.firstRow; row <= source.lastRow && found.size < MOST_TEXTS; row++) {
    const text = sourceText(source.sheet.rows[row]?.[column])
    if (text !== '' && !found.has(choiceKey(text))) found.set(choiceKey(text), text)
  }
  return [...found.values()]
}

const unitOf = ({ unit }: ListColumn): Unit | undefined => (unit === undefined ? undefined : findUnit(unit))
const isLength = (unit: Unit | undefined): boolean => unit?.dimension === 'length'

const isOfKind = (from: Unit, to: Unit): boolean =>
  from.dimension === to.dimension || (from.dimension === 'temperature' && to.dimension === 'temperature difference')

const differenceOf = ({ code }: Unit): Unit | undefined => findUnit(`Δ${code}`)

function looksNumeric(source: SourceTable, { column }: SourceColumn): boolean {
  const examples = examplesOf(source.sheet, column, source.firstRow)
  return examples.length > 0 && examples.filter((text) => !('why' in readNumber(text, 'unknown'))).length >= examples.length * 0.7
}

function hasOwnUnit(text: string): boolean {
  const read = readNumber(text, 'unknown')
  return 'unit' in read && read.unit !== undefined
}

function examplesHavePercent(source: SourceTable, { column }: SourceColumn): boolean {
  return (source.sheet.rows[source.firstRow]?.[column]?.format ?? '').includes('%')
}
