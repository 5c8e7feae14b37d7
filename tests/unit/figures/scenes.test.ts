import { describe, expect, it } from 'vitest'
import fc from 'fast-check'
import { Graph } from '../../../src/calc/graph.ts'
import { drawFigure } from '../../../src/figures/draw-figure.ts'
import type { Drawing } from '../../../src/figures/drawing.ts'
import { below, circleOutline, drumOutline, lowestAt, widthAt } from '../../../src/figures/drum-shape.ts'
import type { Line, Path, Point, SceneNode } from '../../../src/figures/scene.ts'
import type { Figure } from '../../../src/workbook/figure.ts'
import { bookOf, chargeCells, chargeFigure, drumCells, drumFigure, LEVELS, loopCells, loopFigure, PARTS, zoneCells, zoneFigures, ZONES, type ZoneRow } from './sample-figures.ts'
import type { Put } from '../workbook-of.ts'

type Sheets = Record<string, Record<string, Put>>

function drawn(figure: Figure, sheets: Sheets, widthPx = 640): Drawing {
  const result = drawFigure(figure, new Graph(bookOf(sheets, [figure])), widthPx)
  if ('faults' in result) throw new Error(result.faults.join('\n'))
  return result
}

const faultsOf = (figure: Figure, sheets: Sheets): readonly string[] => {
  const result = drawFigure(figure, new Graph(bookOf(sheets, [figure])), 640)
  return 'faults' in result ? result.faults : []
}

const all = (nodes: readonly SceneNode[]): SceneNode[] => nodes.flatMap((node) => (node.is === 'group' ? all(node.nodes) : [node]))
const linesOf = ({ scene }: Drawing, look: Line['look']): Line[] => all(scene.nodes).filter((node): node is Line => node.is === 'line' && node.look === look)
const pathsOf = ({ scene }: Drawing, look: Path['look']): Path[] => all(scene.nodes).filter((node): node is Path => node.is === 'path' && node.look === look)
const textsOf = ({ scene }: Drawing): string[] => all(scene.nodes).flatMap((node) => (node.is === 'text' ? [node.text] : []))

/** The corners of a path of straight lines. */
const pointsOf = ({ d }: Path): Point[] => [...d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]) => ({ x: Number(x), y: Number(y) }))
const heights = (path: Path | undefined): readonly [top: number, bottom: number] => {
  const ys = path ? pointsOf(path).map(({ y }) => y) : []
  return [Math.min(...ys), Math.max(...ys)]
}
const area = (points: readonly Point[]): number =>
  Math.abs(points.reduce((sum, { x, y }, index) => {
    const next = points[(index + 1) % points.length] ?? { x, y }
    return sum + x * next.y - next.x * y
  }, 0)) / 2

describe('the inside of a drum', () => {
  const vessel = { diameterM: 1.2, lengthM: 4, headName: '2:1' as const, position: 'horizontal' as const }

  it('filled to a height has the area of a circle segment, A = R² acos((R − h)/R) − (R − h) √(2 R h − h²) (Jones, Calculating Tank Volume, 2003)', () => {
    fc.assert(fc.property(fc.double({ min: 0.05, max: 0.95, noNaN: true }), (share) => {
      const [radius, h] = [0.6, share * 1.2]
      const segment = radius ** 2 * Math.acos((radius - h) / radius) - (radius - h) * Math.sqrt(2 * radius * h - h ** 2)
      // The circle is drawn with 96 corners.
      expect(Math.abs(area(below(circleOutline(1.2), h)) - segment)).toBeLessThan(1e-3 * 1.2 ** 2)
    }))
  })

  it('half full shows half of its section, lying or standing', () => {
    for (const position of ['horizontal', 'vertical'] as const) {
      const outline = drumOutline({ ...vessel, position })
      const middle = position === 'horizontal' ? 0.6 : (4 + 2 * 0.3) / 2
      expect(area(below(outline, middle)) / area(outline)).toBeCloseTo(0.5, 9)
    }
  })

  it('has a section of D L and an ellipse of its two heads, π/4 D 2a (geometry)', () => {
    expect(area(drumOutline(vessel)) / (1.2 * 4 + (Math.PI / 4) * 1.2 * 0.6)).toBeCloseTo(1, 3)
  })

  it.each([['flat', 0], ['2:1', 0.25], ['hemi', 0.5], ['dished 6%', 0.169338], ['dished 10%', 0.193774]] as const)('with %s heads they are %f D deep (ASME flanged and dished, DIN 28011: computed with an independent library)', (headName, depth) => {
    const outline = drumOutline({ ...vessel, headName })
    expect(Math.max(...outline.map(({ x }) => x))).toBeCloseTo(2 + depth * 1.2, 5)
    expect(Math.max(...outline.map(({ y }) => y))).toBeCloseTo(1.2, 9)
  })

  it('is as wide as its diameter at half of its height, and its lower wall follows the head', () => {
    expect(widthAt(circleOutline(1.2), 0.6)).toEqual([expect.closeTo(-0.6, 9), expect.closeTo(0.6, 9)])
    expect(widthAt(circleOutline(1.2), 1.3)).toBeUndefined()
    expect(lowestAt(drumOutline({ ...vessel, position: 'vertical' }), 0)).toBeCloseTo(0, 9)
    expect(lowestAt(drumOutline({ ...vessel, position: 'vertical' }), 0.59)).toBeGreaterThan(0.2)
  })
})

