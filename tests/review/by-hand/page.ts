import { withCells } from '../../../src/workbook/cells.ts'
import { suggestedRole } from '../../../src/workbook/commands.ts'
import { emptySheet, type CellContent, type Role, type Sheet, type Workbook } from '../../../src/workbook/document.ts'
import type { CellChange } from '../../../src/workbook/edits.ts'
import { at } from '../../unit/workbook-of.ts'

/** Of a cell: what was typed, and the role that its writer gave it; without one, the role that Lowside suggests for what was typed. */
export type Typed = CellContent | readonly [CellContent, Role]

/** A sheet as its writer typed it, cell by cell, in the order in which they stand. */
export function page(name: string, cells: Readonly<Record<string, Typed>>): Sheet {
  return Object.entries(cells).reduce((sheet, [address, typed]) => {
    const place = at(address)
    const [content, role] = isPair(typed) ? typed : [typed, suggestedRole(sheet, place, typed)]
    const change: CellChange = { ...place, cell: { content, role } }
    return withCells(sheet, [change])
  }, emptySheet(name))
}

const isPair = (typed: Typed): typed is readonly [CellContent, Role] => Array.isArray(typed)

/** One line of a step-by-step calculation: what it is, its value or formula, its unit, where it comes from; from the column given on. */
export function line(row: number, label: string, value: CellContent, unit: string | null, source?: string): Readonly<Record<string, Typed>> {
  return {
    [`B${row}`]: [label, 'label'],
    [`C${row}`]: value,
    ...(unit === null ? {} : { [`D${row}`]: [unit, 'unit'] as const }),
    ...(source === undefined ? {} : { [`E${row}`]: [source, 'text'] as const }),
  }
}

/** A line whose formula says whether something holds. */
export const check = (row: number, label: string, formula: string): Readonly<Record<string, Typed>> => ({ [`B${row}`]: [label, 'label'], [`C${row}`]: [formula, 'check'] })

export const heading = (row: number, title: string): Readonly<Record<string, Typed>> => ({
  B1: [title, 'title'], [`B${row}`]: ['Step', 'heading'], [`C${row}`]: ['Value', 'heading'], [`D${row}`]: ['Unit', 'heading'], [`E${row}`]: ['Source', 'heading'],
})

export const bookOf = (title: string, ...sheets: readonly Sheet[]): Workbook => ({ title, purpose: '', sheets, names: new Map(), figures: [] })
