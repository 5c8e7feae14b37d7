/** What goes into which column of a list, for one sheet of a file. */
export interface Mapping {
  /** By the column of the list's sheet; a column that is not here stays empty. */
  readonly columns: ReadonlyMap<number, ColumnMapping>
}

export interface ColumnMapping {
  /** The column of the file; undefined where only a constant is given. */
  readonly from?: number
  /** Of what stands in the file's column, where the cell itself names none: the code of a unit. */
  readonly unit?: string
  /** The column of the file that names the unit row by row. */
  readonly unitColumn?: number
  /** For all rows, or for those where the file's column is empty; as typed, a number being in the list's own unit. */
  readonly constant?: string
  /** What texts of the file mean, by the text in small letters. */
  readonly choices: ReadonlyMap<string, string>
  /** Why someone should look at it. */
  readonly unsure?: string
}

export const choiceKey = (text: string): string => text.trim().toLowerCase()

export const NO_CHOICES: ReadonlyMap<string, string> = new Map()
