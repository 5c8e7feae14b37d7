import type { CellValue } from '../../calc/values.ts'
import type { CellStyle } from './looks.ts'

/** A cell as a spreadsheet file holds it. */
export interface FileCell {
  readonly value: CellValue
  readonly formula?: FileFormulaText
  readonly style: CellStyle
  readonly note?: string
  /** How many columns its text goes across; the cells that it covers hold nothing. */
  readonly across?: number
}

export interface FileFormulaText {
  /** Without "="; empty for a cell that takes part in a shared formula which another cell holds. */
  readonly text: string
  readonly array?: boolean
  /** A formula that cells below have as well, their references moved down: its number on the sheet, and at the first cell their range. */
  readonly shared?: { readonly number: number; readonly range?: string }
}

export interface FileRow {
  /** Counted from 0. */
  readonly row: number
  readonly heightPt?: number
  /** By column. */
  readonly cells: readonly (FileCell | undefined)[]
}

export interface FileSheet {
  readonly name: string
  readonly widthsPx: readonly number[]
  readonly frozen: readonly [rows: number, columns: number]
  /** Made as they are written: a large sheet is never whole in memory. */
  readonly rows: Iterable<FileRow>
  /** Every style that the cells have, told before the rows are made; left out where the rows are a list that can be looked through first. */
  readonly styles?: () => Iterable<CellStyle>
  /** Areas in which a FALSE is marked. */
  readonly checks?: readonly string[]
  /** Not shown until someone asks for it. */
  readonly hidden?: true
}
