import { headNames } from '../../functions/holdup/heads.ts'
import { insideHeight, type Vessel } from '../../functions/holdup/vessel.ts'
import { optionOf } from '../workbook/figure.ts'
import type { Draw } from './drawing.ts'
import type { Connections, DrumData, Height } from './drum-data.ts'
import { lyingDrum } from './drum-lying.ts'
import { standingDrum } from './drum-standing.ts'
import { part, requiredPart, shownIn, type FigureValues, type Quantity } from './values.ts'

/** A drum in section, to scale. */
export const drawDrum: Draw = (figure, values, widthPx) => {
  const data = drumData(values, optionOf(figure, 'position') === 'vertical' ? 'vertical' : 'horizontal')
  if ('faults' in data) return data
  const { vessel, level, levels, floats, connections, lengthShown, diameterShown } = data
  const heights = [...levels, ...floats]
  const words = [
    `${vessel.position === 'vertical' ? 'Vertical' : 'Horizontal'} drum, ${diameterShown} inside diameter, ${lengthShown} between tangent lines, ${vessel.headName} heads.`,
    `Liquid at ${level.shown} above the lowest inside point.`,
    ...(heights.length > 0 ? [`Heights: ${heights.map(({ name, shown }) => `${name} ${shown}`).join('; ')}.`] : []),
  ]
  const unsized = connections.filter(({ diameterM }) => diameterM === undefined).map(({ name }) => name)
  return {
    scene: (vessel.position === 'vertical' ? standingDrum : lyingDrum)(data, widthPx),
    description: words.join(' '),
    table: {
      head: ['Part', 'Value'],
      rows: [
        ['Inside diameter', diameterShown], ['Tangent length', lengthShown], ['Heads', vessel.headName], ['Liquid', level.shown],
        ...heights.map(({ name, shown }) => [name, shown]),
        ...connections.flatMap(({ name, shown }) => (shown === undefined ? [] : [[name, shown]])),
      ],
    },
    remarks: [
      ...values.remarks,
      ...data.remarks,
      `Shell, heads, levels and floats are to scale; where connections stand is not${unsized.length === 0 ? '' : `, nor is the bore of those without a size: ${unsized.join(', ')}`}.`,
    ],
  }
}

function drumData(values: FigureValues, position: Vessel['position']): DrumData | { readonly faults: readonly string[] } {
  const diameter = requiredPart(values, 'diameter', 'quantity')
  const length = requiredPart(values, 'length', 'quantity')
  const level = requiredPart(values, 'level', 'quantity')
  const headText = requiredPart(values, 'heads', 'text')
  const headName = headNames.find((name) => name === headText)
  const faults = [
    ...(diameter.si > 0 ? [] : [`Inside diameter: ${diameter.shown}; accepted: above 0`]),
    ...(length.si >= 0 ? [] : [`Tangent length: ${length.shown}; accepted: 0 or more`]),
    ...(headName ? [] : [`Heads: "${headText}"; accepted: ${headNames.join(', ')}`]),
  ]
  if (!headName || faults.length > 0) return { faults }
  const vessel: Vessel = { diameterM: diameter.si, lengthM: length.si, headName, position }
  const height = insideHeight(vessel)
  if (!(height > 0)) return { faults: ['Tangent length: 0 and flat heads leave no drum'] }
  const remarks: string[] = []
  const levels = namedHeights(values, remarks).filter(inside)
  const floats = [
    ['Operating float', part(values, 'operatingFloat', 'quantity')] as const, ['High float', part(values, 'highFloat', 'quantity')] as const,
  ].flatMap(([name, at]): Height[] => (at ? [{ name, heightM: at.si, shown: at.shown }] : [])).filter(inside)
  if (level.si < 0 || level.si > height) remarks.push(`The liquid level of ${level.shown} lies outside the drum, which is ${shownIn(height, level.unit, undefined)} high inside.`)
  return {
    vessel, levels, floats, remarks, connections: connections(values, position),
    level: { name: 'Liquid', heightM: Math.min(height, Math.max(0, level.si)), shown: level.shown },
    lengthShown: length.shown, diameterShown: diameter.shown, travelM: travel(values, vessel),
  }

  function inside({ name, heightM, shown }: Height): boolean {
    const fits = heightM >= 0 && heightM <= height
    if (!fits) remarks.push(`${name}, ${shown}, lies outside the drum, which is ${shownIn(height, level.unit, undefined)} high inside; not drawn.`)
    return fits
  }
}

function namedHeights(values: FigureValues, remarks: string[]): Height[] {
  const heights = part(values, 'levels', 'quantities') ?? []
  const names = part(values, 'levelNames', 'texts') ?? []
  if (names.length > heights.length) remarks.push(`There are ${names.length} names for ${heights.length} heights: bind as many.`)
  return heights.flatMap((one, index): Height[] => (one ? [{ name: names[index] ?? `Level ${index + 1}`, heightM: one.si, shown: one.shown }] : []))
}

/** Between wet return and dry suction; four fifths of the way between the tangent lines is common practice. */
function travel(values: FigureValues, { lengthM }: Vessel): number {
  const bound = part(values, 'travel', 'quantity')
  return Math.min(lengthM, Math.max(0, bound?.si ?? 0.8 * lengthM))
}

function connections(values: FigureValues, position: Vessel['position']): Connections {
  const two = position === 'horizontal' && part(values, 'returns', 'number') === 2
  const sized = (name: string, of: string, is: Connections[number]['is']): Connections[number] => {
    const size: Quantity | undefined = part(values, of, 'quantity')
    return size && size.si > 0 ? { is, name, diameterM: size.si, shown: size.shown } : { is, name }
  }
  return [
    sized('Wet return', 'returnSize', 'return'), ...(two ? [sized('Wet return', 'returnSize', 'return')] : []),
    sized('Dry suction', 'suctionSize', 'suction'), sized('Liquid leg', 'legSize', 'leg'), sized('Oil drain', 'drainSize', 'drain'),
  ]
}
