import { findUnit } from '../../../functions/units/units.ts'
import { isCellError } from '../../calc/values.ts'
import { toleranceWords } from '../../whatif/tolerances.ts'
import { casesOf, differs, heldIn } from '../../workbook/cases.ts'
import { samePlace, type CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, type Sheet } from '../../workbook/document.ts'
import { entryOf } from '../../workbook/entry.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { remarksOf, type Remark } from '../../workbook/words-beside.ts'
import type { Survey } from '../survey.ts'
import { alike, type Node } from './ancestry.ts'
import { cellName, cellWords, rangeHeading } from './cell-words.ts'
import type { CellsOfSheet, Standing, Step, StepFormula, StepRow } from './derivation.ts'
import { formulaLines, type FormulaLines, type Saying } from './formula-lines.ts'
import { withUnit } from './with-unit.ts'
import { isOneCell, type ReferredCells } from './formula-source.ts'
import { rangeSummary } from './ranges.ts'
import type { Bundle } from './row-runs.ts'

/** Of a range or of rows so many are listed one by one. */
export const MOST_ROWS = 500

/** How a formula in a cell is put into words. */
export type SayAt = (sheet: string, row: number, column: number) => Saying | undefined

type Given = Pick<Step, 'number' | 'uses' | 'passedOn'>

export function makeStep(survey: Survey, bundle: Bundle, say: SayAt, given: Given): Step {
  const [first] = bundle.nodes
  if (first === undefined) throw new Error('a step is made of at least one cell')
  if (bundle.nodes.length > 1) return rowsStep(survey, bundle.nodes, first, say, given)
  return isOneCell(first.area) ? cellStep(survey, first, say, given) : rangeStep(survey, first, say, given)
}

export const cellsOfBundle = ({ nodes }: Bundle): readonly ReferredCells[] => nodes.map(({ sheet, area }) => ({ sheet, area }))

function cellStep(survey: Survey, { sheet, area: { top: row, left: column }, formula }: Node, say: SayAt, given: Given): Step {
  const place = { sheet: sheet.name, row, column }
  const value = survey.value(sheet.name, row, column)
  const check = survey.check(sheet.name, row, column)
  const lines = formula === undefined ? undefined : linesOf(survey, sheet, row, column, say)
  const cell = sheet.rows[row]?.[column]
  const remarks = remarksOf(sheet, place)
  return {
    ...given, place, kind: formula === undefined ? 'given' : 'computed', cells: cellsOf(sheet, { top: row, left: column, bottom: row, right: column }), label: cellName(survey, sheet, row, column),
    value: cellWords(survey, sheet, row, column), remarks,
    ...(isCellError(value) ? { error: value.message } : {}),
    ...(check === undefined ? {} : { met: check.met }),
    ...(formula === undefined ? {} : { formula: stepFormula(place, formula, lines) }),
    ...(cell?.note === undefined ? {} : { note: cell.note }),
    ...toleranceOf(survey, sheet, place),
    ...baseOf(survey, sheet, place),
    ...about(remarks, lines),
    rows: [], count: 1,
  }
}

function rangeStep(survey: Survey, { sheet, area }: Node, say: SayAt, given: Given): Step {
  const { top, left, bottom, right } = area
  const groups = alike(sheet, area)
  const start = groups[0]?.[0]
  const lines = start && linesOf(survey, sheet, start.row, start.column, say)
  const rows: StepRow[] = []
  for (let row = top; row <= bottom && rows.length < MOST_ROWS; row++) {
    for (let column = left; column <= right && rows.length < MOST_ROWS; column++) rows.push(rowOf(survey, sheet, row, column))
  }
  const formula = start && stepFormula({ sheet: sheet.name, row: start.row, column: start.column }, start.formula, lines)
  return {
    ...given, place: { sheet: sheet.name, row: top, column: left }, kind: 'range', cells: cellsOf(sheet, area), label: rangeHeading(survey, sheet, top, left),
    value: rangeSummary(survey, { sheet, area }), remarks: [],
    ...(formula === undefined ? {} : { formula: groups.length === 1 ? formula : { ...formula, wheres: [...formula.wheres, { what: `the first of ${groups.length} different formulas in these cells` }] } }),
    ...about([], lines),
    rows, count: (bottom - top + 1) * (right - left + 1),
  }
}

