import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contour } from '../../src/figures/contour.ts'
import type { Drawing } from '../../src/figures/drawing.ts'
import type { Faults } from '../../src/figures/read-parts.ts'
import type { Label, SceneNode } from '../../src/figures/scene.ts'
import { drawMarginBars } from '../../src/figures/margin-bars.ts'
import { drawSweepChecks } from '../../src/figures/sweep-checks.ts'
import { drawSweepField } from '../../src/figures/sweep-field.ts'
import { drawSweepLines } from '../../src/figures/sweep-lines.ts'
import { LINE_PX, STRONG, textWidth } from '../../src/figures/text-width.ts'

const width = fc.integer({ min: 320, max: 900 })
const name = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 40 })
const title = fc.constantFrom('load, TR', 'suction, °F', 'drum level above the coil’s bottom, ft')
const value = fc.option(fc.oneof(fc.double({ min: -1e3, max: 1e3, noNaN: true }), fc.constant(7)), { nil: undefined, freq: 6 })
const numbers = fc.uniqueArray(fc.integer({ min: -400, max: 400 }).map((one) => one / 10), { minLength: 2, maxLength: 8 })
/** Values for any count of points. */
const many = fc.array(value, { minLength: 64, maxLength: 64 })

function assertClear(drawn: Drawing | Faults): void {
  if ('faults' in drawn) return
  const boxes = texts(drawn.scene.nodes).map(boxOf)
  for (const [index, one] of boxes.entries()) {
    expect(one.left >= -0.5 && one.right <= drawn.scene.width + 0.5 && one.top >= -0.5 && one.bottom <= drawn.scene.height + 0.5 ? 'inside' : one).toBe('inside')
    for (const other of boxes.slice(index + 1)) expect(overlap(one, other) ? [one, other] : 'clear').toBe('clear')
  }
}

describe('no text of a sweep’s drawing lies over another or out of the drawing', () => {
  it('lines, with limits anywhere', () => {
    fc.assert(fc.property(width, title, numbers, fc.array(fc.tuple(name, many), { minLength: 1, maxLength: 4 }), fc.array(fc.tuple(name, fc.double({ min: 0, max: 1, noNaN: true })), { maxLength: 10 }), (widthPx, words, xs, lines, limits) => {
      const [from, to] = [Math.min(...xs), Math.max(...xs)]
      assertClear(drawSweepLines({
        x: { title: words, numbers: xs }, yTitle: 'diameter, in', lines: lines.map(([one, values]) => ({ name: one, values: values.slice(0, xs.length) })),
        limits: limits.map(([one, share]) => ({ name: one, at: from + share * (to - from) })),
      }, widthPx))
    }), { numRuns: 80 })
  })

  it('fields', () => {
    fc.assert(fc.property(width, title, numbers, numbers, many, fc.array(name, { maxLength: 3 }), (widthPx, words, xs, ys, values, checks) => {
      assertClear(drawSweepField({
        name: 'diameter, in', x: { title: words, numbers: xs }, y: { title: 'drum, °F', numbers: ys }, values: ys.map((_, row) => xs.map((__, column) => values[row * 8 + column])),
        limits: checks.map((one) => ({ name: one, points: ys.map((y) => ({ x: xs[0] ?? 0, y })) })),
      }, widthPx))
    }), { numRuns: 80 })
  })
})

describe('no text lies over another or out of the drawing', () => {
  it('of checks, met and not met by turns', () => {
    const check = fc.tuple(name, fc.array(fc.integer({ min: 1, max: 99 }), { maxLength: 5 }), fc.array(fc.constantFrom<'met' | 'not met' | 'none'>('met', 'not met', 'none'), { minLength: 6, maxLength: 6 }))
    fc.assert(fc.property(width, title, fc.double({ min: -500, max: 500, noNaN: true }), fc.double({ min: 1e-3, max: 1e4, noNaN: true }), fc.array(check, { minLength: 1, maxLength: 30 }), (widthPx, words, from, length, checks) => {
      assertClear(drawSweepChecks({
        title: words, from, to: from + length,
        checks: checks.map(([one, turns, says]) => {
          const ends = [0, ...turns.toSorted((a, b) => a - b), 100].map((share) => from + (share / 100) * length)
          return { name: one, stretches: ends.slice(1).map((to, at) => ({ from: ends[at] ?? from, to, says: says[at] ?? 'met' })) }
        }),
      }, widthPx))
    }), { numRuns: 80 })
  })

  it('of margins, of any number and size', () => {
    const change = fc.option(fc.double({ min: -1e5, max: 1e5, noNaN: true }), { nil: undefined, freq: 8 })
    fc.assert(fc.property(width, title, fc.double({ min: -1e4, max: 1e4, noNaN: true }), fc.array(fc.tuple(name, change, change), { minLength: 1, maxLength: 25 }), (widthPx, words, base, inputs) => {
      assertClear(drawMarginBars({ title: words, base, inputs: inputs.map(([one, less, more]) => ({ name: one, less, more })) }, widthPx))
    }), { numRuns: 80 })
  })
})

