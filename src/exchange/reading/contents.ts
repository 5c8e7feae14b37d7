/** What stands in a spreadsheet file of anyone's, as plain data. Nothing of it has been believed yet: formulas are texts, names only names. */
export interface FileContents {
  readonly kind: 'xlsx' | 'ods' | 'csv'
  /** In the order of the file; names as the file has them, which need not be names that a workbook accepts. */
  readonly sheets: readonly ReadSheet[]
  /** Defined names of the whole file, by name; reference text in A1 form such as `Duty!$C$5`. */
  readonly names: ReadonlyMap<string, string>
  /** What reading left out or made harmless, in words for the user. */
  readonly remarks: readonly Remark[]
  /** How a text file was understood; absent for the others. */
  readonly dialect?: Dialect
  /** Where day numbers count from 1904-01-01 (ECMA-376, part 1, 18.17.4.1); absent: from 1900. */
  readonly dateSystem?: 1904
}

export interface ReadSheet {
  readonly name: string
  readonly hidden: boolean
  /** Widths in px from the first column on, where the file has them; a hidden column is 0. */
  readonly widthsPx: readonly number[]
  /** Rows above and columns left of what moves, where some stay in view. */
  readonly frozen?: readonly [rows: number, columns: number]
  /** Rows that hold something and are hidden: the first of them, and how many. */
  readonly hiddenRows?: { readonly first: number; readonly count: number }
  /** Sparse; rows and columns from A1. */
  readonly rows: readonly (readonly (ReadCell | undefined)[] | undefined)[]
}

export interface ReadCell {
  /** What the file shows; of a formula, what it gave when the file was written. */
  readonly value: ReadValue
  /** Without "=", in A1 form and with "," between arguments, whatever the kind of file. */
  readonly formula?: string
  /** The cells that an array formula fills, such as `C5:C9`, in its first cell. */
  readonly array?: string
  /** The code of its number format, where the file has one (ECMA-376, part 1, 18.8.31). */
  readonly format?: string
  readonly note?: string
}

export type ReadValue = number | string | boolean | null | { readonly error: string }

export interface Remark {
  /** Sheet and address, or sheet, or nothing where it is of the whole file. */
  readonly place: string
  readonly words: string
}

export interface Dialect {
  readonly encoding: 'UTF-8' | 'UTF-16' | 'Windows-1252'
  readonly delimiter: ',' | ';' | '\t' | '|'
  /** What stands between whole number and fraction. */
  readonly decimalMark: '.' | ','
}

/** A file that could not be read: what is wrong with it, and what is accepted. */
export interface Unreadable {
  readonly problem: string
}
