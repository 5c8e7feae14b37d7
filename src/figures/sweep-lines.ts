import { formatNumber } from '../workbook/number-format.ts'
import { LEAST_WIDTH, type Drawing } from './drawing.ts'
import { labelColumn, labelsHeight, labelsWidth, type ColumnLabel } from './label-column.ts'
import { AXIS_ABOVE_PX, AXIS_BELOW_PX, axisWidth, plotFrame, type Plot } from './plot-frame.ts'
import type { Faults } from './read-parts.ts'
import { circle, group, line, path, polyline, type Look, type Point, type SceneNode } from './scene.ts'
import { linearScale, roundRange, ticks } from './scale.ts'
import { STRONG } from './text-width.ts'

/** What a sweep over one input shows: results of one unit, and where checks turn. */
export interface SweepLines {
  /** What is varied, with its unit, and its numbers in any order. */
  readonly x: { readonly title: string; readonly numbers: readonly number[] }
  /** What all lines measure, with its unit. */
  readonly yTitle: string
  /** A value for each number of `x`; undefined where the result is none. */
  readonly lines: readonly { readonly name: string; readonly values: readonly (number | undefined)[] }[]
  /** Where checks turn, by the numbers of `x`. */
  readonly limits: readonly { readonly name: string; readonly at: number }[]
}

/** More lines in one field cannot be told apart. */
export const MOST_LINES = 4

const FIELD_PX = 240
const LOOKS: readonly Look[] = ['curve-main', 'curve', 'curve-other', 'leader']

/** Results over one varied input, `widthPx` wide: a line each, and an upright line where a check turns. */
export function drawSweepLines({ x, yTitle, lines, limits }: SweepLines, widthPx: number): (Drawing & { readonly plot: Plot }) | Faults {
  const width = Math.max(LEAST_WIDTH, Math.floor(widthPx))
  const known = lines.flatMap(({ values }) => values.flatMap((value) => value ?? []))
  if (lines.length > MOST_LINES) return { faults: [`Lines: ${lines.length} results; accepted: up to ${MOST_LINES} in one figure`] }
  if (known.length === 0 || x.numbers.length < 2) return { faults: ['Lines: there is no number to draw; accepted: two or more points, with a value at one of them at least'] }
  const order = x.numbers.map((_, at) => at).toSorted((one, other) => (x.numbers[one] ?? 0) - (x.numbers[other] ?? 0))
  const [from, to] = [Math.min(...x.numbers), Math.max(...x.numbers)]
  const range = roundRange(known, 5)
  const yTicks = ticks(...range, 5)
  const rightOfField = width - labelsWidth(width) + 24
  const names = [...lines.map(({ name }) => ({ name })), ...limits.map(({ name, at }) => ({ name, value: shown(at) }))]
  const height = Math.max(FIELD_PX, labelsHeight(names, (width - rightOfField - 16) / STRONG))
  const field = { left: axisWidth(yTicks), right: rightOfField, top: AXIS_ABOVE_PX, bottom: AXIS_ABOVE_PX + height }
  const xScale = linearScale(from, to, field.left, field.right)
  const yScale = linearScale(...range, field.bottom, field.top)
  const runs = lines.map(({ values }) => runsOf(order.map((at) => pointOf(x.numbers[at], values[at]))))
  const drawn = limits.filter(({ at }) => at >= from && at <= to).toSorted((one, other) => other.at - one.at)

  const labels: ColumnLabel[] = [
    ...lines.flatMap(({ name }, at): ColumnLabel[] => (runs[at]?.at(-1) ?? []).slice(-1).map((point) => ({ ...point, name }))),
    ...drawn.map(({ name, at }, place): ColumnLabel => ({ x: xScale.px(at), y: field.top + 10 + ((place + 0.5) / drawn.length) * (height - 20), name, value: shown(at), look: 'text-strong' })),
  ]
  const column = labelColumn(labels, field.right + 16, width, field.top, field.bottom)
  const nodes: SceneNode[] = [
    plotFrame({ scale: xScale, title: x.title }, { scale: yScale, ticks: yTicks, title: yTitle }, field),
    ...drawn.map(({ at }) => line('limit', xScale.px(at), field.top, xScale.px(at), field.bottom)),
    ...runs.flatMap((ofLine, at) => ofLine.map((run) => (run.length === 1 && run[0] ? path('point', circle(run[0], 2.5)) : path(LOOKS[at] ?? 'curve', polyline(thinned(run)))))),
    column.node,
  ]
  const missing = lines.flatMap(({ name, values }) => {
    const none = values.filter((value) => value === undefined).length
    return none === 0 ? [] : [`${name}: no number at ${none} of ${x.numbers.length} points.`]
  })
  return {
    plot: { field, x: { from, to }, y: { from: range[0], to: range[1] } },
    scene: { width, height: Math.max(field.bottom + AXIS_BELOW_PX, column.bottom + 4), nodes: [group(...nodes)] },
    description: [
      `${lines.map(({ name }) => name).join(', ')} over ${x.title}, from ${shown(from)} to ${shown(to)}.`,
      ...drawn.toReversed().map(({ name, at }) => `${name}: turns at ${shown(at)}.`),
    ].join(' '),
    table: {
      head: [x.title, ...lines.map(({ name }) => name)],
      rows: order.map((at) => [formatNumber(x.numbers[at] ?? 0), ...lines.map(({ values }) => (values[at] === undefined ? '' : formatNumber(values[at])))]),
    },
    remarks: missing,
  }

  function pointOf(number: number | undefined, value: number | undefined): Point | undefined {
    return number === undefined || value === undefined ? undefined : { x: xScale.px(number), y: yScale.px(value) }
  }
}

/** Stretches without a gap. */
function runsOf(points: readonly (Point | undefined)[]): Point[][] {
  const runs: Point[][] = []
  let isOpen = false
  for (const point of points) {
    if (point === undefined) isOpen = false
    else if (isOpen) runs.at(-1)?.push(point)
    else {
      runs.push([point])
      isOpen = true
    }
  }
  return runs
}

/** Of the points in one px across, the first, the highest, the lowest and the last: more cannot be seen. */
function thinned(points: readonly Point[]): Point[] {
  const columns = new Map<number, Point[]>()
  for (const point of points) {
    const column = columns.get(Math.round(point.x))
    if (column === undefined) columns.set(Math.round(point.x), [point])
    else column.push(point)
  }
  return [...columns.values()].flatMap((column) => {
    const [first, last] = [column[0], column.at(-1)]
    if (column.length <= 4 || first === undefined || last === undefined) return column
    const high = column.reduce((best, one) => (one.y < best.y ? one : best))
    const low = column.reduce((best, one) => (one.y > best.y ? one : best))
    return column.filter((one) => one === first || one === high || one === low || one === last)
  })
}

const shown = (value: number): string => formatNumber(value, { digits: 5 })
