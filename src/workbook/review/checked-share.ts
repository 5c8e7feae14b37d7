import { eachCell } from '../cells.ts'
import type { Cell, Sheet, Workbook } from '../document.ts'
import type { MarkState } from './mark-states.ts'

/** How much of a sheet was checked. */
export interface CheckedShare {
  /** Inputs, results and checks that hold something. */
  readonly cells: number
  /** Those that a good mark covers: marked themselves, or upstream of what is. */
  readonly checked: number
  /** Those that only stale marks cover. */
  readonly stale: number
  /** Marks on the sheet that are stale. */
  readonly staleMarks: number
}

/** By the name of the sheet. */
export function checkedShares({ sheets }: Workbook, states: readonly MarkState[]): ReadonlyMap<string, CheckedShare> {
  const good = coveredBy(states.filter(({ isGood }) => isGood))
  const stale = coveredBy(states.filter(({ isGood }) => !isGood))
  return new Map(sheets.map((sheet) => {
    const [checked, doubtful] = [good.get(sheet.name) ?? NONE, stale.get(sheet.name) ?? NONE]
    const staleMarks = states.filter(({ isGood, mark }) => !isGood && mark.sheet === sheet.name).length
    return [sheet.name, { cells: valueCells(sheet), checked: counted(sheet, checked), stale: counted(sheet, doubtful, checked), staleMarks }]
  }))
}

/** `12 of 40 checked, 1 mark stale`; undefined for a sheet without marks on it or over it. */
export function shareWords({ cells, checked, stale, staleMarks }: CheckedShare): string | undefined {
  if (checked + stale + staleMarks === 0) return undefined
  return [
    checked === cells ? `all ${cells.toLocaleString('en')} checked` : `${checked.toLocaleString('en')} of ${cells.toLocaleString('en')} checked`,
    ...(staleMarks > 0 ? [staleMarks === 1 ? '1 mark stale' : `${staleMarks.toLocaleString('en')} marks stale`] : stale > 0 ? [`${stale.toLocaleString('en')} stale`] : []),
  ].join(', ')
}

type Places = ReadonlyMap<number, { readonly row: number; readonly column: number }>

const NONE: Places = new Map()

function coveredBy(states: readonly MarkState[]): ReadonlyMap<string, Places> {
  const found = new Map<string, Map<number, { row: number; column: number }>>()
  for (const { mark } of states) {
    for (const { sheet, row, column, gone } of mark.covers) {
      if (gone) continue
      const places = found.get(sheet) ?? new Map<number, { row: number; column: number }>()
      found.set(sheet, places)
      places.set(row * COLUMNS + column, { row, column })
    }
  }
  return found
}

function counted(sheet: Sheet, places: Places, but: Places = NONE): number {
  let count = 0
  for (const [key, { row, column }] of places) if (!but.has(key) && isValueCell(sheet.rows[row]?.[column])) count++
  return count
}

/** Known once for a sheet as it is. */
function valueCells(sheet: Sheet): number {
  const known = COUNTS.get(sheet)
  if (known !== undefined) return known
  let count = 0
  eachCell(sheet, (cell) => void (count += isValueCell(cell) ? 1 : 0))
  COUNTS.set(sheet, count)
  return count
}

const COUNTS = new WeakMap<Sheet, number>()

const isValueCell = (cell: Cell | undefined): boolean => cell !== undefined && cell.content !== null && (cell.role === 'input' || cell.role === 'result' || cell.role === 'check')

const COLUMNS = 2 ** 15