describe('a contour', () => {
  const grid = fc.tuple(fc.integer({ min: 2, max: 7 }), fc.integer({ min: 2, max: 7 }), fc.array(fc.double({ min: -10, max: 10, noNaN: true }), { minLength: 49, maxLength: 49 })).map(([columns, rows, values]) => ({
    xs: Array.from({ length: columns }, (_, i) => i * 10), ys: Array.from({ length: rows }, (_, i) => i * 10), values: Array.from({ length: rows }, (_, r) => Array.from({ length: columns }, (__, c) => values[r * 7 + c])),
  }))

  it('of a plane lies where the plane has the level', () => {
    fc.assert(fc.property(fc.double({ min: 0.1, max: 5, noNaN: true }), fc.double({ min: 0.1, max: 5, noNaN: true }), fc.double({ min: 0.1, max: 0.9, noNaN: true }), (a, b, share) => {
      const xs = [0, 20, 50, 100]
      const level = share * 100 * (a + b)
      const { along } = contour({ xs, ys: xs, values: xs.map((y) => xs.map((x) => a * x + b * y)) }, level)
      const ends = [...along.matchAll(/[ML]([\d.]+) ([\d.]+)/g)].map(([, x, y]) => a * Number(x) + b * Number(y))
      expect(ends.length).toBeGreaterThan(0)
      for (const end of ends) expect(Math.abs(end - level)).toBeLessThanOrEqual(0.01 * (a + b))
    }))
  })

  it('parts the field: what lies above a level and what lies above its negative make up the whole', () => {
    fc.assert(fc.property(grid, fc.double({ min: -9, max: 9, noNaN: true }), (one, level) => {
      // At the level itself a corner belongs to both.
      fc.pre(one.values.flat().every((number) => Math.abs((number ?? 0) - level) > 1e-6))
      const whole = (one.xs.length - 1) * (one.ys.length - 1) * 100
      const negative = { ...one, values: one.values.map((row) => row.map((number) => -(number ?? 0))) }
      expect(areaOf(contour(one, level).above) + areaOf(contour(negative, -level).above)).toBeCloseTo(whole, 0)
    }))
  })

  it('is the whole field below all of it, and nothing above', () => {
    fc.assert(fc.property(grid, (one) => {
      expect(areaOf(contour(one, -11).above)).toBeCloseTo((one.xs.length - 1) * (one.ys.length - 1) * 100, 6)
      expect(contour(one, 11)).toEqual({ above: '', along: '', rightmost: undefined })
    }))
  })
})

it('says why nothing is drawn', () => {
  expect(drawSweepField({ name: 'd', x: { title: 'x', numbers: [1] }, y: { title: 'y', numbers: [1, 2] }, values: [[1], [2]], limits: [] }, 400)).toMatchObject({ faults: [expect.stringContaining('two or more along each')] })
  expect(drawSweepLines({ x: { title: 'x', numbers: [1, 2] }, yTitle: 'y', lines: [{ name: 'a', values: [undefined, undefined] }], limits: [] }, 400)).toMatchObject({ faults: [expect.stringContaining('no number to draw')] })
})

/** Of polygons none of which lies over another. */
const areaOf = (d: string): number =>
  d.split('Z').filter(Boolean).reduce((sum, polygon) => {
    const points = [...polygon.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }))
    return sum + Math.abs(points.reduce((twice, { x, y }, at) => {
      const next = points[(at + 1) % points.length] ?? { x, y }
      return twice + x * next.y - next.x * y
    }, 0)) / 2
  }, 0)

const texts = (nodes: readonly SceneNode[]): Label[] => nodes.flatMap((node) => (node.is === 'group' ? texts(node.nodes) : node.is === 'text' ? [node] : []))

interface Box {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

function boxOf({ text, x, y, anchor, look }: Label): Box {
  const wide = textWidth(text) * (look === 'text-strong' ? STRONG : 1)
  const left = { start: x, middle: x - wide / 2, end: x - wide }[anchor]
  return { text, left, right: left + wide, top: y - LINE_PX / 2 + 1, bottom: y + LINE_PX / 2 - 1 }
}

const overlap = (one: Box, other: Box): boolean => one.left < other.right - 0.5 && other.left < one.right - 0.5 && one.top < other.bottom - 0.5 && other.top < one.bottom - 0.5
