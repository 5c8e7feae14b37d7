import { formatNumber } from '../workbook/number-format.ts'
import { contour } from './contour.ts'
import { LEAST_WIDTH, type Drawing } from './drawing.ts'
import { labelColumn, labelsHeight, labelsWidth, type ColumnLabel } from './label-column.ts'
import { AXIS_ABOVE_PX, AXIS_BELOW_PX, axisWidth, plotFrame, type Field, type Plot } from './plot-frame.ts'
import type { Faults } from './read-parts.ts'
import { group, label, line, path, polyline, type Point, type SceneNode } from './scene.ts'
import { linearScale, ticks } from './scale.ts'
import { spread } from './spread.ts'
import { LINE_PX, STRONG, textWidth } from './text-width.ts'

export interface FieldAxis {
  /** What is varied, with its unit. */
  readonly title: string
  /** In any order, none twice. */
  readonly numbers: readonly number[]
}

/** What a sweep over two inputs shows: one result, and where checks turn. */
export interface SweepField {
  /** The result, with its unit. */
  readonly name: string
  readonly x: FieldAxis
  readonly y: FieldAxis
  /** By the numbers of `y`, then by those of `x`; undefined where the result is none. */
  readonly values: readonly (readonly (number | undefined)[])[]
  /** Levels to draw; left out, round numbers that suit the values. */
  readonly levels?: readonly number[]
  /** Of each check, where it turns: numbers of `x` at those numbers of `y` at which it does. */
  readonly limits: readonly { readonly name: string; readonly points: readonly { readonly x: number; readonly y: number }[] }[]
}

const FIELD_PX = 300
const LEVELS = 9

/** One result over two varied inputs, `widthPx` wide: each level a line with its number, darker where the result is larger, and a line where a check turns. */
export function drawSweepField({ name, x, y, values, levels: wanted, limits }: SweepField, widthPx: number): (Drawing & { readonly plot: Plot }) | Faults {
  const width = Math.max(LEAST_WIDTH, Math.floor(widthPx))
  const known = values.flatMap((row) => row.flatMap((value) => value ?? []))
  const [low, high] = [known.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY), known.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY)]
  if (x.numbers.length < 2 || y.numbers.length < 2) return { faults: ['Field: one number along an input; accepted: two or more along each'] }
  if (known.length === 0) return { faults: [`Field: ${name} has no number at any point`] }
  const levels = (wanted ?? (high > low ? ticks(low, high, LEVELS) : [])).filter((level) => level > low && level <= high)
  const yTicks = ticks(Math.min(...y.numbers), Math.max(...y.numbers), 6)
  const right = width - labelsWidth(width) + 24
  const key = [...levels.map((level) => ({ name: formatNumber(level) })), ...limits.map((limit) => ({ name: limit.name }))]
  const height = Math.max(FIELD_PX, labelsHeight(key, (width - right - 16) / STRONG))
  const top = AXIS_ABOVE_PX + LINE_PX
  const field = { left: axisWidth(yTicks), right, top, bottom: top + height }
  const xScale = linearScale(Math.min(...x.numbers), Math.max(...x.numbers), field.left, field.right)
  const yScale = linearScale(Math.min(...y.numbers), Math.max(...y.numbers), field.bottom, field.top)
  const [columns, rows] = [spreadOut(inOrder(x.numbers)), spreadOut(inOrder(y.numbers))]
  const grid = {
    xs: columns.map((at) => xScale.px(x.numbers[at] ?? 0)), ys: rows.map((at) => yScale.px(y.numbers[at] ?? 0)),
    values: rows.map((row) => columns.map((column) => values[row]?.[column])),
  }
  const drawn = levels.map((level) => ({ level, ...contour(grid, level) }))
  const turns = limits.map((limit) => ({
    name: limit.name,
    runs: chained(rows.map((row) => limit.points.filter((point) => point.y === y.numbers[row]).toSorted((one, other) => one.x - other.x).map((point) => ({ x: xScale.px(point.x), y: yScale.px(point.y) })))),
  }))

  const ends = drawn.flatMap(({ level, rightmost }) => (rightmost === undefined ? [] : [{ ...rightmost, name: formatNumber(level) }]))
  const above = topLabels(ends.filter((end) => leavesAbove(end, field)), field)
  const labels: ColumnLabel[] = [
    // Of ends at one height the right one comes first, so that their leaders do not cross.
    ...ends.filter((end) => above === undefined || !leavesAbove(end, field)).toSorted((one, other) => other.x - one.x),
    ...turns.flatMap(({ name: check, runs }): ColumnLabel[] => (runs.at(-1) ?? []).slice(-1).map((point) => ({ ...point, name: check, look: 'text-strong' }))),
  ]
  const column = labelColumn(labels, field.right + 16, width, field.top, field.bottom)
  const nodes: SceneNode[] = [
    ...drawn.map(({ above: larger }) => path('band', larger)),
    plotFrame({ scale: xScale, title: x.title }, { scale: yScale, ticks: yTicks, title: y.title, titleRoomPx: LINE_PX }, field),
    ...drawn.map(({ along }) => path('contour', along)),
    ...turns.flatMap(({ runs }) => runs.map((run) => path('limit', polyline(run)))),
    ...(above ?? []),
    column.node,
  ]
  const none = x.numbers.length * y.numbers.length - known.length
  return {
    plot: { field, x: { from: xScale.from, to: xScale.to }, y: { from: yScale.from, to: yScale.to } },
    scene: { width, height: Math.max(field.bottom + AXIS_BELOW_PX, column.bottom + 4), nodes: [group(...nodes)] },
    description: [
      `${name} over ${x.title} and ${y.title}: from ${shown(low)} to ${shown(high)}.`,
      levels.length === 0 ? 'It is the same everywhere.' : `Lines at ${levels.map((level) => formatNumber(level)).join(', ')}; darker is more.`,
      ...turns.flatMap(({ name: check, runs }) => (runs.length === 0 ? [] : [`The line of ${check} is where it turns.`])),
    ].join(' '),
    table: {
      head: [`${y.title} ↓ ${x.title} →`, ...columns.map((at) => formatNumber(x.numbers[at] ?? 0))],
      rows: rows.map((row) => [formatNumber(y.numbers[row] ?? 0), ...columns.map((at) => (values[row]?.[at] === undefined ? '' : formatNumber(values[row][at])))]),
    },
    remarks: none === 0 ? [] : [`${name}: no number at ${none} of ${x.numbers.length * y.numbers.length} points; nothing is drawn round them.`],
  }
}

