/** A drawing as plain data, in px, y downwards. Looks are left to classes; see figures.css. */
export interface Scene {
  readonly width: number
  readonly height: number
  readonly nodes: readonly SceneNode[]
}

export type SceneNode = Group | Path | Line | Label

export interface Group {
  readonly is: 'group'
  readonly nodes: readonly SceneNode[]
}

/** A shape or a line by its SVG path data. */
export interface Path {
  readonly is: 'path'
  readonly look: Look
  readonly d: string
}

export interface Line {
  readonly is: 'line'
  readonly look: Look
  readonly x1: number
  readonly y1: number
  readonly x2: number
  readonly y2: number
}

/** A text on its middle line. */
export interface Label {
  readonly is: 'text'
  readonly look: TextLook
  readonly x: number
  readonly y: number
  readonly anchor: Anchor
  readonly text: string
}

export type Anchor = 'start' | 'middle' | 'end'

/** How lines and shapes look, by what they mean. */
export type Look =
  | 'wall' | 'liquid' | 'surface' | 'level' | 'leader' | 'connection' | 'float' | 'dimension' | 'shade'
  | 'axis' | 'grid' | 'curve' | 'curve-main' | 'curve-other' | 'point' | 'point-open' | 'limit' | 'bar' | 'bar-most' | 'bar-total' | 'wrong' | 'band' | 'contour'

export type TextLook = 'text' | 'text-quiet' | 'text-strong' | 'text-wrong'

export interface Point {
  readonly x: number
  readonly y: number
}

export const group = (...nodes: readonly SceneNode[]): Group => ({ is: 'group', nodes })

export const path = (look: Look, d: string): Path => ({ is: 'path', look, d })

export const line = (look: Look, x1: number, y1: number, x2: number, y2: number): Line => ({ is: 'line', look, x1: round(x1), y1: round(y1), x2: round(x2), y2: round(y2) })

export const label = (look: TextLook, x: number, y: number, anchor: Anchor, text: string): Label => ({ is: 'text', look, x: round(x), y: round(y), anchor, text })

export const polyline = (points: readonly Point[]): string => points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${round(x)} ${round(y)}`).join('')

export const polygon = (points: readonly Point[]): string => (points.length === 0 ? '' : `${polyline(points)}Z`)

export const rectangle = (x: number, y: number, width: number, height: number): string => `M${round(x)} ${round(y)}h${round(width)}v${round(height)}h${round(-width)}Z`

export const circle = ({ x, y }: Point, radius: number): string => {
  const r = round(radius)
  return `M${round(x - radius)} ${round(y)}a${r} ${r} 0 1 0 ${round(2 * radius)} 0a${r} ${r} 0 1 0 ${round(-2 * radius)} 0Z`
}

/** A hundredth of a px is finer than any print. */
export const round = (px: number): number => Math.round(px * 100) / 100 + 0
