import type { Connection, DrumData } from './drum-data.ts'
import { dimension, filledSection, floatChamber, heightLabels, pipe, type View } from './drum-parts.ts'
import { circleOutline, drumOutline, headDepth, widthAt } from './drum-shape.ts'
import { labelColumn } from './label-column.ts'
import { group, label, type Group, type Scene, type SceneNode } from './scene.ts'
import { spread } from './spread.ts'
import { LINE_PX, textWidth } from './text-width.ts'

const EDGE_PX = 2
const NOZZLE_PX = 20
const LEG_PX = 30
const tallestPx = (widthPx: number): number => Math.max(190, widthPx * 0.3)
/** Diameter of the section across. */
const acrossPx = (widthPx: number): number => Math.min(190, Math.max(126, widthPx * 0.33))

/** A horizontal drum: along its axis with the connections, and across with the heights. */
export function lyingDrum(data: DrumData, widthPx: number): Scene {
  const along = alongSection(data, widthPx)
  const across = acrossSection(data, widthPx, along.bottom + 28)
  return { width: widthPx, height: across.bottom + EDGE_PX, nodes: [along.node, across.node] }
}

interface Drawn {
  readonly node: Group
  readonly bottom: number
}

function alongSection(data: DrumData, widthPx: number): Drawn {
  const { vessel, connections, travelM, lengthShown } = data
  const outline = drumOutline(vessel)
  const wholeM = vessel.lengthM + 2 * headDepth(vessel)
  const scale = Math.min((widthPx - 2 * EDGE_PX) / wholeM, tallestPx(widthPx) / vessel.diameterM)
  const top = LINE_PX + NOZZLE_PX
  const bottom = top + vessel.diameterM * scale
  const view: View = { x: (m) => widthPx / 2 + m * scale, y: (m) => bottom - m * scale, scale }

  const returns = connections.filter(({ is }) => is === 'return')
  const suctionM = returns.length === 2 ? 0 : travelM / 2
  const returnM = (one: Connection): number => (one === returns[0] ? -1 : 1) * (returns.length === 2 ? Math.min(travelM, vessel.lengthM / 2) : travelM / 2)
  const placesM = { return: returnM, suction: () => suctionM, leg: () => 0, drain: () => -0.36 * vessel.lengthM }
  const placed = connections.map((one) => ({ ...one, xM: placesM[one.is](one) }))
  const overhead = placed.filter(({ is }) => is === 'return' || is === 'suction')
  const underneath = placed.filter(({ is }) => is === 'leg' || is === 'drain')
  const nodes: SceneNode[] = [
    ...overhead.flatMap((one) => overheadPipe(one, one.xM, view, top)),
    ...underneath.map(({ is, xM, diameterM }) => pipe({ x: view.x(xM), y: bottom }, { x: view.x(xM), y: bottom + (is === 'leg' ? LEG_PX : LEG_PX / 2) }, diameterM, scale)),
    filledSection(outline, data, view),
    ...rowOfNames(overhead.map(({ name, xM }) => ({ name, x: view.x(xM) })), LINE_PX / 2, widthPx),
    ...rowOfNames(underneath.map(({ name, xM }) => ({ name, x: view.x(xM) })), bottom + LEG_PX + LINE_PX / 2 + 2, widthPx),
  ]
  const lengthY = bottom + LEG_PX + LINE_PX + 14
  nodes.push(dimension(view.x(-vessel.lengthM / 2), view.x(vessel.lengthM / 2), lengthY), label('text-quiet', widthPx / 2, lengthY + 11, 'middle', `${lengthShown} between tangent lines`))
  return { node: group(...nodes), bottom: lengthY + 11 + LINE_PX / 2 }
}

/** A return is turned down inside, the suction ends at the top. */
function overheadPipe({ is, diameterM }: Connection, xM: number, { x, scale }: View, top: number): SceneNode[] {
  const at = x(xM)
  const end = is === 'return' ? top + 14 : top
  return [pipe({ x: at, y: top - NOZZLE_PX + 4 }, { x: at, y: end }, diameterM, scale)]
}

function rowOfNames(names: readonly { readonly name: string; readonly x: number }[], y: number, widthPx: number): SceneNode[] {
  const middles = spread(names.map(({ name, x }) => ({ at: x, size: textWidth(name) + 8 })), 0, widthPx)
  return names.map(({ name, x }, index) => label('text-quiet', middles[index] ?? x, y, 'middle', name))
}

function acrossSection(data: DrumData, widthPx: number, top: number): Drawn {
  const { vessel, floats, diameterShown } = data
  const outline = circleOutline(vessel.diameterM)
  const diameterPx = acrossPx(widthPx)
  const scale = diameterPx / vessel.diameterM
  const middle = EDGE_PX + 44 + diameterPx / 2
  const bottom = top + diameterPx
  const view: View = { x: (m) => middle + m * scale, y: (m) => bottom - m * scale, scale }
  const leftWall = (y: number): number => view.x(widthAt(outline, Math.min(vessel.diameterM, Math.max(0, (bottom - y) / scale)))?.[0] ?? 0)
  const rightWall = (heightM: number) => ({ x: view.x(widthAt(outline, heightM)?.[1] ?? 0), y: view.y(heightM) })
  const labels = labelColumn(heightLabels(data, rightWall), middle + diameterPx / 2 + 24, widthPx, top - 8, bottom + 60)
  const lengthY = bottom + 14
  const node = group(
    ...floats.map(({ heightM }, index) => floatChamber(EDGE_PX + 8 + 18 * (index % 2), view.y(heightM), leftWall)),
    filledSection(outline, data, view),
    dimension(view.x(-vessel.diameterM / 2), view.x(vessel.diameterM / 2), lengthY),
    label('text-quiet', middle, lengthY + 11, 'middle', `${diameterShown} inside`),
    labels.node,
  )
  return { node, bottom: Math.max(labels.bottom, lengthY + 11 + LINE_PX / 2) }
}