function rowsStep(survey: Survey, nodes: readonly Node[], first: Node, say: SayAt, given: Given): Step {
  const { sheet, area: { top, left } } = first
  const area = { ...first.area, bottom: nodes.at(-1)?.area.bottom ?? top }
  const lines = linesOf(survey, sheet, top, left, say)
  const remarks = remarksOf(sheet, { row: top, column: left })
  return {
    ...given, place: { sheet: sheet.name, row: top, column: left }, kind: 'rows', cells: cellsOf(sheet, area), label: rangeHeading(survey, sheet, top, left),
    value: rangeSummary(survey, { sheet, area }), remarks,
    ...(first.formula === undefined ? {} : { formula: stepFormula({ sheet: sheet.name, row: top, column: left }, first.formula, lines) }),
    ...about(remarks, lines),
    rows: nodes.slice(0, MOST_ROWS).map(({ area: { top: row, left: column } }) => {
      const line = linesOf(survey, sheet, row, column, say)?.equalities.join(' = ')
      return { ...rowOf(survey, sheet, row, column), ...(line === undefined ? {} : { line }) }
    }),
    count: nodes.length,
  }
}

const rowOf = (survey: Survey, sheet: Sheet, row: number, column: number): StepRow =>
  ({ place: { sheet: sheet.name, row, column }, label: cellName(survey, sheet, row, column), value: cellWords(survey, sheet, row, column) })

const cellsOf = (sheet: Sheet, area: CellsOfSheet['area']): CellsOfSheet => ({ sheet: sheet.name, area })

function linesOf(survey: Survey, sheet: Sheet, row: number, column: number, say: SayAt): FormulaLines | undefined {
  const content = sheet.rows[row]?.[column]?.content
  const tree = isFormula(content) ? survey.tree(content) : undefined
  const saying = tree && say(sheet.name, row, column)
  return tree && saying && formulaLines(tree, saying)
}

/** A formula that cannot be read stands as it is. */
const stepFormula = (at: CellPlace, raw: string, lines: FormulaLines | undefined): StepFormula =>
  lines === undefined ? { at, raw, words: '', equalities: [], reasons: [], wheres: [] } : { at, raw, words: lines.words, equalities: lines.equalities, reasons: lines.reasons, wheres: lines.wheres }

function about(remarks: readonly Remark[], lines: FormulaLines | undefined): Pick<Step, 'standing' | 'functions'> {
  const functions = lines?.functions.filter(({ name }) => name !== 'UNIT.CONVERT') ?? []
  const texts = remarks.map(({ text }) => text)
  // One confirmed source is enough for a method; what else is said of it stands with the function.
  const sources = functions.filter((definition) => definition.sources.every(({ confidence }) => confidence !== 'confirmed')).flatMap((definition) => definition.sources.map(({ confidence }) => confidence))
  const standing: Standing[] = [
    ...(texts.some((text) => /common practice/i.test(text)) || sources.includes('common practice') ? ['practice' as const] : []),
    ...(texts.some((text) => /from memory/i.test(text)) || sources.includes('from memory') ? ['from memory' as const] : []),
  ]
  return { standing, functions: functions.map(({ name }) => name) }
}

function toleranceOf(survey: Survey, sheet: Sheet, place: CellPlace): Pick<Step, 'tolerance'> {
  const given = survey.workbook.tolerances?.find((one) => samePlace(one.place, place))
  const unit = survey.unit(sheet, place.row, place.column)
  return given === undefined ? {} : { tolerance: toleranceWords(given.tolerance, unit === undefined ? undefined : findUnit(unit)) }
}

function baseOf(survey: Survey, sheet: Sheet, place: CellPlace): Pick<Step, 'base'> {
  const { workbook } = survey
  const { current } = casesOf(workbook)
  if (!differs(workbook, current, place)) return {}
  const content = heldIn(workbook, null, place)?.content ?? null
  return { base: typeof content === 'number' ? withUnit(formatNumber(content, { digits: 15 }), survey.unit(sheet, place.row, place.column)) : content === null ? 'nothing' : entryOf(content) }
}
