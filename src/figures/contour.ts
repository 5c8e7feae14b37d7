import { round, type Point } from './scene.ts'

/** A field of numbers at the crossings of columns and rows, by px; undefined where there is none. */
export interface Grid {
  readonly xs: readonly number[]
  readonly ys: readonly number[]
  /** By row, then by column. */
  readonly values: readonly (readonly (number | undefined)[])[]
}

interface Corner extends Point {
  readonly value: number
}

export interface Contour {
  /** Path data of everything at or above the level. */
  readonly above: string
  /** Path data of the line along the level. */
  readonly along: string
  /** The end of the line furthest to the right; undefined where the level is nowhere. */
  readonly rightmost: Point | undefined
}

/** The line and the area of a level, by marching squares; a square whose opposite corners agree is divided at its middle. */
export function contour({ xs, ys, values }: Grid, level: number): Contour {
  let above = ''
  let along = ''
  let rightmost: Point | undefined
  for (let row = 0; row + 1 < ys.length; row++) {
    // Whole squares side by side are one rectangle.
    let whole: Corner[] | undefined
    for (let column = 0; column + 1 < xs.length; column++) {
      const square = squareAt(row, column)
      if (square?.every(({ value }) => value >= level)) {
        const [first, second, third, last] = square
        whole = whole === undefined ? square : [whole[0] ?? first, second, third, whole[3] ?? last].flatMap((corner) => corner ?? [])
        continue
      }
      above += polygonText(whole)
      whole = undefined
      if (square === undefined || square.every(({ value }) => value < level)) continue
      for (const part of isSaddle(square, level) ? quarters(square) : [square]) {
        above += polygonText(partAbove(part, level))
        const [from, to] = crossings(part, level)
        if (from === undefined || to === undefined) continue
        along += `M${round(from.x)} ${round(from.y)}L${round(to.x)} ${round(to.y)}`
        for (const end of [from, to]) if (rightmost === undefined || end.x > rightmost.x) rightmost = end
      }
    }
    above += polygonText(whole)
  }
  return { above, along, rightmost }

  function squareAt(row: number, column: number): Corner[] | undefined {
    const corners = [[row, column], [row, column + 1], [row + 1, column + 1], [row + 1, column]].flatMap(([r = 0, c = 0]): Corner[] => {
      const value = values[r]?.[c]
      return value === undefined ? [] : [{ x: xs[c] ?? 0, y: ys[r] ?? 0, value }]
    })
    return corners.length === 4 ? corners : undefined
  }
}

function isSaddle([one, two, three, four]: readonly Corner[], level: number): boolean {
  const [a, b, c, d] = [one, two, three, four].map((corner) => (corner?.value ?? 0) >= level)
  return a === c && b === d && a !== b
}

function quarters(square: readonly Corner[]): Corner[][] {
  const mean = (of: (corner: Corner) => number): number => square.reduce((sum, corner) => sum + of(corner), 0) / square.length
  const middle = { x: mean(({ x }) => x), y: mean(({ y }) => y), value: mean(({ value }) => value) }
  return square.map((corner, at) => [corner, square[(at + 1) % square.length] ?? corner, middle])
}

function partAbove(corners: readonly Corner[], level: number): Point[] {
  return corners.flatMap((corner, at): Point[] => {
    const next = corners[(at + 1) % corners.length] ?? corner
    const kept = corner.value >= level ? [corner] : []
    return corner.value >= level === next.value >= level ? kept : [...kept, between(corner, next, level)]
  })
}

const crossings = (corners: readonly Corner[], level: number): Point[] =>
  corners.flatMap((corner, at): Point[] => {
    const next = corners[(at + 1) % corners.length] ?? corner
    return corner.value >= level === next.value >= level ? [] : [between(corner, next, level)]
  })

function between(one: Corner, other: Corner, level: number): Point {
  const share = (level - one.value) / (other.value - one.value)
  return { x: one.x + share * (other.x - one.x), y: one.y + share * (other.y - one.y) }
}

const polygonText = (points: readonly Point[] | undefined): string =>
  points === undefined || points.length < 3 ? '' : `M${points.map(({ x, y }) => `${round(x)} ${round(y)}`).join('L')}Z`
