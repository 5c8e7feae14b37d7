import { axisNumbers, fittingTicks } from './axis-numbers.ts'
import { group, label, line, type Group, type SceneNode } from './scene.ts'
import { tickText, type Scale } from './scale.ts'
import { LINE_PX, textWidth } from './text-width.ts'

/** One axis of a plot: where numbers lie, and what they are. */
export interface Axis {
  readonly scale: Scale
  /** What the numbers are, with their unit. */
  readonly title: string
}

/** The field of a plot, px. */
export interface Field {
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

/** Where the numbers of a drawing's axes lie in it, for whoever points at them. */
export interface Plot {
  readonly field: Field
  readonly x: { readonly from: number; readonly to: number }
  readonly y: { readonly from: number; readonly to: number }
}

/** What the field leaves free around it. */
export const AXIS_BELOW_PX = 2 * LINE_PX + 12
export const AXIS_ABOVE_PX = LINE_PX + 10

/** Room for the numbers of an upright axis. */
export const axisWidth = (numbers: readonly number[]): number => Math.max(...numbers.map((tick) => textWidth(tickText(tick))), 0) + 10

/**
 * Axes with hairlines through the field, numbers outside, and titles that stand upright: above the upright axis, below the other.
 * @param y with the room that is left free between the field and the title, px
 */
export function plotFrame(x: Axis, y: Axis & { readonly ticks: readonly number[]; readonly titleRoomPx?: number }, { left, right, top, bottom }: Field): Group {
  const nodes: SceneNode[] = [
    ...y.ticks.flatMap((tick): SceneNode[] => [
      line('grid', left, y.scale.px(tick), right, y.scale.px(tick)),
      label('text-quiet', left - 6, y.scale.px(tick), 'end', tickText(tick)),
    ]),
    ...axisNumbers(fittingTicks(x.scale).map((tick) => ({ x: x.scale.px(tick), text: tickText(tick) })), Number.POSITIVE_INFINITY).flatMap((one): SceneNode[] => [
      line('grid', one.x, top, one.x, bottom),
      label('text-quiet', one.textX, bottom + LINE_PX / 2 + 8, 'middle', one.text),
    ]),
    line('axis', left, top, left, bottom),
    line('axis', left, bottom, right, bottom),
    label('text-quiet', 0, top - LINE_PX - (y.titleRoomPx ?? 0), 'start', y.title),
    label('text-quiet', Math.max(right, textWidth(x.title)), bottom + 1.5 * LINE_PX + 9, 'end', x.title),
  ]
  return group(...nodes)
}
