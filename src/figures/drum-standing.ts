import { insideHeight } from '../../functions/holdup/vessel.ts'
import type { DrumData } from './drum-data.ts'
import { borePx, dimension, filledSection, floatChamber, heightLabels, pipe, type View } from './drum-parts.ts'
import { drumOutline, headDepth, lowestAt, widthAt } from './drum-shape.ts'
import { labelColumn, labelsWidth } from './label-column.ts'
import { group, label, line, type Scene, type SceneNode } from './scene.ts'
import { LINE_PX, textWidth } from './text-width.ts'

const tallestPx = (widthPx: number): number => Math.max(300, widthPx * 0.5)
const NOZZLE_PX = 20
const LEG_PX = 34
/** Beside the drum on its left: the wet return and the floats. */
const LEFT_PX = 96

/** A vertical drum in section, with the heights beside it. */
export function standingDrum(data: DrumData, widthPx: number): Scene {
  const { vessel, floats, connections, levels, diameterShown, lengthShown } = data
  const outline = drumOutline(vessel)
  const heightM = insideHeight(vessel)
  const scale = Math.min(tallestPx(widthPx) / heightM, Math.max(60, Math.min(widthPx * 0.4, widthPx - LEFT_PX - 30 - labelsWidth(widthPx))) / vessel.diameterM)
  const drumPx = vessel.diameterM * scale
  const middle = LEFT_PX + drumPx / 2
  const top = LINE_PX + NOZZLE_PX
  const bottom = top + heightM * scale
  const view: View = { x: (m) => middle + m * scale, y: (m) => bottom - m * scale, scale }
  const leftWall = (y: number): number => view.x(widthAt(outline, Math.min(heightM, Math.max(0, (bottom - y) / scale)))?.[0] ?? 0)
  const tangents = [headDepth(vessel), headDepth(vessel) + vessel.lengthM]

  const of = (is: DrumData['connections'][number]['is']) => connections.find((one) => one.is === is)
  // Above whatever liquid may reach, as far as there is room.
  const highestM = Math.max(...levels.map((one) => one.heightM), data.level.heightM)
  const returnY = Math.max(top + 14, view.y(Math.min(tangents[1] ?? heightM, Math.max(highestM + 0.35 * (heightM - highestM), heightM / 2))))
  const drainX = middle - Math.max(16, drumPx * 0.22)
  const drainTop = view.y(lowestAt(outline, (drainX - middle) / scale))
  const labelsX = middle + drumPx / 2 + 22
  const rightWall = (atM: number) => ({ x: view.x(widthAt(outline, atM)?.[1] ?? 0), y: view.y(atM) })
  const labels = labelColumn(heightLabels(data, rightWall), labelsX, widthPx, top, bottom)
  const legX = Math.max(middle - 6, textWidth('Oil drain') + 12)
  const legBottom = Math.max(bottom + LEG_PX, labelsX < legX + textWidth('Liquid leg') + 8 ? labels.bottom : 0)
  const bottomNames = legBottom + LINE_PX / 2 + 2

  const nodes: SceneNode[] = [
    pipe({ x: middle, y: top - NOZZLE_PX + 4 }, { x: middle, y: top }, of('suction')?.diameterM, scale),
    pipe({ x: LEFT_PX - 40, y: returnY }, { x: leftWall(returnY) + 12, y: returnY }, of('return')?.diameterM, scale),
    pipe({ x: middle, y: bottom }, { x: middle, y: legBottom }, of('leg')?.diameterM, scale),
    pipe({ x: drainX, y: drainTop }, { x: drainX, y: bottom + LEG_PX / 2 }, of('drain')?.diameterM, scale),
    ...floats.map((one, index) => floatChamber(LEFT_PX - 16 - 20 * (index % 2), view.y(one.heightM), leftWall)),
    filledSection(outline, data, view),
    ...tangents.map((atM) => line('leader', view.x(-vessel.diameterM / 2), view.y(atM), view.x(vessel.diameterM / 2), view.y(atM))),
    label('text-quiet', middle, LINE_PX / 2, 'middle', 'Dry suction'),
    label('text-quiet', 0, Math.max(LINE_PX / 2, returnY - borePx(of('return')?.diameterM, scale) / 2 - LINE_PX / 2 - 2), 'start', 'Wet return'),
    label('text-quiet', legX, bottomNames, 'start', 'Liquid leg'),
    label('text-quiet', legX - 8, bottomNames, 'end', 'Oil drain'),
  ]
  const lengthY = bottomNames + 20
  nodes.push(
    dimension(view.x(-vessel.diameterM / 2), view.x(vessel.diameterM / 2), lengthY),
    label('text-quiet', middle, lengthY + 11, 'middle', `${diameterShown} inside`),
    label('text-quiet', middle, lengthY + 11 + LINE_PX, 'middle', `${lengthShown} between tangent lines`),
  )
  return { width: widthPx, height: Math.max(labels.bottom, lengthY + 11 + 1.5 * LINE_PX) + 2, nodes: [group(...nodes), labels.node] }
}
