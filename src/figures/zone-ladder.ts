import { saturationPressure, saturationRange, saturationTemperature } from '../../functions/ammonia/saturation.ts'
import { fromSi, toSi } from '../../functions/units/convert.ts'
import { formatNumber } from '../workbook/number-format.ts'
import { axisNumbers, fittingTicks } from './axis-numbers.ts'
import type { Draw } from './drawing.ts'
import { pressureTicks, pressureUnitFor } from './saturation-curve.ts'
import { circle, group, label, line, path, polygon, polyline, rectangle, type Point, type SceneNode } from './scene.ts'
import { linearScale, roundRange, tickText, type Scale } from './scale.ts'
import { spread } from './spread.ts'
import { fitted, LINE_PX, STRONG, textWidth } from './text-width.ts'
import { part, requiredPart, type FigureValues, type Quantity } from './values.ts'

const EDGE_PX = 14
/** Name, numbers, rungs; where it is not served one line more. */
const ROW_PX = 3 * LINE_PX + 12
const rowHeight = ({ trouble }: Zone): number => ROW_PX + (trouble === undefined ? 0 : LINE_PX)
const KEY_PX = LINE_PX + 6
const AXIS_PX = 2 * LINE_PX + 6

interface Zone {
  readonly name: string
  readonly room: Quantity
  readonly coil: Quantity | undefined
  readonly drum: Quantity
  readonly suction: Quantity
  /** Why it is not served; undefined where it is. */
  readonly trouble: string | undefined
}

/** Each zone on a line of its own, cold on the left: house suction, drum, coil, room. Below the temperatures stand the saturation pressures. */
export const drawZones: Draw = (_figure, values, widthPx) => {
  const zones = zonesOf(values)
  const [first] = zones
  if (!first) return { faults: ['Zones: none has a room temperature, a drum temperature and a house suction'] }
  const { unit } = first.room
  const inUnit = ({ si }: Quantity): number => fromSi(si, unit)
  const [from, to] = roundRange(zones.flatMap((zone) => rungsOf(zone).map(({ at }) => inUnit(at))), 6, 10)
  const scale = linearScale(from, to, EDGE_PX, widthPx - EDGE_PX)
  const top = KEY_PX + AXIS_PX
  const tops = zones.map((_, index) => zones.slice(0, index).reduce((y, zone) => y + rowHeight(zone), top))
  const bottom = zones.reduce((y, zone) => y + rowHeight(zone), top)

  const temperatures = axisNumbers(fittingTicks(scale).map((tick) => ({ x: scale.px(tick), text: tickText(tick) })), widthPx)
  const nodes: SceneNode[] = [
    key(widthPx),
    label('text-quiet', 0, KEY_PX + LINE_PX / 2, 'start', `temperature, ${unit.code}`),
    ...temperatures.flatMap(({ x, textX, text }): SceneNode[] => [
      line('grid', x, top - 4, x, bottom),
      label('text-quiet', textX, top - LINE_PX / 2 - 4, 'middle', text),
    ]),
    ...zones.flatMap((zone, index) => zoneRow(zone, tops[index] ?? top, scale, inUnit, widthPx)),
    line('axis', 0, top, widthPx, top),
    line('axis', 0, bottom, widthPx, bottom),
  ]
  const pressures = pressureAxis(values, first.drum, scale, unit, bottom, widthPx)
  const troubled = zones.filter(({ trouble }) => trouble !== undefined)
  return {
    scene: { width: widthPx, height: bottom + (pressures.length > 0 ? AXIS_PX : 0) + 4, nodes: [group(...nodes, ...pressures)] },
    description: [
      `${zones.length} ${zones.length === 1 ? 'zone' : 'zones'}, each from room down to house suction.`,
      ...zones.map((zone) => `${zone.name}: ${rungsOf(zone).toReversed().map(({ name, at }) => `${name} ${at.shown}`).join(', ')}${zone.trouble === undefined ? '' : `; not served: ${zone.trouble}`}.`),
      troubled.length === 0 ? 'All zones are served.' : `${troubled.length} of ${zones.length} not served.`,
    ].join(' '),
    table: {
      head: ['Zone', 'Room', 'Coil', 'Drum', 'House suction', 'Served'],
      rows: zones.map(({ name, room, coil, drum, suction, trouble }) => [name, room.shown, coil?.shown ?? '', drum.shown, suction.shown, trouble === undefined ? 'yes' : `no: ${trouble}`]),
    },
    remarks: values.remarks,
  }
}

function zonesOf(values: FigureValues): Zone[] {
  const names = requiredPart(values, 'names', 'texts')
  const rooms = requiredPart(values, 'room', 'quantities')
  const drums = requiredPart(values, 'drum', 'quantities')
  const coils = part(values, 'coil', 'quantities') ?? []
  const suctions = requiredPart(values, 'suction', 'quantities')
  const served = part(values, 'feasible', 'truths') ?? []
  return rooms.flatMap((room, index): Zone[] => {
    const [drum, suction] = [drums[index], suctions.length === 1 ? suctions[0] : suctions[index]]
    if (!room || !drum || !suction) return []
    return [{ name: names[index] ?? `Zone ${index + 1}`, room, coil: coils[index], drum, suction, trouble: troubleOf(room, drum, suction, served[index]) }]
  })
}

