import { fromSi } from '../../functions/units/convert.ts'
import { formatNumber } from '../workbook/number-format.ts'
import type { Draw } from './drawing.ts'
import { labelColumn, labelsWidth, type ColumnLabel } from './label-column.ts'
import { AXIS_ABOVE_PX, AXIS_BELOW_PX, axisWidth, plotFrame } from './plot-frame.ts'
import { circle, group, path, polyline, type Look, type Point, type SceneNode } from './scene.ts'
import { linearScale, roundRange, ticks } from './scale.ts'
import { part, requiredPart, shownIn, type Quantity } from './values.ts'

const FIELD_PX = 230

interface Curve {
  readonly name: string
  readonly look: Look
  readonly points: readonly { readonly n: number; readonly pa: number; readonly shown: string }[]
}

interface Meeting {
  readonly name: string
  readonly n: number
  readonly pa: number
}

/** Driving head against losses over the circulation number. */
export const drawCirculation: Draw = (_figure, values, widthPx) => {
  const numbers = requiredPart(values, 'number', 'numbers')
  const driving = requiredPart(values, 'driving', 'quantities')
  const losses = requiredPart(values, 'losses', 'quantities')
  const unit = [...driving, ...losses].find((one) => one !== undefined)?.unit
  if (!unit) return { faults: ['Driving head: nothing to draw'] }
  const curve = (name: string, look: Look, list: readonly (Quantity | undefined)[]): Curve => ({
    name, look,
    points: numbers.flatMap((n, index) => {
      const at = list.length === 1 ? list[0] : list[index]
      return n === undefined || at === undefined ? [] : [{ n, pa: at.si, shown: at.shown }]
    }).toSorted((one, other) => one.n - other.n),
  })
  const part2 = part(values, 'partLosses', 'quantities')
  const head = curve('Driving head', 'curve-main', driving)
  const full = curve('Losses, full load', 'curve', losses)
  const partial = part2 && curve('Losses, part load', 'curve-other', part2)
  const curves = [head, full, ...(partial ? [partial] : [])]
  const short = curves.find(({ points }) => points.length < 2)
  if (short) return { faults: [`${short.name}: ${short.points.length} points; accepted: 2 or more circulation numbers with a value each`] }

  const meetings = [
    meeting('Full load', head, full, part(values, 'operating', 'number')),
    ...(partial ? [meeting('Part load', head, partial, part(values, 'partOperating', 'number'))] : []),
  ]
  const met = meetings.flatMap(({ at }) => (at ? [at] : []))
  const x = roundRange([0, ...curves.flatMap(({ points }) => points.map(({ n }) => n)), ...met.map(({ n }) => n)], 6)
  const inUnit = (pa: number): number => fromSi(pa, unit, values.sitePa)
  const y = roundRange([0, ...curves.flatMap(({ points }) => points.map(({ pa }) => inUnit(pa)))], 6)
  const yTicks = ticks(...y, 5)
  const field = { left: axisWidth(yTicks), right: widthPx - labelsWidth(widthPx) + 24, top: AXIS_ABOVE_PX, bottom: AXIS_ABOVE_PX + FIELD_PX }
  const xScale = linearScale(...x, field.left, field.right)
  const yScale = linearScale(...y, field.bottom, field.top)
  const at = (n: number, pa: number): Point => ({ x: xScale.px(n), y: yScale.px(inUnit(pa)) })

  const labels: ColumnLabel[] = [
    ...curves.flatMap(({ name, points }): ColumnLabel[] => points.slice(-1).map(({ n, pa }) => ({ ...at(n, pa), name }))),
    ...met.map(({ name, n, pa }): ColumnLabel => ({ ...at(n, pa), name, value: `N = ${formatNumber(n, { digits: 3 })}`, look: 'text-strong' })),
  ]
  const column = labelColumn(labels, field.right + 16, widthPx, field.top, field.bottom)
  const nodes: SceneNode[] = [
    plotFrame({ scale: xScale, title: 'circulation number N' }, { scale: yScale, ticks: yTicks, title: `pressure, ${unit.code}` }, field),
    ...curves.map(({ look, points }) => path(look, polyline(points.map(({ n, pa }) => at(n, pa))))),
    column.node,
    ...met.map(({ n, pa }) => path('point', circle(at(n, pa), 4.5))),
  ]
  return {
    scene: { width: widthPx, height: Math.max(field.bottom + AXIS_BELOW_PX, column.bottom + 4), nodes: [group(...nodes)] },
    description: [
      'Driving head of the liquid leg and losses of the loop over the circulation number.',
      ...met.map(({ name, n, pa }) => `${name}: they balance at N = ${formatNumber(n, { digits: 3 })}, ${shownIn(pa, unit, values.sitePa, 3)}.`),
    ].join(' '),
    table: {
      head: ['Circulation number', ...curves.map(({ name }) => name)],
      rows: head.points.map(({ n }) => [formatNumber(n), ...curves.map(({ points }) => points.find((one) => one.n === n)?.shown ?? '')]),
    },
    remarks: [...values.remarks, ...meetings.flatMap(({ remark }) => (remark === undefined ? [] : [remark]))],
  }
}

/** Where a loss curve meets the driving head: at the number given, or between the points of the curves, taken as straight from one to the next. */
function meeting(name: string, head: Curve, loss: Curve, given: number | undefined): { readonly at?: Meeting; readonly remark?: string } {
  if (given !== undefined) {
    const pa = onCurve(head, given)
    return pa === undefined ? { remark: `${name}: N = ${formatNumber(given)} lies outside the curves; not drawn.` } : { at: { name, n: given, pa } }
  }
  for (const [index, { n, pa }] of loss.points.entries()) {
    const next = loss.points[index + 1]
    const [excess, nextExcess] = [pa - (onCurve(head, n) ?? NaN), next ? next.pa - (onCurve(head, next.n) ?? NaN) : NaN]
    if (!next || !(excess <= 0 && nextExcess > 0)) continue
    const meet = n + (excess / (excess - nextExcess)) * (next.n - n)
    return { at: { name, n: meet, pa: onCurve(head, meet) ?? pa }, remark: `${name}: the balance point is read between the points of the curves.` }
  }
  return { remark: `${name}: ${apartWords(head, loss)}` }
}

/** Why two curves do not meet. */
function apartWords(head: Curve, loss: Curve): string {
  const [first, last] = [loss.points[0], loss.points.at(-1)]
  const isBelow = (point: Curve['points'][number] | undefined): boolean => point !== undefined && point.pa <= (onCurve(head, point.n) ?? NaN)
  if (last && isBelow(last)) return `the losses stay below the driving head up to N = ${formatNumber(last.n)}; it balances beyond.`
  if (first && !isBelow(first)) return `the losses exceed the driving head from N = ${formatNumber(first.n)} on; the loop does not run there.`
  return 'the curves do not meet; accepted: driving head and losses over the same circulation numbers.'
}

function onCurve({ points }: Curve, n: number): number | undefined {
  for (const [index, one] of points.entries()) {
    const next = points[index + 1]
    if (one.n === n) return one.pa
    if (next && n > one.n && n <= next.n) return one.pa + ((n - one.n) / (next.n - one.n)) * (next.pa - one.pa)
  }
  return undefined
}
