import type { RowRun } from '../../workbook/row-alignment.ts'
import type { Layout } from './layout.ts'
import { lineRuns, type LineRuns } from './line-map.ts'

/** Each sheet that is tried out costs a comparison of its own. */
const MOST_TRIED = 6

/** Further apart, what is gone and what came have nothing to do with each other. */
const MOST_LINES_BETWEEN = 50

/**
 * Where rows are gone at one place and as many came at another near by, the cells between may instead have got other contents: two rows may have been exchanged. That is
 * taken for true which leaves fewer differences in the whole workbook; as it was, where both leave as many.
 * @param count how many differences there are by a layout
 */
export function fewestDifferences(layout: Layout, count: (layout: Layout) => number): Layout {
  const tried = layout.pairs.flatMap((pair, index) => {
    const rows = inPlace(pair.rows)
    return rows === undefined ? [] : [{ index, rows }]
  }).slice(0, MOST_TRIED)
  if (tried.length === 0) return layout
  let best = { layout, differences: count(layout) }
  for (const { index, rows } of tried) {
    const other = { pairs: best.layout.pairs.map((pair, at) => (at === index ? { ...pair, rows } : pair)) }
    const differences = count(other)
    if (differences < best.differences) best = { layout: other, differences }
  }
  return best.layout
}

/** The same with rows between a place where some are gone and one where as many came left where they are; undefined where there are no such places. */
function inPlace({ runs, before, now }: LineRuns): LineRuns | undefined {
  const joined: RowRun[] = []
  for (const run of runs) {
    // The nearest one before that is as far from its other side: what is between them is left where it is.
    const like = joined.findLastIndex((one) => one.now - one.old === run.now - run.old)
    const one = joined[like]
    if (one === undefined || run.old - one.old - one.count > MOST_LINES_BETWEEN) joined.push(run)
    else joined.splice(like, joined.length - like, { ...one, count: run.old + run.count - one.old })
  }
  return joined.length === runs.length ? undefined : lineRuns(joined, before, now)
}
