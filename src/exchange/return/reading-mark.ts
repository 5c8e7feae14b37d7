import type { ReadCell } from '../reading/contents.ts'
import type { FileCell } from '../package/file-sheet.ts'
import { valueKey } from './same-value.ts'

/**
 * What stands on a sheet that is there for reading only, such as the cover, in a short text: such a sheet is made anew with every export, with words that another
 * machine or another Lowside may choose otherwise, so that what the export wrote is not to be had by making it once more. What formulas give does not count.
 */
export function readingMark(rows: Iterable<{ readonly row: number; readonly cells: readonly (Pick<FileCell, 'value' | 'formula'> | ReadCell | undefined)[] }>): string {
  const hash: Hash = [FNV_OFFSET, FNV_OFFSET ^ 0x5bd1e995]
  for (const { row, cells } of rows) {
    for (const [column, cell] of cells.entries()) {
      const key = cell === undefined ? '' : cell.formula === undefined ? valueKey(cell.value) : '='
      if (key !== '') stir(hash, `${row},${column}:${key}\n`)
    }
  }
  return hash.map((part) => (part >>> 0).toString(16).padStart(8, '0')).join('')
}

type Hash = [number, number]

/** FNV-1a (Fowler, Noll, Vo) in 32 bits, twice from different beginnings: nobody gains by making two sheets that are alike in it. */
const FNV_OFFSET = 0x811c9dc5
const FNV_PRIME = 0x01000193

function stir(hash: Hash, text: string): void {
  let [one, other] = hash
  for (let index = 0; index < text.length; index++) {
    const code = text.charCodeAt(index)
    one = Math.imul(one ^ code, FNV_PRIME)
    other = Math.imul(other ^ (code + 1), FNV_PRIME)
  }
  hash[0] = one
  hash[1] = other
}
