import { ticks, tickText, type Scale } from './scale.ts'
import { textWidth } from './text-width.ts'

/** A number along a lying axis: where its tick stands, and where the middle of its text. */
export interface AxisNumber {
  readonly x: number
  readonly text: string
  readonly textX: number
}

const GAP_PX = 8

/** Texts under their ticks, moved in from the edges of the drawing where they must be; what would touch the one before is left out. */
export function axisNumbers(numbers: readonly { readonly x: number; readonly text: string }[], widthPx: number): AxisNumber[] {
  let free = 0
  return numbers.toSorted((one, other) => one.x - other.x).flatMap(({ x, text }) => {
    const half = textWidth(text) / 2
    const textX = Math.max(half, Math.min(widthPx - half, x))
    if (textX - half < free) return []
    free = textX + half + GAP_PX
    return [{ x, text, textX }]
  })
}

/** As many round numbers as find room under a lying axis. */
export function fittingTicks({ from, to, px }: Scale, most = 12): number[] {
  for (let count = most; count > 1; count--) {
    const found = ticks(from, to, count)
    const step = Math.abs(px(found[1] ?? to) - px(found[0] ?? from))
    if (Math.max(...found.map((tick) => textWidth(tickText(tick)))) + GAP_PX <= step) return found
  }
  return [from, to]
}
