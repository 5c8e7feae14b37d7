import { quoteSheetName } from '../../workbook/address.ts'
import type { ImportRemark, RemarkKind } from './import-remark.ts'

/** Of remarks that many cells share: how many cells, and the first of them. */
export class Tally {
  readonly #found = new Map<string, { readonly kind: RemarkKind; readonly words: string; readonly first: string[]; count: number }>()

  /** @param address left out where the words are of the whole sheet */
  add(kind: RemarkKind, words: string, address?: string): void {
    const key = `${kind}\n${words}`
    const found = this.#found.get(key) ?? { kind, words, first: [], count: 0 }
    this.#found.set(key, found)
    found.count++
    if (address !== undefined && found.first.length < SHOWN) found.first.push(address)
  }

  remarks(sheet: string): ImportRemark[] {
    return [...this.#found.values()].map(({ kind, words, first, count }) => {
      const [only] = first
      if (only !== undefined && count === 1) return { kind, words, place: `${quoteSheetName(sheet)}!${only}` }
      const cells = only === undefined ? '' : ` (${count} cells: ${first.join(', ')}${count > first.length ? ', …' : ''})`
      return { kind, words: `${words}${cells}`, place: sheet }
    })
  }
}

const SHOWN = 5