/** A line that ends at the upper edge, its label at the right would have a leader across the field. */
const leavesAbove = ({ x, y }: Point, { top, right }: Field): boolean => y < top + 1 && x < right - 1

/** Labels over the upper edge, as near to the ends of their lines as they can stand beside each other; undefined where they have no room. */
function topLabels(ends: readonly (Point & { readonly name: string })[], { left, right, top }: Field): SceneNode[] | undefined {
  const wishes = ends.map(({ x, name }) => ({ at: x, size: textWidth(name) + LABEL_GAP_PX }))
  if (wishes.reduce((sum, { size }) => sum + size, 0) > right - left) return undefined
  const middles = spread(wishes, left, right)
  return ends.flatMap(({ x, y, name }, at) => {
    const middle = middles[at] ?? x
    return [line('leader', x, y, middle, top - 5), label('text', middle, top - LINE_PX / 2 - 5, 'middle', name)]
  })
}

const LABEL_GAP_PX = 8

/** The first turns of neighbouring rows are one line, the second ones another; a row without ends them. */
function chained(rows: readonly (readonly Point[])[]): Point[][] {
  const runs: Point[][] = []
  let open: Point[][] = []
  for (const points of rows) {
    open = points.map((point, at) => {
      const run = open[at]
      if (run !== undefined) {
        run.push(point)
        return run
      }
      const begun = [point]
      runs.push(begun)
      return begun
    })
  }
  return runs
}

const inOrder = (numbers: readonly number[]): number[] => numbers.map((_, at) => at).toSorted((one, other) => (numbers[one] ?? 0) - (numbers[other] ?? 0))

/** A finer field than this cannot be seen. */
const MOST_ALONG = 80

/** At most so many of them, evenly, both ends among them. */
const spreadOut = (all: readonly number[]): number[] =>
  all.length <= MOST_ALONG ? [...all] : Array.from({ length: MOST_ALONG }, (_, at) => all[Math.round((at * (all.length - 1)) / (MOST_ALONG - 1))] ?? 0)

const shown = (value: number): string => formatNumber(value, { digits: 5 })
