import { fromSi } from '../../functions/units/convert.ts'
import type { Unit } from '../../functions/units/units.ts'
import { formatNumber } from '../workbook/number-format.ts'
import { axisNumbers, fittingTicks } from './axis-numbers.ts'
import type { Draw } from './drawing.ts'
import { group, label, line, path, rectangle, type SceneNode } from './scene.ts'
import { linearScale, roundRange, tickText, type Scale } from './scale.ts'
import { fitted, LINE_PX, textWidth } from './text-width.ts'
import { part, requiredPart, withUnit, type FigureValues } from './values.ts'

const ROW_PX = LINE_PX + 18
const BAR_PX = 11
const THIN_BAR_PX = 4
/** More bars than this are added up in the last one. */
const MOST_BARS = 24
/** A threshold farther off than this times the total is named, not drawn to scale. */
const FARTHEST = 2.5

interface Bar {
  readonly name: string
  readonly kg: number
  readonly mostKg: number | undefined
}

interface Threshold {
  readonly name: string
  readonly words: string | undefined
  readonly kg: number
  readonly shown: string
}

/** Charge as bars, the total last; thresholds as lines across, each with its own words and unit. */
export const drawCharge: Draw = (_figure, values, widthPx) => {
  const amounts = requiredPart(values, 'amounts', 'quantities')
  const unit = amounts.find((one) => one !== undefined)?.unit
  const { bars, total } = barsOf(values)
  if (!unit || !total) return { faults: ['Charge: no row has an amount'] }
  const thresholds = thresholdsOf(values)
  const shown = (kg: number): string => withUnit(tickText(Number(formatNumber(fromSi(kg, unit), { digits: 5 }))), unit)
  const inUnit = (kg: number): number => fromSi(kg, unit)

  const highest = Math.max(total.kg, total.mostKg ?? 0)
  const near = thresholds.filter(({ kg }) => kg <= highest * FARTHEST)
  const [, to] = roundRange([0, inUnit(highest), ...near.map(({ kg }) => inUnit(kg))], 5, 1)
  const scale = linearScale(0, to, 1, widthPx - 24)
  const thresholdTop = LINE_PX / 2
  const top = thresholds.length * (LINE_PX + 3) + 8
  const all = bars.length > 1 ? [...bars, total] : [total]
  const bottom = top + all.length * ROW_PX + 4
  const numbers = axisNumbers(fittingTicks(scale, 6).map((tick) => ({ x: scale.px(tick), text: tickText(tick) })), widthPx)

  const nodes: SceneNode[] = [
    ...numbers.flatMap(({ x, textX, text }): SceneNode[] => [
      line('grid', x, top, x, bottom),
      label('text-quiet', textX, bottom + LINE_PX / 2 + 2, 'middle', text),
    ]),
    ...all.flatMap((bar, index) => barShapes(bar, top + index * ROW_PX, scale, inUnit, bar === total)),
    ...thresholds.flatMap((one, index) => thresholdLine(one, thresholdTop + index * (LINE_PX + 3), bottom, near.includes(one) ? scale.px(inUnit(one.kg)) : undefined, widthPx)),
    // After the thresholds, whose lines would run through them.
    ...all.flatMap((bar, index) => barLabels(bar, top + index * ROW_PX, shown, widthPx, bar === total)),
    line('axis', scale.px(0), top, scale.px(0), bottom),
    line('axis', scale.px(0), bottom, widthPx, bottom),
    label('text-quiet', widthPx, bottom + 1.5 * LINE_PX + 3, 'end', `charge, ${unit.code}`),
  ]
  const hasMost = total.mostKg !== undefined
  if (hasMost) nodes.push(label('text-quiet', 0, bottom + 1.5 * LINE_PX + 3, 'start', 'thin bar: maximum intended'))
  return {
    scene: { width: widthPx, height: bottom + 2 * LINE_PX + 8, nodes: [group(...nodes)] },
    description: [
      `Charge in ${bars.length} ${bars.length === 1 ? 'bar' : 'bars'}; total ${shown(total.kg)}${total.mostKg === undefined ? '' : `, maximum intended ${shown(total.mostKg)}`}.`,
      `${bars.map(({ name, kg }) => `${name} ${shown(kg)}`).join('; ')}.`,
      ...thresholds.map(({ name, words, shown: at }) => `Threshold ${name}: ${[words, at].filter(Boolean).join(' ')}.`),
      ...(thresholds.length > 0 ? ['Whether a threshold applies is for a person to judge.'] : []),
    ].join(' '),
    table: {
      head: ['Name', 'Charge', ...(hasMost ? ['Maximum intended'] : [])],
      rows: [
        ...[...bars, total].map(({ name, kg, mostKg }) => [name, shown(kg), ...(hasMost ? [mostKg === undefined ? '' : shown(mostKg)] : [])]),
        ...thresholds.map(({ name, words, shown: at }) => [`Threshold ${name}`, [words, at].filter(Boolean).join(' '), ...(hasMost ? [''] : [])]),
      ],
    },
    remarks: values.remarks,
  }
}