/** A drum cannot be colder than the suction it is drawn from; what the sheet says of the zone counts too. */
function troubleOf(room: Quantity, drum: Quantity, suction: Quantity, served: boolean | undefined): string | undefined {
  const below = (suction.si - drum.si) / drum.unit.factor
  if (below > 0) return `drum ${formatNumber(below, { digits: 3 })} ${drum.unit.code} colder than house suction`
  if (drum.si >= room.si) return 'drum not colder than the room'
  return served === false ? 'the sheet says so' : undefined
}

interface Rung {
  readonly name: string
  readonly at: Quantity
  readonly sign: (at: Point) => SceneNode
}

const KINDS = {
  suction: { name: 'suction', sign: ({ x, y }: Point) => path('point', rectangle(x - 1.5, y - 7, 3, 14)) },
  drum: { name: 'drum', sign: ({ x, y }: Point) => path('point', rectangle(x - 4, y - 4, 8, 8)) },
  coil: { name: 'coil', sign: ({ x, y }: Point) => path('point-open', polygon([{ x: x - 5, y }, { x, y: y - 5 }, { x: x + 5, y }, { x, y: y + 5 }])) },
  room: { name: 'room', sign: (at: Point) => path('point-open', circle(at, 4.5)) },
} as const

/** From the coldest end on, as they are piped. */
function rungsOf({ suction, drum, coil, room }: Zone): Rung[] {
  return [{ ...KINDS.suction, at: suction }, { ...KINDS.drum, at: drum }, ...(coil ? [{ ...KINDS.coil, at: coil }] : []), { ...KINDS.room, at: room }]
}

function key(widthPx: number): SceneNode {
  let x = 8
  const nodes = Object.values(KINDS).toReversed().flatMap(({ name, sign }): SceneNode[] => {
    const at = x
    x += textWidth(name) + 30
    return at + textWidth(name) + 12 > widthPx ? [] : [sign({ x: at, y: LINE_PX / 2 }), label('text-quiet', at + 10, LINE_PX / 2, 'start', name)]
  })
  return group(...nodes)
}

function zoneRow(zone: Zone, top: number, scale: Scale, inUnit: (quantity: Quantity) => number, widthPx: number): SceneNode[] {
  const rungs = rungsOf(zone).map((rung) => ({ ...rung, x: scale.px(inUnit(rung.at)), text: tickText(Math.round(inUnit(rung.at) * 10) / 10) }))
  const middles = spread(rungs.map(({ x, text }) => ({ at: x, size: textWidth(text) + 8 })), 0, widthPx)
  const { trouble } = zone
  const nameY = top + LINE_PX / 2 + 4
  const numberY = nameY + LINE_PX * (trouble === undefined ? 1 : 2) + 1
  const rungY = numberY + LINE_PX - 1
  return [
    ...(trouble === undefined ? [] : [path('shade', rectangle(0, top + 1, widthPx, rowHeight(zone) - 2))]),
    line('grid', 0, top, widthPx, top),
    label('text-strong', 0, nameY, 'start', fitted(zone.name, widthPx / STRONG)),
    ...(trouble === undefined ? [] : [cross({ x: 6, y: nameY + LINE_PX }), label('text-wrong', 16, nameY + LINE_PX, 'start', fitted(`not served: ${trouble}`, widthPx - 16))]),
    path(trouble === undefined ? 'curve-main' : 'wrong', polyline(rungs.map(({ x }) => ({ x, y: rungY })))),
    // The small full signs lie over the large open ones.
    ...rungs.toReversed().map(({ x, sign }) => sign({ x, y: rungY })),
    ...rungs.map(({ x, text }, index) => label('text', middles[index] ?? x, numberY, 'middle', text)),
  ]
}

const cross = ({ x, y }: Point): SceneNode => path('wrong', `M${x - 4} ${y - 4}l8 8M${x + 4} ${y - 4}l-8 8`)

/** Saturation ties a pressure to each temperature of the axis. */
function pressureAxis(values: FigureValues, drum: Quantity, scale: Scale, unit: Quantity['unit'], top: number, widthPx: number): SceneNode[] {
  const [cold, warm] = [scale.from, scale.to].map((end) => Math.min(saturationRange.maxK, Math.max(saturationRange.minK, toSi(end, unit))))
  if (cold === undefined || warm === undefined || cold >= warm) return []
  const pressureUnit = pressureUnitFor(values, drum)
  const marks = pressureTicks(saturationPressure(cold), saturationPressure(warm), pressureUnit, values.sitePa).map((tick) => ({
    text: tickText(tick), x: scale.px(fromSi(saturationTemperature(toSi(tick, pressureUnit, values.sitePa)), unit)),
  }))
  return [
    ...axisNumbers(marks, widthPx).flatMap(({ x, textX, text }): SceneNode[] => [line('axis', x, top, x, top + 4), label('text-quiet', textX, top + LINE_PX / 2 + 5, 'middle', text)]),
    label('text-quiet', 0, top + 1.5 * LINE_PX + 6, 'start', `saturation pressure, ${pressureUnit.code}`),
  ]
}
