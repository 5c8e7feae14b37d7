import { saturationPressure, saturationRange } from '../../functions/ammonia/saturation.ts'
import { fromSi, toSi } from '../../functions/units/convert.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import type { Draw } from './drawing.ts'
import { labelColumn, labelsHeight, labelsWidth } from './label-column.ts'
import { AXIS_ABOVE_PX, AXIS_BELOW_PX, axisWidth, plotFrame } from './plot-frame.ts'
import { circle, group, line, path, polyline } from './scene.ts'
import { linearScale, logTicks, roundRange, ticks, type Scale } from './scale.ts'
import { part, requiredPart, shownIn, type FigureValues, type Quantity } from './values.ts'

const LEAST_FIELD_PX = 260
const CURVE_POINTS = 60

/** The saturation curve of ammonia over the temperatures of the plant, pressure on a logarithmic scale. */
export const drawSaturation: Draw = (_figure, values, widthPx) => {
  const names = requiredPart(values, 'names', 'texts')
  const outside: string[] = []
  const levels = requiredPart(values, 'levels', 'quantities').flatMap((level, index) => {
    if (!level) return []
    const name = names[index] ?? `Level ${index + 1}`
    if (level.si >= saturationRange.minK && level.si <= saturationRange.maxK) return [{ name, level, pa: saturationPressure(level.si) }]
    outside.push(`${name}, ${level.shown}: saturation runs from ${shownIn(saturationRange.minK, level.unit, undefined)} to ${shownIn(saturationRange.maxK, level.unit, undefined)}; not drawn.`)
    return []
  })
  const [first] = levels
  if (!first) return { faults: [`Saturation temperatures: none to draw. ${outside.join(' ')}`.trim()] }
  const unit = first.level.unit
  const pressureUnit = pressureUnitFor(values, first.level)
  const limits = [saturationRange.minK, saturationRange.maxK].map((kelvin) => fromSi(kelvin, unit))
  const around = roundRange(levels.map(({ level }) => fromSi(level.si, unit)), 5, 20)
  const x = [Math.max(limits[0] ?? around[0], around[0]), Math.min(limits[1] ?? around[1], around[1])] as const
  const kelvinAt = (share: number): number => Math.min(saturationRange.maxK, Math.max(saturationRange.minK, toSi(x[0] + share * (x[1] - x[0]), unit)))
  const [lowPa, highPa] = [saturationPressure(kelvinAt(0)), saturationPressure(kelvinAt(1))]

  const shownPressure = (pa: number): string => shownIn(pa, pressureUnit, values.sitePa)
  const words = levels.map(({ name, level, pa }) => ({ name, value: `${level.shown}, ${shownPressure(pa)}` }))
  const labelsPx = labelsWidth(widthPx)
  const height = Math.max(LEAST_FIELD_PX, labelsHeight(words, labelsPx - 16))
  const yTicks = pressureTicks(lowPa, highPa, pressureUnit, values.sitePa)
  const field = { left: axisWidth(yTicks), right: widthPx - labelsPx, top: AXIS_ABOVE_PX, bottom: AXIS_ABOVE_PX + height }
  const xScale = linearScale(...x, field.left, field.right)
  const byLog = linearScale(Math.log(lowPa), Math.log(highPa), field.bottom, field.top)
  const yPx = (pa: number): number => byLog.px(Math.log(pa))
  const yScale: Scale = { from: lowPa, to: highPa, px: (tick) => yPx(toSi(tick, pressureUnit, values.sitePa)) }
  const xPx = (kelvin: number): number => xScale.px(fromSi(kelvin, unit))
  const points = levels.map(({ level, pa }) => ({ x: xPx(level.si), y: yPx(pa) }))

  const column = labelColumn(
    words.map((one, index) => ({ ...one, ...(points[index] ?? { x: field.right, y: field.top }) })),
    field.right + 16, widthPx, field.top, field.bottom,
  )
  return {
    scene: {
      width: widthPx, height: Math.max(field.bottom + AXIS_BELOW_PX, column.bottom + 4),
      nodes: [group(
        plotFrame({ scale: xScale, title: `saturation temperature, ${unit.code}` }, { scale: yScale, ticks: yTicks, title: `pressure, ${pressureUnit.code}` }, field),
        path('curve-main', polyline(Array.from({ length: CURVE_POINTS + 1 }, (_, index) => kelvinAt(index / CURVE_POINTS)).map((kelvin) => ({ x: xPx(kelvin), y: yPx(saturationPressure(kelvin)) })))),
        ...points.map((point) => line('dimension', point.x, point.y, point.x, field.bottom)),
        column.node,
        ...points.map((point) => path('point', circle(point, 4))),
      )],
    },
    description: `Saturation curve of ammonia with the levels of the plant. ${levels.map(({ name, level, pa }) => `${name}: ${level.shown}, ${shownPressure(pa)}`).join('; ')}.`,
    table: { head: ['Level', 'Saturation temperature', 'Pressure'], rows: levels.map(({ name, level, pa }) => [name, level.shown, shownPressure(pa)]) },
    remarks: [...values.remarks, ...outside],
  }
}

/** The unit of the pressures bound, or else the absolute one that goes with the temperatures. */
export function pressureUnitFor(values: FigureValues, temperature: Quantity): Unit {
  const bound = part(values, 'pressures', 'quantities')?.find((one) => one !== undefined)
  const usual = findUnit(temperature.unit.code === '°F' ? 'psia' : 'kPa')
  if (!usual) throw new Error('the units of pressure are in the table')
  return bound?.unit ?? usual
}

/** Round numbers of a unit between two pressures, close enough on a logarithmic scale. */
export function pressureTicks(fromPa: number, toPa: number, unit: Unit, sitePa: number | undefined): number[] {
  const [from, to] = [fromPa, toPa].map((pa) => fromSi(pa, unit, sitePa)).toSorted((one, other) => one - other)
  if (from === undefined || to === undefined) return []
  const round = from > 0 ? logTicks(from, to) : []
  return round.length >= 3 ? round : ticks(from, to, 5)
}
