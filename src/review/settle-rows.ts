import type { CellAddress } from '../workbook/address.ts'
import type { RowRun } from '../workbook/row-alignment.ts'
import { slid } from './row-slides.ts'
import type { SheetLayer } from './sheet-layer.ts'

/** Beyond so many rows alike, trying out where the inserted ones are takes longer than it is worth. */
const MOST_TRIED = 60
const MOST_ROWS = 300

/**
 * Puts rows that were inserted among rows that are alike where the fewest formulas are others than the template’s. Where it makes no difference
 * they are below the others, as rows are filled down: in all lists of the same things the same.
 */
export function settleRows(layers: readonly SheetLayer[]): void {
  for (const layer of layers) {
    for (let index = 0; index < layer.slides().length; index++) {
      const slide = layer.slides()[index]
      if (slide) layer.setRuns(slid(layer.runs, slide, slide.down))
    }
  }
  const isMoved = layers.some((layer) => layer.slides().length > 0)
  if (!isMoved) return
  for (const one of layers) one.forget()
  let others = otherCells(layers)
  for (const layer of layers) {
    for (let index = 0; index < layer.slides().length && others.length > 0; index++) others = settle(layer, index, layers, others)
  }
}

interface OtherCell extends CellAddress {
  readonly layer: SheetLayer
}

const otherCells = (layers: readonly SheetLayer[]): OtherCell[] => layers.flatMap((layer) => layer.otherFormulas().map((at) => ({ layer, ...at })))

/** Tries one place further up, row by row; the formulas that are others then. */
function settle(layer: SheetLayer, index: number, layers: readonly SheetLayer[], others: readonly OtherCell[]): OtherCell[] {
  const slide = layer.slides()[index]
  const start = layer.runs
  const before = slide && start[slide.run]
  if (slide === undefined || before === undefined || slide.up > MOST_TRIED) return [...others]
  const end = before.now + before.count
  const [first, last] = [end - slide.up, start[slide.run + 1]?.now ?? end]
  if (last - first > MOST_ROWS) return [...others]
  const take = (runs: readonly RowRun[]): void => {
    layer.setRuns(runs)
    for (const one of layers) one.forget()
  }
  const isInStretch = ({ layer: on, row }: OtherCell): boolean => on === layer && row >= first && row <= last
  const outside = others.filter((one) => !isInStretch(one))
  let best: { readonly runs: readonly RowRun[]; readonly others: readonly OtherCell[] } = { runs: start, others }
  for (let by = -1; by >= -slide.up; by--) {
    take(slid(start, slide, by))
    const likely = layer.otherFormulas(first, last).length + outside.filter((one) => one.layer.isOther(one)).length
    if (likely >= best.others.length) continue
    // What was as the template has it before may not be so any more.
    const now = otherCells(layers)
    if (now.length < best.others.length) best = { runs: layer.runs, others: now }
  }
  take(best.runs)
  return [...best.others]
}