/** Rows of one name are one bar, in the order in which the names first come. */
function barsOf(values: FigureValues): { readonly bars: readonly Bar[]; readonly total: Bar | undefined } {
  const names = requiredPart(values, 'names', 'texts')
  const most = part(values, 'maximums', 'quantities')
  const byName = new Map<string, Bar>()
  for (const [index, amount] of requiredPart(values, 'amounts', 'quantities').entries()) {
    if (!amount) continue
    const name = names[index] ?? 'Without a name'
    byName.set(name, sum(name, [byName.get(name), { name, kg: amount.si, mostKg: most && (most[index]?.si ?? amount.si) }]))
  }
  const bars = [...byName.values()]
  const shownBars = bars.length <= MOST_BARS ? bars : [...bars.slice(0, MOST_BARS - 1), sum(`${bars.length - MOST_BARS + 1} others together`, bars.slice(MOST_BARS - 1))]
  return { bars: shownBars, total: bars.length === 0 ? undefined : sum('Total', bars) }
}

function sum(name: string, bars: readonly (Bar | undefined)[]): Bar {
  const there = bars.filter((bar) => bar !== undefined)
  const hasMost = there.some(({ mostKg }) => mostKg !== undefined)
  return { name, kg: there.reduce((all, { kg }) => all + kg, 0), mostKg: hasMost ? there.reduce((all, { kg, mostKg }) => all + (mostKg ?? kg), 0) : undefined }
}

function thresholdsOf(values: FigureValues): Threshold[] {
  const names = part(values, 'thresholdNames', 'texts') ?? []
  const words = part(values, 'thresholdWords', 'texts') ?? []
  return (part(values, 'thresholds', 'quantities') ?? []).flatMap((one, index): Threshold[] =>
    one ? [{ name: names[index] ?? `${index + 1}`, words: words[index], kg: one.si, shown: grouped(one.shown, one.unit) }] : [],
  ).toSorted((one, other) => other.kg - one.kg)
}

/** A number as its cell shows it, with commas between thousands. */
function grouped(shown: string, unit: Unit): string {
  const number = Number(shown.slice(0, shown.length - unit.code.length))
  return Number.isFinite(number) ? withUnit(tickText(number), unit) : shown
}

function barShapes({ kg, mostKg }: Bar, top: number, scale: Scale, inUnit: (kg: number) => number, isTotal: boolean): SceneNode[] {
  const barY = top + LINE_PX + 4
  const length = (of: number): number => Math.max(0, scale.px(inUnit(of)) - scale.px(0))
  return [
    path(isTotal ? 'bar-total' : 'bar', rectangle(scale.px(0), barY, length(kg), mostKg === undefined ? BAR_PX : BAR_PX - THIN_BAR_PX)),
    ...(mostKg === undefined ? [] : [path('bar-most', rectangle(scale.px(0), barY + BAR_PX - THIN_BAR_PX, length(mostKg), THIN_BAR_PX))]),
  ]
}

function barLabels({ name, kg, mostKg }: Bar, top: number, shown: (kg: number) => string, widthPx: number, isTotal: boolean): SceneNode[] {
  const value = mostKg === undefined ? shown(kg) : `${shown(kg)} / ${shown(mostKg)}`
  const y = top + LINE_PX / 2 + 3
  const look = isTotal ? 'text-strong' : 'text'
  return [label(look, 6, y, 'start', fitted(name, widthPx - textWidth(value) - 24)), label(look, widthPx, y, 'end', value)]
}

/** The words stand in a row of their own, on the side of the line where they fit. One that lies far off is named at the edge. */
function thresholdLine({ name, words, shown }: Threshold, y: number, bottom: number, x: number | undefined, widthPx: number): SceneNode[] {
  // The name comes last: where there is no room for all of it, what comes first says enough.
  const text = `${[words, shown].filter(Boolean).join(' ')}: ${name}`
  if (x === undefined) return [label('text', widthPx, y, 'end', `${fitted(text, widthPx - 24)} →`)]
  const toLeft = x > widthPx / 2
  const room = (toLeft ? x : widthPx - x) - 8
  return [line('limit', x, y - LINE_PX / 2, x, bottom), label('text', toLeft ? x - 6 : x + 6, y, toLeft ? 'end' : 'start', fitted(text, room))]
}
