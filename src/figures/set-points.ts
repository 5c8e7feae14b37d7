import { saturationPressure, saturationRange } from '../../functions/ammonia/saturation.ts'
import { fromSi } from '../../functions/units/convert.ts'
import type { Draw } from './drawing.ts'
import { labelColumn, labelsHeight, labelsWidth, type ColumnLabel } from './label-column.ts'
import { AXIS_ABOVE_PX, AXIS_BELOW_PX, axisWidth, plotFrame } from './plot-frame.ts'
import { circle, group, line, path } from './scene.ts'
import { linearScale, roundRange, ticks } from './scale.ts'
import { part, requiredPart, shownIn } from './values.ts'

const LEAST_FIELD_PX = 220

/** Regulator set point against room temperature, a point a zone. */
export const drawSetPoints: Draw = (_figure, values, widthPx) => {
  const rooms = requiredPart(values, 'room', 'quantities')
  const setPoints = requiredPart(values, 'setPoints', 'quantities')
  const names = part(values, 'names', 'texts') ?? []
  const suction = part(values, 'suction', 'quantity')
  const zones = rooms.flatMap((room, index) => {
    const setPoint = setPoints[index]
    return room && setPoint ? [{ name: names[index] ?? `Zone ${index + 1}`, room, setPoint }] : []
  })
  const [first] = zones
  if (!first) return { faults: ['Set points: no zone has both a room temperature and a set point'] }
  const [roomUnit, unit] = [first.room.unit, first.setPoint.unit]
  const suctionPa = suction && suction.si >= saturationRange.minK && suction.si <= saturationRange.maxK ? saturationPressure(suction.si) : undefined
  const pressure = (pa: number): number => fromSi(pa, unit, values.sitePa)
  const temperature = (kelvin: number): number => fromSi(kelvin, roomUnit)

  const x = roundRange(zones.map(({ room }) => temperature(room.si)), 5, 5)
  const y = roundRange([...zones.map(({ setPoint }) => pressure(setPoint.si)), ...(suctionPa === undefined ? [] : [pressure(suctionPa)])], 5)
  const yTicks = ticks(...y, 5)
  const labelsPx = labelsWidth(widthPx)
  const height = Math.max(LEAST_FIELD_PX, labelsHeight([...zones.map(({ name, setPoint }) => ({ name, value: setPoint.shown })), ...(suction ? [{ name: 'House suction', value: suction.shown }] : [])], labelsPx - 16))
  const field = { left: axisWidth(yTicks), right: widthPx - labelsPx, top: AXIS_ABOVE_PX, bottom: AXIS_ABOVE_PX + height }
  const xScale = linearScale(...x, field.left, field.right)
  const yScale = linearScale(...y, field.bottom, field.top)
  const suctionY = suctionPa === undefined ? undefined : yScale.px(pressure(suctionPa))
  const labels: ColumnLabel[] = [
    ...zones.map(({ name, room, setPoint }) => ({ x: xScale.px(temperature(room.si)), y: yScale.px(pressure(setPoint.si)), name, value: setPoint.shown })),
    ...(suctionY === undefined || !suction ? [] : [{ x: field.right, y: suctionY, name: 'House suction', value: suction.shown, look: 'text-quiet' as const }]),
  ]
  const column = labelColumn(labels, field.right + 16, widthPx, field.top, field.bottom)
  return {
    scene: {
      width: widthPx, height: Math.max(field.bottom + AXIS_BELOW_PX, column.bottom + 4),
      nodes: [group(
        plotFrame(
          { scale: xScale, title: `room, ${roomUnit.code}` },
          { scale: yScale, ticks: yTicks, title: `set point, ${unit.code}` }, field,
        ),
        ...(suctionY === undefined ? [] : [line('limit', field.left, suctionY, field.right, suctionY)]),
        column.node,
        ...zones.map(({ room, setPoint }) => path('point', circle({ x: xScale.px(temperature(room.si)), y: yScale.px(pressure(setPoint.si)) }, 4))),
      )],
    },
    description: [
      'Regulator set point against room temperature.',
      `${zones.map(({ name, room, setPoint }) => `${name}: room ${room.shown}, set point ${setPoint.shown}`).join('; ')}.`,
      ...(suction && suctionPa !== undefined ? [`House suction ${suction.shown}, ${shownIn(suctionPa, unit, values.sitePa)}.`] : []),
    ].join(' '),
    table: { head: ['Zone', 'Room', 'Set point'], rows: zones.map(({ name, room, setPoint }) => [name, room.shown, setPoint.shown]) },
    remarks: values.remarks,
  }
}
