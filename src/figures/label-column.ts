import { group, label, line, type Group, type TextLook } from './scene.ts'
import { spread } from './spread.ts'
import { fitted, inLines, LINE_PX, STRONG, textWidth } from './text-width.ts'

/** What a label points at and says; a name and a value stand in one line if they fit. */
export interface ColumnLabel {
  readonly x: number
  readonly y: number
  readonly name: string
  readonly value?: string
  readonly look?: TextLook
}

export interface LabelColumn {
  readonly node: Group
  /** Where the lowest label ends. */
  readonly bottom: number
}

const GAP_PX = 4
const MOST_LINES = 3

/** Room for labels beside a plot or a drum. */
export const labelsWidth = (widthPx: number): number => Math.round(Math.min(270, Math.max(170, widthPx * 0.38)))

/** The height that labels take one under the other. */
export const labelsHeight = (labels: readonly Pick<ColumnLabel, 'name' | 'value'>[], widthPx: number): number =>
  labels.reduce((all, one) => all + linesOf(one, widthPx).length * LINE_PX + GAP_PX, 0)

/** Labels in a column from `x` to `right`, each tied to its point by a thin line, none over another. */
export function labelColumn(labels: readonly ColumnLabel[], x: number, right: number, top: number, bottom: number): LabelColumn {
  const blocks = labels.map((one) => ({ ...one, lines: linesOf(one, (right - x) / (one.look === 'text-strong' ? STRONG : 1)) }))
  const middles = spread(blocks.map(({ y, lines }) => ({ at: y, size: lines.length * LINE_PX + GAP_PX })), top, bottom)
  const nodes = blocks.flatMap((block, index) => {
    const middle = middles[index] ?? block.y
    const first = middle - ((block.lines.length - 1) * LINE_PX) / 2
    return [
      line('leader', block.x, block.y, x - 4, middle),
      ...block.lines.map((text, row) => label(block.look ?? 'text', x, first + row * LINE_PX, 'start', text)),
    ]
  })
  const ends = blocks.map(({ lines }, index) => (middles[index] ?? 0) + (lines.length * LINE_PX) / 2)
  return { node: group(...nodes), bottom: Math.max(top, ...ends) }
}

function linesOf({ name, value }: Pick<ColumnLabel, 'name' | 'value'>, widthPx: number): string[] {
  const together = value === undefined ? name : `${name}  ${value}`
  if (textWidth(together) <= widthPx) return [together]
  const all = inLines(name, widthPx)
  const shown = value === undefined ? MOST_LINES : MOST_LINES - 1
  const lines = all.length > shown ? [...all.slice(0, shown - 1), fitted(all.slice(shown - 1).join(' '), widthPx)] : all
  return value === undefined ? lines : [...lines, fitted(value, widthPx)]
}