describe('a drum section', () => {
  const vertical = drawn(drumFigure('Drum', 'vertical', 'Drum'), { Drum: drumCells(48, 16, 'hemi', 14.4, LEVELS) })
  const horizontal = drawn(drumFigure('Drum', 'horizontal', 'Drum'), { Drum: drumCells(48, 16, '2:1', 14.4, LEVELS) })

  it('has every level at its scaled height', () => {
    const insideIn = 16 * 12 + 48
    const [top, bottom] = heights(pathsOf(vertical, 'wall').find(({ d }) => d.endsWith('Z')))
    const shares = linesOf(vertical, 'level').map(({ y1 }) => (bottom - y1) / (bottom - top))
    expect(shares).toEqual(LEVELS.map(([, height]) => expect.closeTo(height / insideIn, 3)))
  })

  it('lying, it has them in both views, each to its own scale', () => {
    const walls = pathsOf(horizontal, 'wall').filter(({ d }) => d.endsWith('Z')).map(heights)
    expect(walls).toHaveLength(2)
    const levels = linesOf(horizontal, 'level')
    for (const [index, [top, bottom]] of walls.entries()) {
      const shares = levels.slice(index * LEVELS.length, (index + 1) * LEVELS.length).map(({ y1 }) => (bottom - y1) / (bottom - top))
      expect(shares).toEqual(LEVELS.map(([, height]) => expect.closeTo(height / 48, 3)))
    }
  })

  it('has liquid up to its level and a drum of the right shape', () => {
    const [top, bottom] = heights(pathsOf(vertical, 'wall').find(({ d }) => d.endsWith('Z')))
    const liquid = heights(pathsOf(vertical, 'liquid')[0])
    expect((bottom - liquid[0]) / (bottom - top)).toBeCloseTo(14.4 / (16 * 12 + 48), 3)
    const xs = pathsOf(horizontal, 'wall').filter(({ d }) => d.endsWith('Z')).flatMap((path, index) => (index === 0 ? pointsOf(path).map(({ x }) => x) : []))
    const [alongTop, alongBottom] = heights(pathsOf(horizontal, 'wall').find(({ d }) => d.endsWith('Z')))
    expect((Math.max(...xs) - Math.min(...xs)) / (alongBottom - alongTop)).toBeCloseTo((16 * 12 + 24) / 48, 2)
  })

  it('is told in words with its numbers, as the cells have them', () => {
    expect(horizontal.description).toMatch(/^Horizontal drum, 48 in inside diameter, 16 ft between tangent lines, 2:1 heads\. Liquid at 14\.4 in /)
    expect(horizontal.description).toContain('High-level cut-out 27.8 in')
    expect(horizontal.table.rows).toContainEqual(['Low alarm', '8.6 in'])
    expect(textsOf(horizontal)).toContain('Low alarm  8.6 in')
  })

  it('names what lies outside, and what makes no drum', () => {
    const high = drawn(drumFigure('Drum', 'horizontal', ''), { Drum: drumCells(48, 16, '2:1', 60, [['Too high', 50], ...LEVELS.slice(1)]) })
    expect(high.remarks).toContain('Too high, 50 in, lies outside the drum, which is 48 in high inside; not drawn.')
    expect(high.remarks).toContain('The liquid level of 60 in lies outside the drum, which is 48 in high inside.')
    expect(faultsOf(drumFigure('Drum', 'horizontal', ''), { Drum: drumCells(0, -1, 'round', 5, LEVELS) })).toEqual([
      'Inside diameter: 0 in; accepted: above 0', 'Tangent length: -1 ft; accepted: 0 or more', 'Heads: "round"; accepted: flat, 2:1, hemi, dished 6%, dished 10%',
    ])
  })
})

describe('the zone ladder', () => {
  const ladder = (zones: readonly ZoneRow[], suction = 20) => {
    const [figure] = zoneFigures('Zones', zones.length)
    if (!figure) throw new Error('there is a ladder')
    return drawn(figure, { Zones: zoneCells(zones, suction) })
  }

  it('marks a zone whose drum would be colder than house suction by words and a cross', () => {
    const drawing = ladder(ZONES)
    expect(drawing.description).toContain('Chill tunnel: room 30 °F, coil 18 °F, drum 16 °F, suction 20 °F; not served: drum 4 °F colder than house suction.')
    expect(drawing.description).toMatch(/2 of 8 not served\.$/)
    expect(textsOf(drawing)).toContain('not served: drum 4 °F colder than house suction')
    expect(pathsOf(drawing, 'wrong')).toHaveLength(4)
  })

  it('serves all once the suction is low enough', () => {
    expect(ladder(ZONES, 10).description).toMatch(/All zones are served\.$/)
    expect(pathsOf(ladder(ZONES, 10), 'wrong')).toHaveLength(0)
  })

  it('has warmer places farther to the right, in proportion', () => {
    const drawing = ladder([['Only', 50, 40, 30]], 20)
    const [rungs] = pathsOf(drawing, 'curve-main').map(pointsOf)
    const [suction, drum, coil, room] = rungs?.map(({ x }) => x) ?? []
    expect([(drum ?? 0) - (suction ?? 0), (coil ?? 0) - (drum ?? 0), (room ?? 0) - (coil ?? 0)]).toEqual([1, 1, 1].map(() => expect.closeTo(((room ?? 0) - (suction ?? 0)) / 3, 1)))
  })
})

