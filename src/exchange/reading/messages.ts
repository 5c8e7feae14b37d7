import type { Dialect, FileContents, ReadCell, ReadSheet, Unreadable } from './contents.ts'

export interface ReadingRequest {
  readonly file: File
  readonly dialect: Partial<Dialect> | undefined
}

/** How much is done, from 0 to 1; then the contents without rows, rows in parts, and that it was all. A file that is not read is answered by that alone. */
export type ReadingResponse =
  | { readonly share: number | undefined }
  | { readonly unreadable: Unreadable }
  | { readonly begun: FileContents }
  | { readonly sheet: number; readonly from: number; readonly rows: ReadSheet['rows'] }
  | { readonly ended: true }

/** Cells of a message: each is taken in within a few frames, so that the screen goes on between them. */
const PART_CELLS = 20_000

/** Contents as messages. */
export function* contentsInParts(contents: FileContents): Generator<ReadingResponse> {
  yield { begun: { ...contents, sheets: contents.sheets.map((sheet) => ({ ...sheet, rows: [] })) } }
  for (const [sheet, { rows }] of contents.sheets.entries()) {
    let [from, cells] = [0, 0]
    for (let row = 0; row < rows.length; row++) {
      // An empty row costs something too.
      cells += 1 + (rows[row]?.length ?? 0)
      if (cells < PART_CELLS) continue
      yield { sheet, from, rows: rows.slice(from, row + 1) }
      ;[from, cells] = [row + 1, 0]
    }
    if (from < rows.length) yield { sheet, from, rows: rows.slice(from) }
  }
  yield { ended: true }
}

/** Puts messages together again. */
export class ContentsAssembly {
  #begun: FileContents | undefined
  #rows: (readonly (ReadCell | undefined)[] | undefined)[][] = []

  /** The contents, once they are whole. */
  take(response: ReadingResponse): FileContents | undefined {
    if ('begun' in response) {
      this.#begun = response.begun
      this.#rows = response.begun.sheets.map(() => [])
    } else if ('rows' in response) {
      const into = this.#rows[response.sheet]
      response.rows.forEach((row, index) => {
        if (into && row !== undefined) into[response.from + index] = row
      })
    } else if ('ended' in response && this.#begun) {
      return { ...this.#begun, sheets: this.#begun.sheets.map((sheet, index) => ({ ...sheet, rows: this.#rows[index] ?? [] })) }
    }
    return undefined
  }
}
