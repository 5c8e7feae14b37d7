import { printAddress } from '../../workbook/address.ts'
import type { Remark } from './contents.ts'
import { MAX_REMARKS } from './limits.ts'

/** Gathers remarks: of the cells of one sheet with the same fate one remark, which names the first and says how many. */
export class RemarkBook {
  readonly #said = new Map<string, { readonly place: string; readonly words: string }>()
  readonly #cells = new Map<string, { readonly sheet: string; readonly first: string; readonly words: string; count: number }>()

  /** A remark on the whole file, or a sheet; the same one twice counts once. */
  say(place: string, words: string): void {
    if (this.#said.size < MOST) this.#said.set(`${place}\n${words}`, { place, words })
  }

  cell(sheet: string, row: number, column: number, words: string): void {
    const key = `${sheet}\n${words}`
    const known = this.#cells.get(key)
    if (known) known.count++
    else if (this.#cells.size < MOST) this.#cells.set(key, { sheet, first: printAddress(row, column), words, count: 1 })
  }

  remarks(): Remark[] {
    const all = [
      ...this.#said.values(),
      ...[...this.#cells.values()].map(({ sheet, first, words, count }) => ({
        place: `${sheet}!${first}`, words: count === 1 ? words : `${words} (${count} cells of this sheet, this one first)`,
      })),
    ]
    if (all.length <= MAX_REMARKS) return all
    return [...all.slice(0, MAX_REMARKS - 1), { place: '', words: `${all.length - MAX_REMARKS + 1} more remarks${all.length >= MOST ? ' or more' : ''} are not shown.` }]
  }
}

/** Remarks that are kept at all: what a file makes by the million is not kept by the million. */
const MOST = 10_000
