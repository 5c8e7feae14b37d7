import { isFault } from '../../functions/fault.ts'
import { convert, toSi } from '../../functions/units/convert.ts'
import { parseQuantity } from '../../functions/units/quantity.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import { atBase, bySheet, sheetHolding } from './case-switching.ts'
import { casesOf, held, type CaseValue } from './cases.ts'
import type { CellPlace } from './cell-place.ts'
import { eachCell } from './cells.ts'
import { sheetByName, type Cell, type Sheet, type Workbook } from './document.ts'
import { applyEdits, type CellChange, type Edit } from './edits.ts'
import { meantText } from './entry.ts'
import { normalTolerances, sameTolerances, type GivenTolerance } from './given-tolerances.ts'
import { reviewRestated } from './review/review-restating.ts'
import { counterpart, type UnitSystem } from './unit-pairs.ts'
import { unitOfValue, valuesOfUnit } from './unit-scope.ts'

/**
 * Restates a workbook in US or SI units: unit cells change, and the numbers they apply to (as `unit-scope.ts` says)
 * are converted, as are quantities in input cells ("31 °F"). Formulas stay. Numbers are rounded to 15 significant
 * digits. Restating to the other system and back gives the same contents; a stray unit of the other system stays as it
 * is on the way there, and is remembered on the way back. What cases have in their own is converted just so, each value as if it stood in its cell,
 * what check marks cover likewise, and so are tolerances, as differences.
 */
export function restate(workbook: Workbook, system: UnitSystem): Edit[] {
  const keepStrays = unitSystemOf(workbook) !== system
  const inCells = workbook.sheets.flatMap((sheet): Edit[] => {
    const cells = restateSheet(sheet, system, keepStrays)
    return cells.length > 0 ? [{ kind: 'cells', sheet: sheet.name, cells }] : []
  })
  const inSheet = (sheet: Sheet) => restateSheet(sheet, system, keepStrays)
  const edits = [...inCells, ...valuesAsideChanged(workbook, inSheet), ...checkedChanged(workbook, inSheet)]
  const after = applyEdits(workbook, edits).workbook
  return after === workbook ? [] : [...edits, ...tolerancesChanged(workbook, after)]
}

/**
 * All that cases have aside, changed as it would be in its cell: the edit of it, where there are cases at all.
 * @param change what it makes of the cells of a sheet in which the values of one case stand
 */
export function valuesAsideChanged(workbook: Workbook, change: (sheet: Sheet) => readonly CellChange[]): Edit[] {
  if (!workbook.cases) return []
  const cases = casesOf(workbook)
  const base = atBase(workbook)
  const list = cases.list.map((one) => ({
    ...one,
    aside: [...bySheet(one.aside)].flatMap(([name, values]): readonly CaseValue[] => {
      const sheet = sheetByName(base, name)
      if (!sheet) return values
      const changed = new Map(change(sheetHolding(sheet, values)).map(({ row, column, cell }) => [`${row}:${column}`, cell]))
      return values.map((value) => {
        const cell = changed.get(`${value.row}:${value.column}`)
        return cell ? { sheet: value.sheet, row: value.row, column: value.column, ...held(cell) } : value
      })
    }),
  }))
  return [{ kind: 'cases', cases: { ...cases, list } }]
}

/** What check marks cover, changed as it would be in its cells: the edit of it, where there are marks that it concerns. */
export const checkedChanged = (workbook: Workbook, change: (sheet: Sheet) => readonly CellChange[]): Edit[] =>
  reviewRestated(workbook, change, (value, from, to) => {
    const [one, other] = [findUnit(from), findUnit(to)]
    return one && other ? numberIn(value, one, other) : value
  })

/** The edit of tolerances whose inputs have another unit of the same dimension afterwards: converted as differences. Shares stay as they are. */
export function tolerancesChanged(before: Workbook, after: Workbook): Edit[] {
  const { tolerances } = before
  if (!tolerances) return []
  const changed = tolerances.map((one): GivenTolerance => {
    const { place, tolerance } = one
    const [from, to] = [differenceUnit(before, place), differenceUnit(after, place)]
    if (tolerance.kind === 'share' || !from || !to || from.code === to.code || from.dimension !== to.dimension) return one
    const { content, restatedFrom } = restated(tolerance.size, tolerance.restatedFrom, true, (size) => numberIn(size, from, to), (size) => numberIn(size, to, from))
    return { place, tolerance: { kind: 'size', size: content, ...(restatedFrom === undefined ? {} : { restatedFrom }) } }
  })
  return sameTolerances(tolerances, normalTolerances(changed)) ? [] : [{ kind: 'tolerances', tolerances: changed }]
}

/** What a difference of two values of a cell is counted in: the steps of its unit, without zero point and site, and never backwards as a vacuum is. */
function differenceUnit(workbook: Workbook, place: CellPlace): Unit | undefined {
  const sheet = sheetByName(workbook, place.sheet)
  const at = sheet && unitOfValue(sheet, place)
  const unit = at && findUnit(meantText(sheet.rows[at.row]?.[at.column]?.content) ?? '')
  return unit && { ...unit, factor: Math.abs(unit.factor), offset: 0, gauge: false }
}

