import { formatNumber } from '../workbook/number-format.ts'
import { axisNumbers, fittingTicks } from './axis-numbers.ts'
import { LEAST_WIDTH, type Drawing } from './drawing.ts'
import type { Faults } from './read-parts.ts'
import { group, label, line, path, rectangle, type SceneNode } from './scene.ts'
import { linearScale, roundRange, tickText } from './scale.ts'
import { fitted, LINE_PX, textWidth } from './text-width.ts'

/** How a result moves when inputs are off, each by its tolerance. */
export interface MarginBars {
  /** The result, with its unit. */
  readonly title: string
  readonly base: number
  /** Those that move it most first. */
  readonly inputs: readonly MarginBar[]
}

export interface MarginBar {
  /** The input, and how far it is off. */
  readonly name: string
  /** Changes of the result with the input at the lower and at the upper end; undefined where there the result is no number. */
  readonly less: number | undefined
  readonly more: number | undefined
}

const ROW_PX = LINE_PX + 20
const BAR_PX = 9
/** Farther down nothing is to be seen. */
const MOST_ROWS = 16

/** A row an input: from the result as it is, a bar to either side, filled for more of the input and hollow for less. */
export function drawMarginBars({ title, base, inputs }: MarginBars, widthPx: number): Drawing | Faults {
  const width = Math.max(LEAST_WIDTH, Math.floor(widthPx))
  if (inputs.length === 0) return { faults: ['Margins: no input moves the result'] }
  const drawn = inputs.slice(0, MOST_ROWS)
  const range = roundRange([base, ...drawn.flatMap(({ less, more }) => [base + (less ?? 0), base + (more ?? 0)])], 5)
  const scale = linearScale(...range, 12, width - 24)
  const bottom = LINE_PX + 4 + drawn.length * ROW_PX
  const middle = scale.px(base)
  const numbers = axisNumbers(fittingTicks(scale, 6).map((tick) => ({ x: scale.px(tick), text: tickText(tick) })), width)
  const key = 'filled: more of the input; hollow: less'
  const nodes: SceneNode[] = [
    label('text-quiet', 0, LINE_PX / 2, 'start', fitted(key, width)),
    ...numbers.flatMap(({ x, textX, text }): SceneNode[] => [line('grid', x, LINE_PX + 4, x, bottom), label('text-quiet', textX, bottom + LINE_PX / 2 + 4, 'middle', text)]),
    ...drawn.flatMap(({ less, more }, row): SceneNode[] => {
      const y = LINE_PX + 4 + row * ROW_PX + LINE_PX + 5
      const bars: readonly (readonly ['bar-total' | 'point-open', number | undefined])[] = [['point-open', less], ['bar-total', more]]
      // Both may go the same way: then the one that goes farther lies beneath.
      return bars.toSorted(([, one], [, other]) => Math.abs(other ?? 0) - Math.abs(one ?? 0)).flatMap(([look, change]) => {
        const end = scale.px(base + (change ?? 0))
        return Math.abs(end - middle) < 0.05 ? [] : [path(look, rectangle(Math.min(middle, end), y, Math.abs(end - middle), BAR_PX))]
      })
    }),
    line('axis', middle, LINE_PX + 4, middle, bottom),
    line('axis', 0, bottom, width, bottom),
    // After the bars, whose lines would run through them.
    ...drawn.flatMap(({ name, less, more }, row): SceneNode[] => {
      const y = LINE_PX + 4 + row * ROW_PX + LINE_PX / 2 + 2
      const words = `${changeText(less)} / ${changeText(more)}`
      return [label('text', 2, y, 'start', fitted(name, width - textWidth(words) - 24)), label('text', width - 2, y, 'end', words)]
    }),
    label('text-quiet', width, bottom + 1.5 * LINE_PX + 5, 'end', fitted(title, width)),
  ]
  const left = inputs.length - drawn.length
  return {
    scene: { width, height: bottom + 2 * LINE_PX + 9, nodes: [group(...nodes)] },
    description: `${title} is ${formatNumber(base)}. ${drawn.map(({ name, less, more }) => `${name}: ${changeText(less)} with less, ${changeText(more)} with more.`).join(' ')}`,
    table: { head: ['Input', 'With less', 'With more'], rows: inputs.map(({ name, less, more }) => [name, changeText(less), changeText(more)]) },
    remarks: left === 0 ? [] : [`${left} more inputs move it less and are not drawn; the table has them.`],
  }
}

/** `+1.25`, `−0.3`, `no number` */
const changeText = (change: number | undefined): string => (change === undefined ? 'no number' : `${change > 0 ? '+' : ''}${formatNumber(change, { digits: 3 })}`.replace('-', '−'))
