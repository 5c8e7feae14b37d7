import type { CellObject } from 'xlsx'
import { references, read, type Expression } from './other-engine/expressions.ts'
import { evaluated, type Surroundings } from './other-engine/evaluation.ts'
import { areaIn, type Area } from './other-engine/areas.ts'
import { CellFault, faultOf, type Scalar } from './other-engine/values.ts'
import type { FileInput, Recalculated } from './recalculated.ts'

interface Place {
  readonly sheet: string
  readonly row: number
  readonly column: number
}

interface Open {
  readonly place: Place
  readonly formula: Expression | undefined
  readonly needs: Area[]
  /** The area that is being settled, and how many of its cells are. */
  area?: Area | undefined
  done: number
}

/**
 * Every value of a file, recalculated from its constants alone by a second engine that shares no code with Lowside or the first: a reader
 * of formulas and a library of standard functions from the registry, and between them the rules of OpenFormula 1.3 for references,
 * arrays and errors (`other-engine/`).
 */
export function recalculatedOtherwise({ sheets, names }: FileInput): ReadonlyMap<string, readonly (readonly Recalculated[])[]> {
  const found = new Map([...sheets].map(([name, rows]) => [name, Array.from(rows, (row) => Array.from(row ?? [], (): Scalar | undefined => undefined))]))
  const extents = new Map([...sheets].map(([name, rows]) => [name, { rows: rows.length, columns: Math.max(0, ...Array.from(rows, (row) => row?.length ?? 0)) }]))
  const named = new Map([...names].map(([name, text]) => [name.toLowerCase(), text]))
  const settled = new Set<string>()
  const areaOf = (reference: string, sheet: string): Area | undefined => areaIn(reference, sheet, named, extents)
  const around: Surroundings = { area: areaOf, valueAt: (sheet, row, column) => found.get(sheet)?.[row]?.[column] ?? null }

  for (const [sheet, rows] of sheets) rows.forEach((row, at) => row?.forEach((_, column) => settle({ sheet, row: at, column })))
  return new Map([...found].map(([name, rows]) => [name, rows.map((row) => row.map((value) => (value instanceof CellFault ? value.code : (value ?? null))))]))

  /** Works a cell out after all that it refers to, whose count may be beyond what a stack holds. A cell that is being worked out is not begun again. */
  function settle(first: Place): void {
    const open: Open[] = []
    const begin = (place: Place): void => {
      const row = found.get(place.sheet)?.[place.row]
      const cell = sheets.get(place.sheet)?.[place.row]?.[place.column]
      if (row === undefined || cell === undefined || row[place.column] !== undefined) return
      row[place.column] = cell.f === undefined ? constant(cell) : null
      if (cell.f === undefined) return
      const formula = read(cell.f)
      open.push({ place, formula, needs: formula === undefined ? [] : references(formula).flatMap((text) => areaOf(text, place.sheet) ?? []), done: 0 })
    }
    begin(first)
    for (let top = open.at(-1); top !== undefined; top = open.at(-1)) {
      const area = (top.area ??= top.needs.pop())
      if (area !== undefined) {
        const width = area.right - area.left + 1
        const all = width * (area.bottom - area.top + 1)
        if (settled.has(area.key) || top.done >= all) {
          settled.add(area.key)
          top.area = undefined
          top.done = 0
          continue
        }
        const at = top.done++
        begin({ sheet: area.sheet, row: area.top + Math.floor(at / width), column: area.left + (at % width) })
        continue
      }
      open.pop()
      const { sheet, row, column } = top.place
      const cells = found.get(sheet)?.[row]
      const isArray = sheets.get(sheet)?.[row]?.[column]?.F !== undefined
      if (cells) cells[column] = top.formula === undefined ? faultOf('#NAME?') : evaluated(top.formula, { ...around, sheet, row, column, isArray })
    }
  }
}

const constant = (cell: CellObject): Scalar =>
  cell.t === 'e' ? faultOf('#N/A') : typeof cell.v === 'number' || typeof cell.v === 'string' || typeof cell.v === 'boolean' ? cell.v : null
