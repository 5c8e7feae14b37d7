import { areaOf, printReference, type Area, type Reference } from '../../workbook/address.ts'
import { isFormula, sheetByName, type Cell, type Row, type Sheet } from '../../workbook/document.ts'
import { referencesIn, rewriteReferences } from '../../workbook/formula/references.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import type { FindingKind, Found } from '../finding.ts'
import { merge, type CellFound } from '../merge.ts'
import type { FormulaCell, Survey } from '../survey.ts'

/** Ranges that leave out the last rows of the list that they take in, or the first: rows that were added beyond them. */
export const shortRanges: FindingKind = {
  kind: 'short-ranges',
  heading: 'Ranges that leave out rows of their list',
  about: 'A total or a lookup whose range ends before the list does, as when rows were added below it. A list is rows of the same formulas without a gap between; running sums within it are not meant.',
  find(survey) {
    const lists = new Lists(survey)
    return merge(survey.formulas.flatMap((cell) => inFormula(cell, survey, lists)))
  },
}

/** Fewer rows are no list. */
const LEAST_ROWS = 3

function inFormula(cell: FormulaCell, survey: Survey, lists: Lists): CellFound[] {
  if (!cell.formula.includes(':')) return []
  const short = referencesIn(tokenise(cell.formula)).flatMap(({ reference }) => leftOut(reference, cell, survey, lists) ?? [])
  const [first] = short
  if (first === undefined) return []
  const { sheet, row, column, formula } = cell
  const whole = new Map(short.map(({ reference, list }) => [printReference(reference), extended(reference, list)] as const))
  const mended = rewriteReferences(formula, (reference) => whole.get(printReference(reference)) ?? reference)
  const found: Found = {
    severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
    reason: `Takes in ${printReference(first.reference)}, and leaves out ${first.words} of that list.`, key: `leaves out ${short.map(({ count }) => count).join(', ')} rows`,
    causes: short.map(({ on, at, area }) => ({ sheet: on.name, row: at, column: area.left })),
    mend: { words: 'Take in the whole list', edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: { ...cell.cell, content: mended } }] }] },
  }
  return [{ found, alike: `${first.words}${first.area.top}:${first.area.bottom}` }]
}

interface LeftOut {
  readonly reference: Reference
  readonly on: Sheet
  readonly area: Area
  /** The rows of the whole list. */
  readonly list: Rows
  /** The first row that is left out. */
  readonly at: number
  readonly count: number
  readonly words: string
}

interface Rows {
  readonly top: number
  readonly bottom: number
}

function leftOut(reference: Reference, { sheet: home, row }: FormulaCell, { workbook }: Survey, lists: Lists): LeftOut | undefined {
  const { from, to } = reference
  if (to === null || from.row === null || from.column === null || to.row === null) return undefined
  const on = reference.sheet === null ? home : sheetByName(workbook, reference.sheet)
  const area = areaOf(reference)
  if (on === undefined || area.bottom - area.top + 1 < LEAST_ROWS) return undefined
  const list = lists.around(on, area)
  if (list === undefined) return undefined
  const [above, below] = [area.top - list.top, list.bottom - area.bottom]
  // Within the list itself a range that ends at its row is a running one.
  if ((above === 0 && below === 0) || (on === home && row >= list.top && row <= list.bottom)) return undefined
  const rows = (count: number, first: number): string => (count === 1 ? `row ${first + 1}` : `rows ${first + 1} to ${first + count}`)
  const words = [...(above > 0 ? [rows(above, list.top)] : []), ...(below > 0 ? [rows(below, area.bottom + 1)] : [])].join(' and ')
  return { reference, on, area, list, at: above > 0 ? list.top : area.bottom + 1, count: above + below, words }
}

const extended = ({ from, to, ...rest }: Reference, { top, bottom }: Rows): Reference => ({ ...rest, from: { ...from, row: top }, to: to && { ...to, row: bottom } })

/** Where lists begin and end. */
class Lists {
  readonly #survey: Survey
  /** By sheet, for each row whether most of its formulas are those of the row above, moved. */
  readonly #alike = new Map<Sheet, Uint8Array>()
  /** By columns of a sheet, for each row the first of its list. */
  readonly #firsts = new Map<string, Int32Array>()

  constructor(survey: Survey) {
    this.#survey = survey
  }

  /** The list that holds all rows of a range; undefined where these are of different kinds. */
  around(sheet: Sheet, { top, bottom, left, right }: Area): Rows | undefined {
    const firsts = this.#firstsOf(sheet, left, right)
    const first = firsts[top]
    if (first === undefined || firsts[bottom] !== first) return undefined
    // From its first row on each has the number of that one.
    let [low, high] = [bottom, firsts.length - 1]
    while (low < high) {
      const middle = (low + high + 1) >> 1
      if ((firsts[middle] ?? 0) <= first) low = middle
      else high = middle - 1
    }
    return { top: first, bottom: low }
  }

  #firstsOf(sheet: Sheet, left: number, right: number): Int32Array {
    const key = `${left}:${right}:${sheet.name}`
    const known = this.#firsts.get(key)
    if (known !== undefined) return known
    const alike = this.#alikeRows(sheet)
    const firsts = new Int32Array(sheet.rows.length)
    for (let row = 0; row < firsts.length; row++) {
      const goesOn = alike[row] === 1 && isFilledAlike(sheet.rows[row - 1], sheet.rows[row], left, right)
      firsts[row] = goesOn ? (firsts[row - 1] ?? row) : row
    }
    this.#firsts.set(key, firsts)
    return firsts
  }

  #alikeRows(sheet: Sheet): Uint8Array {
    const known = this.#alike.get(sheet)
    if (known !== undefined) return known
    const alike = new Uint8Array(sheet.rows.length)
    let before: readonly (string | undefined)[] = []
    for (let row = 0; row < alike.length; row++) {
      const shapes = shapesOf(this.#survey, sheet.rows[row], row)
      const [formulas, same] = counted(before, shapes)
      if (same * 2 > formulas) alike[row] = 1
      before = shapes
    }
    this.#alike.set(sheet, alike)
    return alike
  }
}

const shapesOf = (survey: Survey, cells: Row, row: number): (string | undefined)[] =>
  (cells ?? []).map((cell, column) => (cell && isFormula(cell.content) ? survey.shape({ formula: cell.content, row, column }) : undefined))

/** How many columns have a formula in one of two rows, and in how many it is the same. */
function counted(one: readonly (string | undefined)[], other: readonly (string | undefined)[]): readonly [formulas: number, same: number] {
  let [formulas, same] = [0, 0]
  for (let column = 0; column < Math.max(one.length, other.length); column++) {
    if (one[column] === undefined && other[column] === undefined) continue
    formulas++
    if (one[column] === other[column]) same++
  }
  return [formulas, same]
}

/** Both hold something in the same of the columns. */
function isFilledAlike(one: Row, other: Row, left: number, right: number): boolean {
  let filled = 0
  for (let column = left; column <= right; column++) {
    const isFilled = isValue(one?.[column])
    if (isFilled !== isValue(other?.[column])) return false
    if (isFilled) filled++
  }
  return filled > 0
}

const isValue = (cell: Cell | undefined): boolean => cell !== undefined && cell.content !== null && (cell.role === 'input' || cell.role === 'result' || cell.role === 'check')
