import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { drawFigure } from '../../src/figures/draw-figure.ts'
import { linearScale, logTicks, roundRange, ticks } from '../../src/figures/scale.ts'
import type { Label, SceneNode } from '../../src/figures/scene.ts'
import { spread } from '../../src/figures/spread.ts'
import { fitted, inLines, LINE_PX, STRONG, textWidth } from '../../src/figures/text-width.ts'
import { printedFigure } from '../../src/report/printed-figure.ts'
import { figureKind, figureKinds } from '../../src/workbook/figure-kinds.ts'
import type { Figure } from '../../src/workbook/figure.ts'
import { bookOf, chargeCells, chargeFigure, drumCells, drumFigure, loopCells, loopFigure, zoneCells, zoneFigures } from '../unit/figures/sample-figures.ts'
import type { Put } from '../unit/workbook-of.ts'

const wish = fc.record({ at: fc.double({ min: -200, max: 600, noNaN: true }), size: fc.double({ min: 1, max: 60, noNaN: true }) })

describe('labels along a line', () => {
  it('never overlap, and stand in the order of their wishes', () => {
    fc.assert(fc.property(fc.array(wish, { maxLength: 20 }), (wishes) => {
      const middles = spread(wishes, 0, 300)
      const placed = wishes.map(({ at, size }, index) => ({ at, size, middle: middles[index] ?? NaN })).toSorted((one, other) => one.middle - other.middle)
      for (const [index, one] of placed.entries()) {
        const next = placed[index + 1]
        if (!next) continue
        expect(next.middle - one.middle).toBeGreaterThanOrEqual((one.size + next.size) / 2 - 1e-6)
        expect(next.at).toBeGreaterThanOrEqual(one.at)
      }
    }))
  })

  it('keep within their bounds as long as there is room', () => {
    fc.assert(fc.property(fc.array(wish, { maxLength: 20 }), (wishes) => {
      const room = wishes.reduce((all, { size }) => all + size, 0) + 1
      for (const [index, middle] of spread(wishes, 0, room).entries()) {
        const half = (wishes[index]?.size ?? 0) / 2
        expect(middle - half).toBeGreaterThanOrEqual(-1e-6)
        expect(middle + half).toBeLessThanOrEqual(room + 1e-6)
      }
    }))
  })

  it('stand where they wish where nothing is in the way', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { maxLength: 10 }), (shifts) => {
      const wishes = shifts.map((shift, index) => ({ at: 20 + index * 22 + shift, size: 20 }))
      expect(spread(wishes, 0, 400)).toEqual(wishes.map(({ at }) => expect.closeTo(at, 9)))
    }))
  })

  it('two of one wish part evenly', () => {
    expect(spread([{ at: 100, size: 10 }, { at: 100, size: 10 }], 0, 300)).toEqual([95, 105])
  })
})

describe('a text cut to a width', () => {
  it('fits it, if one letter does', () => {
    fc.assert(fc.property(fc.string({ maxLength: 60 }), fc.integer({ min: 30, max: 300 }), (text, width) => {
      expect(textWidth(fitted(text, width))).toBeLessThanOrEqual(width)
      for (const line of inLines(text, width)) expect(textWidth(line)).toBeLessThanOrEqual(width)
    }))
  })
})

describe('axes', () => {
  const span = fc.tuple(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.double({ min: 1e-3, max: 1e6, noNaN: true })).map(([from, length]) => [from, from + length] as const)

  it('have a few round numbers within their range, evenly spaced', () => {
    fc.assert(fc.property(span, fc.integer({ min: 2, max: 10 }), ([from, to], count) => {
      const found = ticks(from, to, count)
      expect(found.length).toBeLessThanOrEqual(count + 1)
      expect(found.length).toBeGreaterThanOrEqual(Math.floor(count / 2.5) - 1)
      for (const tick of found) expect(tick).toBeGreaterThanOrEqual(from - 1e-6 * (to - from))
      for (const tick of found) expect(tick).toBeLessThanOrEqual(to + 1e-6 * (to - from))
    }))
  })

  it('widened to round numbers hold what they held', () => {
    fc.assert(fc.property(fc.array(fc.double({ min: -1e6, max: 1e6, noNaN: true }), { minLength: 1, maxLength: 8 }), (values) => {
      const [from, to] = roundRange(values, 5)
      const slack = 1e-9 * Math.max(1, Math.abs(from), Math.abs(to))
      for (const value of values) expect(value >= from - slack && value <= to + slack).toBe(true)
      expect(to).toBeGreaterThan(from)
      expect(linearScale(from, to, 0, 100).px(to)).toBeCloseTo(100, 6)
    }))
  })

  it('of powers have 1, 2 and 5 of each', () => {
    expect(logTicks(7, 250)).toEqual([10, 20, 50, 100, 200])
  })
})

const temperature = fc.integer({ min: -60, max: 90 })
const name = fc.string({ unit: 'grapheme', maxLength: 40 })

