/** A rectangle on the sheet, in px. */
export interface Box {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

export interface TracePath {
  /** SVG path data. */
  readonly line: string
  /** Where the line leaves the feeding cells. */
  readonly from: { readonly x: number; readonly y: number }
}

const BOW = 12
const BOW_STEP = 5
const BOWS = 5

/**
 * A curve from cells that feed to the cell that is fed: across where they stand on its left or right,
 * else bowed out at the left, each further out than the one before.
 */
export function tracePath(feed: Box, target: Box, index: number): TracePath {
  const fromY = (feed.top + feed.bottom) / 2
  const toY = (target.top + target.bottom) / 2
  if (feed.right <= target.left) return curve(feed.right, fromY, target.left, toY, (target.left - feed.right) / 2 + BOW)
  if (feed.left >= target.right) return curve(feed.left, fromY, target.right, toY, (target.right - feed.left) / 2 - BOW)
  const bow = Math.min(BOW + BOW_STEP * (index % BOWS), Math.abs(toY - fromY) / 3 + 4)
  const outside = Math.min(feed.left, target.left) - bow
  return {
    line: `M${feed.left} ${fromY}C${outside} ${fromY} ${outside} ${toY} ${target.left} ${toY}`,
    from: { x: feed.left, y: fromY },
  }
}

const curve = (fromX: number, fromY: number, toX: number, toY: number, reach: number): TracePath => ({
  line: `M${fromX} ${fromY}C${fromX + reach} ${fromY} ${toX - reach} ${toY} ${toX} ${toY}`,
  from: { x: fromX, y: fromY },
})