describe('set points and saturation', () => {
  it('a coil at 24 °F at sea level has its set point at 37.87 psig (computed with an independent library)', () => {
    const cells = { ...zoneCells([['Cooler', 34, 24, 24]], 10), H3: 14.696 }
    const figure = zoneFigures('Zones', 1)[1]
    const shown = figure && drawn(figure, { Zones: cells }).table.rows[0]?.[2]
    expect(Number.parseFloat(shown ?? '')).toBeCloseTo(37.87, 1)
  })

  it('ammonia at 20 °F is at 48.21 psia (NBS Circular 142, 1923), to 0.1 %', () => {
    const figure = zoneFigures('Zones', 1)[2]
    const shown = figure && drawn(figure, { Zones: zoneCells([['Level', 34, 24, 20]]) }).table.rows[0]?.[2]
    expect(Math.abs(Number.parseFloat(shown ?? '') / 48.21 - 1)).toBeLessThan(1e-3)
    expect(shown).toMatch(/ psia$/)
  })

  it('a level where there is no saturation is left out with its reason', () => {
    const figure = zoneFigures('Zones', 2)[2]
    const drawing = figure && drawn(figure, { Zones: zoneCells([['Level', 34, 24, 20], ['Too cold', 0, 0, -200]]) })
    expect(drawing?.remarks).toEqual([expect.stringMatching(/^Too cold, -200 °F: saturation runs from -107\.\d+ °F to 212 °F; not drawn\.$/)])
  })
})

describe('the circulation balance', () => {
  it('finds where the losses reach the driving head', () => {
    const cells = { C3: ['-', 'unit'], D3: ['psi', 'unit'], E3: ['psi', 'unit'], C4: 1, C5: 2, C6: 4, D4: 3, E4: 1, E5: 2, E6: 4 } as const
    const figure: Figure = { ...loopFigure, bindings: { number: 'Loop!C4:C6', driving: 'Loop!D4', losses: 'Loop!E4:E6' } }
    expect(drawn(figure, { Loop: cells }).description).toBe('Driving head of the liquid leg and losses of the loop over the circulation number. Full load: they balance at N = 3, 3 psi.')
  })

  it('says where they do not meet', () => {
    expect(drawn(loopFigure, { Loop: loopCells }).remarks).toContain('Part load: the losses stay below the driving head up to N = 12; it balances beyond.')
    const high = Object.fromEntries(Object.entries(loopCells).map(([address, put]) => [address, address.startsWith('D') && typeof put === 'number' ? 0.1 : put]))
    expect(drawn(loopFigure, { Loop: high }).remarks).toContain('Full load: the losses exceed the driving head from N = 1 on; the loop does not run there.')
  })
})

describe('charge bars', () => {
  it('add up the rows of one name, and end with the total', () => {
    const rows = drawn(chargeFigure('Charge', PARTS.length), { Charge: chargeCells(PARTS) }).table.rows
    expect(rows).toContainEqual(['Coils', '2,240 lb', '3,030 lb'])
    expect(rows).toContainEqual(['Total', '8,350 lb', '10,850 lb'])
    expect(rows).toContainEqual(['Threshold OSHA PSM', 'at or above 10,000 lb', ''])
  })

  it('of exactly 10 000 lb end on the threshold of 10 000 lb, whose words say what that means (29 CFR 1910.119, 40 CFR 68.115)', () => {
    const drawing = drawn(chargeFigure('Charge', 1), { Charge: chargeCells([['All', 10_000, 10_000]]) })
    const limits = linesOf(drawing, 'limit').map(({ x1 }) => x1)
    const end = /^M([\d.]+) [\d.]+h([\d.]+)/.exec(pathsOf(drawing, 'bar-total')[0]?.d ?? '')
    expect(limits.filter((x) => Math.abs(x - Number(end?.[1]) - Number(end?.[2])) < 0.05)).toHaveLength(2)
    expect(textsOf(drawing)).toEqual(expect.arrayContaining(['at or above 10,000 lb: OSHA PSM', 'more than 10,000 lb: EPA RMP']))
  })

  it('of more names than can be read are added up in the last one', () => {
    const many = Array.from({ length: 60 }, (_, index) => [`Vessel ${index}`, 10, 10] as const)
    const { rows } = drawn(chargeFigure('Charge', 60), { Charge: chargeCells(many) }).table
    expect(rows).toContainEqual(['37 others together', '370 lb', '370 lb'])
    expect(rows).toContainEqual(['Total', '600 lb', '600 lb'])
  })
})
