import { findUnit, type Unit } from '../../functions/units/units.ts'
import type { Area, CellAddress } from './address.ts'
import { setUnit, sheetOf, withContent } from './commands.ts'
import { isFormula, type Cell, type Sheet, type Workbook } from './document.ts'
import { applyEdits, type CellChange, type Edit } from './edits.ts'
import { meantText } from './entry.ts'
import { checkedChanged, numberIn, tolerancesChanged, valuesAsideChanged } from './restate.ts'
import { unitOfValue, valuesOfUnit } from './unit-scope.ts'

/** What a choice of unit at a cell is about. */
export interface UnitPlace {
  /** The cell that holds the unit, or would. */
  readonly at: CellAddress
  /** As written there; undefined where there is none yet. */
  readonly text: string | undefined
  /** Undefined where the text is no unit that is known. */
  readonly unit: Unit | undefined
}

/** The unit that is chosen at a cell: its own where it is a unit cell, else that of its value; undefined where a unit makes no sense. */
export function unitPlace(sheet: Sheet, cell: CellAddress): UnitPlace | undefined {
  const held = sheet.rows[cell.row]?.[cell.column]
  const at = held?.role === 'unit' ? cell : takesUnit(held) ? (unitOfValue(sheet, cell) ?? freeBeside(sheet, cell)) : undefined
  if (!at) return undefined
  const text = meantText(sheet.rows[at.row]?.[at.column]?.content)
  return { at, text, unit: text === undefined ? undefined : findUnit(text) }
}

/** The places of units for all cells of areas, each place once. */
export function unitPlaces(sheet: Sheet, areas: readonly Area[]): UnitPlace[] {
  const found: UnitPlace[] = []
  const known = new Set<string>()
  const note = ({ row, column }: CellAddress) => known.add(`${row}:${column}`)
  for (const { top, left, bottom, right } of areas) {
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        const place = known.has(`${row}:${column}`) ? undefined : unitPlace(sheet, { row, column })
        if (!place || known.has(`${place.at.row}:${place.at.column}`)) continue
        found.push(place)
        note(place.at)
        // What heads a table is looked up once, not for each of its rows.
        valuesOfUnit(sheet, place.at).forEach(note)
      }
    }
  }
  return found
}

/**
 * Writes another unit into the places. What is typed stays as it is, unless `convertNumbers`: then the typed numbers that have the unit are
 * converted too, where it is a known one of the same dimension, and so are those that cases have aside, and tolerances. Formulas are left alone: what they ask
 * for is the unit beside them.
 */
export function changeUnits(workbook: Workbook, sheetName: string, places: readonly UnitPlace[], code: string, convertNumbers: boolean): Edit[] {
  const sheet = sheetOf(workbook, sheetName)
  const to = findUnit(code)
  const numbersIn = (host: Sheet, some = places): CellChange[] => some.flatMap(({ at, unit: from }) =>
    convertNumbers && from && to && from.dimension === to.dimension && host.name === sheet.name
      ? numbersOf(host, at).map(({ row, column, cell, number }) => ({ row, column, cell: withContent(cell, numberIn(number, from, to)) }))
      : [])
  const units = places.flatMap(({ at }): Edit[] => {
    const before = sheet.rows[at.row]?.[at.column]
    return before ? [{ kind: 'cells', sheet: sheet.name, cells: [{ ...at, cell: withContent(before, code) }] }] : setUnit(workbook, sheetName, { row: at.row, column: at.column - 1 }, code)
  })
  /** Where the unit stands as it does now, it and its numbers. */
  const inChecked = (host: Sheet): CellChange[] => {
    const asNow = places.filter(({ at, text }) => meantText(host.rows[at.row]?.[at.column]?.content) === text)
    const unitCells = asNow.flatMap(({ at }) => {
      const cell = host.rows[at.row]?.[at.column]
      return cell ? [{ ...at, cell: withContent(cell, code) }] : []
    })
    return [...unitCells, ...numbersIn(host, asNow)]
  }
  const cells = [...units.flatMap((edit) => (edit.kind === 'cells' ? edit.cells : [])), ...numbersIn(sheet)]
  // A unit without its numbers is another quantity: then marks on it go stale.
  const isConverted = convertNumbers && places.every(({ unit: from }) => from !== undefined && to !== undefined && from.dimension === to.dimension)
  const checked = isConverted ? checkedChanged(workbook, (host) => (host.name === sheet.name ? inChecked(host) : [])) : []
  const edits: Edit[] = [{ kind: 'cells', sheet: sheet.name, cells }, ...(convertNumbers ? valuesAsideChanged(workbook, numbersIn) : []), ...checked]
  return convertNumbers && workbook.tolerances ? [...edits, ...tolerancesChanged(workbook, applyEdits(workbook, edits).workbook)] : edits
}

/** Whether typed numbers have the unit of a place, so that one may want to convert them. Looks through the whole table that it heads. */
export const hasNumbers = (sheet: Sheet, { at }: UnitPlace): boolean => numbersOf(sheet, at).length > 0

interface NumberCell extends CellAddress {
  readonly cell: Cell
  readonly number: number
}

const numbersOf = (sheet: Sheet, unitAt: CellAddress): NumberCell[] =>
  valuesOfUnit(sheet, unitAt).flatMap(({ row, column }) => {
    const cell = sheet.rows[row]?.[column]
    return cell && typeof cell.content === 'number' ? [{ row, column, cell, number: cell.content }] : []
  })

const takesUnit = (cell: Cell | undefined): boolean =>
  cell !== undefined && (cell.role === 'input' || cell.role === 'result') && (cell.content === null || typeof cell.content === 'number' || isFormula(cell.content))

const freeBeside = (sheet: Sheet, { row, column }: CellAddress): CellAddress | undefined =>
  sheet.rows[row]?.[column + 1] === undefined ? { row, column: column + 1 } : undefined
