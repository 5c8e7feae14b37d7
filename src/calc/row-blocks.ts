/** Rows that are read or written at once, from `top` to before `end`, none of them longer than `width`. */
export interface RowBlock {
  readonly top: number
  readonly end: number
  readonly width: number
}

/**
 * The rows in blocks for the engine, which takes a block as a whole rectangle: one cell far out must not make a thousand rows as long as
 * its own. Blocks without any cell are left out.
 * @param most rows of a block
 */
export function* rowBlocks(rows: readonly (readonly unknown[] | undefined)[], most: number): Generator<RowBlock> {
  let [top, width, cells] = [0, 0, 0]
  for (let row = 0; row < rows.length; row++) {
    const length = rows[row]?.length ?? 0
    const wider = Math.max(width, length)
    const isLoose = wider * (row + 1 - top) > LOOSE_CELLS + LOOSE_TIMES * (cells + length)
    if (row > top && (isLoose || row - top >= most)) {
      if (width > 0) yield { top, end: row, width };
      [top, width, cells] = [row, length, length]
    } else [width, cells] = [wider, cells + length]
  }
  if (width > 0) yield { top, end: rows.length, width }
}

/** A rectangle may have this many cells beyond so many times those in use. */
const LOOSE_CELLS = 50_000
const LOOSE_TIMES = 3
