import { heads } from '../../functions/holdup/heads.ts'
import type { Vessel } from '../../functions/holdup/vessel.ts'
import type { Point } from './scene.ts'

/** Points a quarter of an ellipse or a dished head is drawn with. */
const HEAD_POINTS = 24

/**
 * The inside of a drum in section through its axis, m from its lowest point in the middle: x to the right, y upwards, once round.
 */
export function drumOutline({ diameterM, lengthM, headName, position }: Vessel): Point[] {
  const depthM = headDepth({ diameterM, lengthM, headName, position })
  const upper = headProfile(headName).map(({ along, radius }) => ({ along: along * diameterM + lengthM / 2, radius: radius * diameterM }))
  const half = [...upper.toReversed().map(({ along, radius }) => ({ along: -along, radius })), ...upper]
  const round = [...half, ...half.toReversed().map(({ along, radius }) => ({ along, radius: -radius }))]
  return position === 'vertical'
    ? round.map(({ along, radius }) => ({ x: radius, y: along + lengthM / 2 + depthM }))
    : round.map(({ along, radius }) => ({ x: along, y: radius + diameterM / 2 }))
}

/** The section across a drum, of unit diameter times `diameterM`, from its lowest point. */
export function circleOutline(diameterM: number): Point[] {
  return Array.from({ length: 96 }, (_, index) => {
    const angle = (index / 96) * 2 * Math.PI
    return { x: (diameterM / 2) * Math.sin(angle), y: (diameterM / 2) * (1 - Math.cos(angle)) }
  })
}

/** Depth of one head, m. */
export const headDepth = ({ headName, diameterM }: Vessel): number => heads[headName].depth * diameterM

/** The lowest point of an outline at a distance from its middle; its lowest of all where it does not reach. */
export function lowestAt(outline: readonly Point[], x: number): number {
  const heights = outline.flatMap((point, index) => {
    const next = outline[(index + 1) % outline.length] ?? point
    if (point.x <= x === next.x <= x) return []
    return [point.y + ((x - point.x) / (next.x - point.x)) * (next.y - point.y)]
  })
  return Math.min(...(heights.length > 0 ? heights : outline.map(({ y }) => y)))
}

/** What of an outline lies below a height. */
export function below(outline: readonly Point[], height: number): Point[] {
  return outline.flatMap((point, index) => {
    const next = outline[(index + 1) % outline.length] ?? point
    const inside = point.y <= height
    const crosses = inside !== next.y <= height
    const share = crosses ? (height - point.y) / (next.y - point.y) : 0
    return [...(inside ? [point] : []), ...(crosses ? [{ x: point.x + share * (next.x - point.x), y: height }] : [])]
  })
}

/** From its left to its right wall at a height; undefined where the outline does not reach. */
export function widthAt(outline: readonly Point[], height: number): readonly [left: number, right: number] | undefined {
  const on = below(outline, height).filter(({ y }) => Math.abs(y - height) < 1e-9).map(({ x }) => x)
  return on.length === 0 ? undefined : [Math.min(...on), Math.max(...on)]
}

/** Radius over the distance from the tangent line, both per diameter, from the tangent line to the innermost point. */
function headProfile(name: Vessel['headName']): { readonly along: number; readonly radius: number }[] {
  const { depth, torisphere } = heads[name]
  if (depth === 0) return [{ along: 0, radius: 0.5 }]
  return Array.from({ length: HEAD_POINTS + 1 }, (_, index) => {
    const angle = (index / HEAD_POINTS) * (Math.PI / 2)
    const along = depth * Math.sin(angle)
    if (!torisphere) return { along, radius: 0.5 * Math.cos(angle) }
    const { crown, knuckle, ring, centre, touchDepth } = torisphere
    return { along, radius: along <= touchDepth ? ring + Math.sqrt(knuckle ** 2 - along ** 2) : Math.sqrt(Math.max(0, crown ** 2 - (along + centre) ** 2)) }
  })
}
