import type { DrumData, Height } from './drum-data.ts'
import { below, widthAt } from './drum-shape.ts'
import type { ColumnLabel } from './label-column.ts'
import { circle, group, line, path, polygon, rectangle, type Group, type Point, type SceneNode } from './scene.ts'

/** Bore of a connection whose size is not known, px. */
const USUAL_BORE_PX = 9

/** From m in the drum, y upwards, to px on the drawing. */
export interface View {
  readonly x: (m: number) => number
  readonly y: (m: number) => number
  /** Px of a m. */
  readonly scale: number
}

/** Shell, liquid, the mark on its surface and the lines of the levels, in one section. */
export function filledSection(outline: readonly Point[], { level, levels }: DrumData, view: View): Group {
  const placed = (points: readonly Point[]): Point[] => points.map(({ x, y }) => ({ x: view.x(x), y: view.y(y) }))
  const across = (look: 'surface' | 'level', { heightM }: Height): SceneNode[] => {
    const width = widthAt(outline, heightM)
    return width ? [line(look, view.x(width[0]), view.y(heightM), view.x(width[1]), view.y(heightM))] : []
  }
  const surface = widthAt(outline, level.heightM)
  return group(
    path('liquid', polygon(placed(below(outline, level.heightM)))),
    ...levels.flatMap((one) => across('level', one)),
    ...across('surface', level),
    ...(surface ? [surfaceMark(view.x(surface[0] + 0.72 * (surface[1] - surface[0])), view.y(level.heightM))] : []),
    path('wall', polygon(placed(outline))),
  )
}

/** The sign for a free surface: a triangle that stands on it. */
const surfaceMark = (x: number, y: number): SceneNode => path('float', polygon([{ x, y }, { x: x - 4, y: y - 7 }, { x: x + 4, y: y - 7 }]))

/** A float in its chamber beside the drum, tied to the wall at both ends. */
export function floatChamber(x: number, y: number, wallAt: (y: number) => number): Group {
  const ends = [y - 12, y + 12]
  return group(
    ...ends.map((end) => line('axis', x, end, wallAt(end), end)),
    path('float', rectangle(x - 5, y - 15, 10, 30)),
    path('point', circle({ x, y }, 3.5)),
  )
}

/** How wide a connection is drawn. */
export const borePx = (diameterM: number | undefined, scale: number): number => (diameterM === undefined ? USUAL_BORE_PX : Math.max(2, diameterM * scale))

/** A pipe of two walls from one point on, straight; dashed where its bore is not to scale. */
export function pipe(from: Point, to: Point, diameterM: number | undefined, scale: number): Group {
  const half = borePx(diameterM, scale) / 2
  const upright = from.x === to.x
  const [dx, dy] = upright ? [half, 0] : [0, half]
  const look = diameterM === undefined ? 'connection' : 'wall'
  return group(...[-1, 1].map((side) => line(look, from.x + side * dx, from.y + side * dy, to.x + side * dx, to.y + side * dy)))
}

/** Levels and the floats that stand at none of them, to be written beside the section. */
export function heightLabels({ level, levels, floats }: DrumData, at: (heightM: number) => { readonly x: number; readonly y: number }): ColumnLabel[] {
  const isNew = ({ heightM }: Height): boolean => !levels.some((one) => Math.abs(one.heightM - heightM) < 1e-6)
  return [...levels, ...floats.filter(isNew), ...[level].filter(isNew)].map(({ name, heightM, shown }) => ({ ...at(heightM), name, value: shown }))
}

/** A length between two points on a line, with a stroke at each end. */
export const dimension = (x1: number, x2: number, y: number): Group => group(line('dimension', x1, y, x2, y), line('dimension', x1, y - 4, x1, y + 4), line('dimension', x2, y - 4, x2, y + 4))