describe('no text of a drawing lies over another or out of the drawing', () => {
  const width = fc.integer({ min: 320, max: 900 })
  const assertClear = (figure: Figure, cells: Record<string, Record<string, Put>>, widthPx: number): void => {
    const drawn = drawFigure(figure, new Graph(bookOf(cells, [figure])), widthPx)
    if ('faults' in drawn) return
    const boxes = texts(drawn.scene.nodes).map(boxOf)
    for (const [index, one] of boxes.entries()) {
      expect(one.left >= -0.5 && one.right <= drawn.scene.width + 0.5 && one.top >= -0.5 && one.bottom <= drawn.scene.height + 0.5 ? 'inside' : one).toBe('inside')
      for (const other of boxes.slice(index + 1)) expect(overlap(one, other) ? [one, other] : 'clear').toBe('clear')
    }
  }

  it.each(['horizontal', 'vertical'] as const)('%s drums, with levels anywhere', (position) => {
    fc.assert(fc.property(width, fc.integer({ min: 6, max: 120 }), fc.integer({ min: 1, max: 40 }), fc.constantFrom('flat', '2:1', 'hemi', 'dished 6%'), fc.array(fc.tuple(name, fc.double({ min: 0, max: 1, noNaN: true })), { minLength: 5, maxLength: 5 }), fc.boolean(), (widthPx, diameter, length, heads, shares, sized) => {
      const levels = shares.map(([words, share]) => [words, Math.round(share * diameter * 10) / 10] as const)
      assertClear(drumFigure('Drum', position, 'Drum', sized), { Drum: drumCells(diameter, length, heads, levels[0]?.[1] ?? 0, levels) }, widthPx)
    }), { numRuns: 60 })
  })

  it('zones, set points and saturation levels, of any number and name', () => {
    const zone = fc.tuple(name.filter((text) => text.trim() !== ''), temperature, temperature, temperature)
    fc.assert(fc.property(width, fc.array(zone, { minLength: 1, maxLength: 14 }), temperature, fc.nat(2), (widthPx, zones, suction, which) => {
      const figure = zoneFigures('Zones', zones.length)[which]
      if (figure) assertClear(figure, { Zones: zoneCells(zones, suction) }, widthPx)
    }), { numRuns: 60 })
  })

  it('charges, of none to more than thresholds', () => {
    const row = fc.tuple(name, fc.integer({ min: 0, max: 30_000 }), fc.integer({ min: 0, max: 40_000 }))
    fc.assert(fc.property(width, fc.array(row, { minLength: 1, maxLength: 30 }), (widthPx, rows) => {
      assertClear(chargeFigure('Charge', rows.length), { Charge: chargeCells(rows) }, widthPx)
    }), { numRuns: 60 })
  })

  it('circulation', () => {
    fc.assert(fc.property(width, (widthPx) => assertClear(loopFigure, { Loop: loopCells }, widthPx)), { numRuns: 20 })
  })
})

describe('whatever a figure is bound to', () => {
  const content: fc.Arbitrary<Put> = fc.oneof(
    fc.double({ min: -1e12, max: 1e12, noNaN: true }), temperature, fc.constantFrom<Put>('2:1', 'hemi', '=1/0', '=NA()', true, false, 'Zone', '31 °F', ['°F', 'unit'], ['in', 'unit'], ['psig', 'unit'], ['psia', 'unit'], ['lb', 'unit'], ['lb', 'unit'], null),
  )
  const cells = fc.dictionary(fc.tuple(fc.constantFrom(...'ABCD'), fc.integer({ min: 1, max: 6 })).map((parts) => parts.join('')), content, { maxKeys: 20 })
  const binding = fc.constantFrom('S!A1', 'S!A1:B1', 'S!A1:A6', 'S!A2:B6', 'S!A1:D1', 'S!A:A', 'S!3:3', 'S!B2:D5', 'Gone!A1', '#REF!', 'S!#REF!', 'name', 'nonsense (', 'A1')

  it('it is drawn or says why not, and never fails', () => {
    const figure: fc.Arbitrary<Figure> = fc.constantFrom(...figureKinds).chain((kind) =>
      fc.array(binding, { minLength: 14, maxLength: 14 }).map((bindings): Figure => ({
        kind, title: '<b>&', options: {}, bindings: Object.fromEntries(Object.keys(figureKind(kind).parts).map((part, index) => [part, bindings[index] ?? 'S!A1'])),
      })))
    fc.assert(fc.property(figure, cells, (one, held) => {
      const html = printedFigure({ figure: one, number: 7 }, new Graph(bookOf({ S: held }, [one])), 640).markup
      expect(html).toMatch(/^<figure><figcaption><b>Figure 7<\/b> &lt;b&gt;&amp;<\/figcaption>/)
      expect(html).not.toMatch(/NaN|Infinity|undefined|style=/)
      expect(html.includes('<svg') !== html.includes(': not drawn.</p>')).toBe(true)
    }), { numRuns: 200 })
  })
})

interface Box {
  readonly text: string
  readonly left: number
  readonly right: number
  readonly top: number
  readonly bottom: number
}

const texts = (nodes: readonly SceneNode[]): Label[] => nodes.flatMap((node) => (node.is === 'group' ? texts(node.nodes) : node.is === 'text' ? [node] : []))

/** Widths are those that texts have at most. */
function boxOf({ text, x, y, anchor, look }: Label): Box {
  const width = textWidth(text) * (look === 'text-strong' ? STRONG : 1)
  const left = { start: x, middle: x - width / 2, end: x - width }[anchor]
  return { text, left, right: left + width, top: y - LINE_PX / 2 + 1, bottom: y + LINE_PX / 2 - 1 }
}

const overlap = (one: Box, other: Box): boolean => one.left < other.right - 0.5 && other.left < one.right - 0.5 && one.top < other.bottom - 0.5 && other.top < one.bottom - 0.5
