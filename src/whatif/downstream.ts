import { areaOf, type Area, type Reference } from '../workbook/address.ts'
import { isFormula, sheetByName, type Workbook } from '../workbook/document.ts'
import { namedReference, referencesIn } from '../workbook/formula/references.ts'
import { tokenise } from '../workbook/formula/tokenise.ts'
import { printCellPlace, type CellPlace } from '../workbook/cell-place.ts'

/** Checks that hang on any of these cells, however far down, in the order of the sheets, then of reading. */
export function checksDownstream(workbook: Workbook, from: readonly CellPlace[]): CellPlace[] {
  const users = new Users(workbook)
  const reached = new Map<string, CellPlace>()
  const toFollow = [...from]
  for (let next = toFollow.pop(); next !== undefined; next = toFollow.pop()) {
    for (const user of users.of(next)) {
      const key = printCellPlace(user)
      if (reached.has(key)) continue
      reached.set(key, user)
      toFollow.push(user)
    }
  }
  return workbook.sheets.flatMap(({ name, rows }) => [...reached.values()]
    .filter((place) => place.sheet === name && rows[place.row]?.[place.column]?.role === 'check')
    .toSorted((one, other) => one.row - other.row || one.column - other.column))
}

/** Ranges of up to so many cells are noted at each of their cells, larger ones once. */
const SMALL = 64

/** Which formulas refer to a cell, by themselves or through a name or a range. */
class Users {
  readonly #byCell = new Map<string, CellPlace[]>()
  readonly #byArea = new Map<string, { readonly sheet: string; readonly area: Area; readonly users: CellPlace[] }>()

  constructor(workbook: Workbook) {
    for (const { name, rows } of workbook.sheets) {
      for (const [row, cells] of rows.entries()) {
        for (const [column, cell] of (cells ?? []).entries()) {
          if (isFormula(cell?.content)) this.#note(workbook, cell.content, { sheet: name, row, column })
        }
      }
    }
  }

  of({ sheet, row, column }: CellPlace): CellPlace[] {
    const around = [...this.#byArea.values()].filter(({ sheet: name, area }) => name === sheet && row >= area.top && row <= area.bottom && column >= area.left && column <= area.right)
    return [...(this.#byCell.get(keyOf(sheet, row, column)) ?? []), ...around.flatMap(({ users }) => users)]
  }

  #note(workbook: Workbook, formula: string, user: CellPlace): void {
    const tokens = tokenise(formula)
    const named = tokens.flatMap(({ kind, text }) => (kind === 'name' ? (namedReference(workbook.names, text) ?? []) : []))
    for (const reference of [...referencesIn(tokens).map((one) => one.reference), ...named]) this.#noteReference(workbook, reference, user)
  }

  #noteReference(workbook: Workbook, reference: Reference, user: CellPlace): void {
    const sheet = sheetByName(workbook, reference.sheet ?? user.sheet)
    if (sheet === undefined) return
    const area = areaOf(reference)
    const { top, left, bottom, right } = area
    if ((bottom - top + 1) * (right - left + 1) > SMALL) {
      const key = `${keyOf(sheet.name, top, left)}:${bottom}:${right}`
      const noted = this.#byArea.get(key) ?? { sheet: sheet.name, area, users: [] }
      noted.users.push(user)
      this.#byArea.set(key, noted)
      return
    }
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        const key = keyOf(sheet.name, row, column)
        const noted = this.#byCell.get(key)
        if (noted === undefined) this.#byCell.set(key, [user])
        else noted.push(user)
      }
    }
  }
}

const keyOf = (sheet: string, row: number, column: number): string => `${sheet}!${row}:${column}`
