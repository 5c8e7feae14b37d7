import { formatNumber } from '../workbook/number-format.ts'
import { axisNumbers, fittingTicks } from './axis-numbers.ts'
import { LEAST_WIDTH, type Drawing } from './drawing.ts'
import type { Plot } from './plot-frame.ts'
import type { Faults } from './read-parts.ts'
import { group, label, line, path, rectangle, type SceneNode } from './scene.ts'
import { linearScale, tickText } from './scale.ts'
import { fitted, LINE_PX, textWidth } from './text-width.ts'

/** What checks say over one varied input. */
export interface SweepChecks {
  /** What is varied, with its unit. */
  readonly title: string
  readonly from: number
  readonly to: number
  /** Stretches in rising order, each up to where the next begins. */
  readonly checks: readonly { readonly name: string; readonly stretches: readonly Stretch[] }[]
}

export interface Stretch {
  readonly from: number
  readonly to: number
  readonly says: 'met' | 'not met' | 'none'
}

const ROW_PX = LINE_PX + 20
const BAR_PX = 8
/** More rows are no picture. */
const MOST_ROWS = 24

/** A row a check: a bar where it is met, a broken line where it is not, nothing where it has no verdict; beside its name, where it is met. */
export function drawSweepChecks({ title, from, to, checks }: SweepChecks, widthPx: number): (Drawing & { readonly plot: Plot }) | Faults {
  const width = Math.max(LEAST_WIDTH, Math.floor(widthPx))
  if (checks.length === 0) return { faults: ['Checks: there is none to draw'] }
  if (!(to > from)) return { faults: ['Checks: one point; accepted: two or more different numbers of the input'] }
  const drawn = checks.slice(0, MOST_ROWS)
  const scale = linearScale(from, to, 1, width - 24)
  const bottom = drawn.length * ROW_PX + 4
  const numbers = axisNumbers(fittingTicks(scale, 6).map((tick) => ({ x: scale.px(tick), text: tickText(tick) })), width)
  const nodes: SceneNode[] = [
    ...numbers.flatMap(({ x, textX, text }): SceneNode[] => [line('grid', x, 0, x, bottom), label('text-quiet', textX, bottom + LINE_PX / 2 + 2, 'middle', text)]),
    ...drawn.flatMap(({ stretches }, row) => stretches.flatMap((one): SceneNode[] => {
      const [left, right, y] = [scale.px(one.from), scale.px(one.to), row * ROW_PX + LINE_PX + 6]
      if (one.says === 'none') return []
      return one.says === 'met' ? [path('bar', rectangle(left, y, Math.max(1, right - left), BAR_PX))] : [line('limit', left, y + BAR_PX / 2, right, y + BAR_PX / 2)]
    })),
    ...drawn.flatMap(({ name, stretches }, row): SceneNode[] => {
      const y = row * ROW_PX + LINE_PX / 2 + 3
      const words = fitted(metWords(stretches), width * 0.5)
      return [label('text', 2, y, 'start', fitted(name, width - textWidth(words) - 24)), label('text', width - 2, y, 'end', words)]
    }),
    line('axis', scale.px(from), 0, scale.px(from), bottom),
    line('axis', scale.px(from), bottom, width, bottom),
    label('text-quiet', width, bottom + 1.5 * LINE_PX + 4, 'end', fitted(title, width)),
  ]
  const left = checks.length - drawn.length
  return {
    plot: { field: { left: scale.px(from), right: scale.px(to), top: 0, bottom }, x: { from, to }, y: { from: 0, to: 1 } },
    scene: { width, height: bottom + 2 * LINE_PX + 8, nodes: [group(...nodes)] },
    description: `Checks over ${title}, from ${formatNumber(from)} to ${formatNumber(to)}. ${checks.map(({ name, stretches }) => `${name}: ${metWords(stretches)}.`).join(' ')}`,
    table: { head: ['Check', 'Met'], rows: checks.map(({ name, stretches }) => [name, metWords(stretches)]) },
    remarks: left === 0 ? [] : [`${left} more checks are not drawn; the table has them.`],
  }
}

/** `met up to 23.1`, `met 5 to 23.1`, `not met`. */
function metWords(stretches: readonly Stretch[]): string {
  const met = stretches.filter(({ says }) => says === 'met')
  const [first] = met
  if (first === undefined) return stretches.every(({ says }) => says === 'none') ? 'no verdict' : 'not met'
  if (met.length === 1 && stretches.length === 1) return 'met'
  return `met ${met.map((one) => {
    if (one === stretches[0]) return `up to ${shown(one.to)}`
    return one === stretches.at(-1) ? `from ${shown(one.from)}` : `${shown(one.from)} to ${shown(one.to)}`
  }).join(', ')}`
}

const shown = (value: number): string => formatNumber(value, { digits: 4 })