/** The system that most unit cells are in; undefined if neither has more. */
export function unitSystemOf(workbook: Workbook): UnitSystem | undefined {
  let moreUs = 0
  for (const sheet of workbook.sheets) {
    eachCell(sheet, (cell) => {
      const unit = cell.role === 'unit' ? findUnit(meantText(cell.content) ?? '') : undefined
      if (unit && counterpart(unit.code, 'SI') !== undefined) moreUs++
      if (unit && counterpart(unit.code, 'US') !== undefined) moreUs--
    })
  }
  return moreUs === 0 ? undefined : moreUs > 0 ? 'US' : 'SI'
}

/** @param keepStrays whether units that are in the system already are strays, to be as they are on the way back. */
function restateSheet(sheet: Sheet, system: UnitSystem, keepStrays: boolean): CellChange[] {
  const changes: CellChange[] = []
  const otherSystem = system === 'SI' ? 'US' : 'SI'
  const textAs = (text: string, cell: Cell, inSystem: (text: string, system: UnitSystem) => string) =>
    restated(text, cell.restatedFrom, keepStrays, (one) => inSystem(one, system), (one) => inSystem(one, otherSystem))

  eachCell(sheet, (cell, row, column) => {
    const text = meantText(cell.content)
    if (text === undefined) return
    if (cell.role === 'input') changeTo(row, column, cell, textAs(text, cell, quantityIn))
    if (cell.role !== 'unit') return
    const unit = textAs(text, cell, unitTextIn)
    changeTo(row, column, cell, unit)
    const from = findUnit(text)
    const to = findUnit(unit.content)
    if (!from || !to || from === to) return
    for (const at of valuesOfUnit(sheet, { row, column })) {
      const value = sheet.rows[at.row]?.[at.column]
      if (typeof value?.content !== 'number') continue
      const number = restated(value.content, value.restatedFrom, true, (one) => numberIn(one, from, to), (one) => numberIn(one, to, from))
      changeTo(at.row, at.column, value, number)
    }
  })
  return changes

  function changeTo(row: number, column: number, { restatedFrom: before, ...cell }: Cell, { content, restatedFrom }: Restated<string | number>): void {
    if (content === meaning(cell) && restatedFrom === before) return
    const same = content === meaning(cell)
    changes.push({ row, column, cell: { ...cell, content: same ? cell.content : content, ...(restatedFrom === undefined ? {} : { restatedFrom }) } })
  }
}

interface Restated<Content> {
  readonly content: Content
  readonly restatedFrom?: Content
}

/**
 * What a content becomes by `turn`. What it was restated from is given back if it still leads here; what it is now is
 * remembered if turning back would give something else; where nothing turns, only if asked for.
 */
function restated<Content extends string | number>(
  content: Content,
  remembered: string | number | undefined,
  keepIfSame: boolean,
  turn: (content: Content) => Content,
  turnBack: (content: Content) => Content,
): Restated<Content> {
  if (isLike(remembered, content)) {
    if (turnBack(remembered) === content) return { content: remembered }
    if (turn(remembered) === content && turn(content) === content) return { content, restatedFrom: remembered }
  }
  const next = turn(content)
  const remember = turnBack(next) !== content && (next !== content || keepIfSame)
  return remember ? { content: next, restatedFrom: content } : { content: next }
}

function isLike<Content extends string | number>(remembered: string | number | undefined, content: Content): remembered is Content {
  return typeof remembered === typeof content
}

function meaning({ content }: Pick<Cell, 'content'>): Cell['content'] {
  return meantText(content) ?? content
}

/** The same text if there is nothing to restate in it. */
function unitTextIn(text: string, system: UnitSystem): string {
  const unit = findUnit(text)
  return (unit && counterpart(unit.code, system)) ?? text
}

function quantityIn(text: string, system: UnitSystem): string {
  const quantity = parseQuantity(text)
  if (isFault(quantity)) return text
  const code = counterpart(quantity.unit.code, system)
  const to = code === undefined ? undefined : findUnit(code)
  return to ? `${numberIn(quantity.value, quantity.unit, to)} ${to.code}` : text
}

/**
 * Gauge pressures have gauge counterparts only, so that the site, which is no business of this, drops out at 0.
 * The arithmetic's own error is taken off: 32 °F is 0 °C, not 6e-14 °C.
 */
export function numberIn(value: number, from: Unit, to: Unit): number {
  const sitePa = 0
  const converted = convert(value, from, to, sitePa)
  const offsetError = from.offset === to.offset ? 0 : (1e-15 * Math.abs(toSi(value, from, sitePa))) / to.factor
  return shortest(converted, 1e-14 * Math.abs(converted) + offsetError)
}

/** The number of fewest digits within the error, if it has at most 12; else rounded to 15. */
function shortest(value: number, error: number): number {
  if (Math.abs(value) <= error) return 0
  for (let digits = 1; digits <= 12; digits++) {
    const rounded = Number(value.toPrecision(digits))
    if (Math.abs(rounded - value) <= error) return rounded
  }
  return Number(value.toPrecision(15))
}
