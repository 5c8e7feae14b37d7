import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { areaSource } from '../../../src/figures/area-source.ts'
import { figureAreas } from '../../../src/figures/binding-place.ts'
import { figureValues, type FigureSource } from '../../../src/figures/read-parts.ts'
import { printedFigure } from '../../../src/report/printed-figure.ts'
import type { Figure } from '../../../src/workbook/figure.ts'
import { workbookOf, type Put } from '../workbook-of.ts'
import { bookOf, drumCells, drumFigure, LEVELS, zoneCells, zoneFigures, ZONES } from './sample-figures.ts'

const CELLS: Record<string, Put> = {
  B2: 'Diameter', C2: 48, D2: ['in', 'unit'], C3: '=1/0', D3: ['in', 'unit'], C4: 5, C5: 40, D5: ['psig', 'unit'], C6: '31 °F', C7: 'text', C8: true, C9: ['1.2 m', 'input'],
  F3: ['°F', 'unit'], F4: 10, F5: '=NA()', F6: 30, H2: 14.7, I2: ['psia', 'unit'],
}

const read = (figure: Pick<Figure, 'kind' | 'bindings'>) => figureValues({ title: '', options: {}, sheet: 'Plate', ...figure }, new Graph(workbookOf({ Plate: CELLS, Empty: {} }, { bore: 'Plate!$C$2:$D$2' })))
const drum = (diameter: string) => read({ kind: 'drum', bindings: { diameter, length: 'Plate!C2', heads: 'Plate!C7', level: 'Plate!C2' } })
const faults = (diameter: string): readonly string[] => {
  const found = drum(diameter)
  return 'faults' in found ? found.faults : []
}
const diameterOf = (reference: string): unknown => {
  const found = drum(reference)
  return 'faults' in found ? found.faults : found.parts.get('diameter')?.value
}

describe('a quantity', () => {
  const inches = expect.objectContaining({ si: expect.closeTo(1.2192, 9), shown: '48 in' })

  it.each(['Plate!C2:D2', 'Plate!C2', 'C2', '$C$2:$D$2', 'bore', "'Plate'!C2:D2"])('is read from %s: with its unit, or the unit that stands beside it', (reference) => {
    expect(diameterOf(reference)).toEqual(inches)
  })

  it('may be a text of number and unit', () => {
    expect(diameterOf('Plate!C9')).toEqual(expect.objectContaining({ si: 1.2 }))
  })

  it.each([
    ['Plate!C3:D3', /^Inside diameter, Plate!C3: the cell shows #DIV\/0!: .*; accepted: a cell with a length \(m, mm, cm, in …\) and its unit beside it$/],
    ['Plate!C4', /^Inside diameter, Plate!C4: no unit stands beside the number or at the head of its table; accepted/],
    ['Plate!C5', /^Inside diameter, Plate!C5: psig is a unit of pressure; accepted: a cell with a length/],
    ['Plate!C7', /^Inside diameter, Plate!C7: the cell holds the text "text"; accepted/],
    ['Plate!C8', /^Inside diameter, Plate!C8: the cell holds TRUE; accepted/],
    ['Plate!Z9', /^Inside diameter, Plate!Z9: the cell is empty; accepted/],
    ['Gone!C2', /^Inside diameter: there is no sheet "Gone"; there are "Plate", "Empty"$/],
    ['#REF!', /^Inside diameter: the cells it was bound to are gone; bind it to others$/],
    ['Plate!#REF!', /^Inside diameter: the cells it was bound to are gone/],
    ['no reference', /^Inside diameter: "no reference" is no reference; accepted: cells such as Drum!C5:D5, or a defined name$/],
  ])('%s says what is wrong, where, and what is accepted', (reference, message) => {
    expect(faults(reference)).toEqual([expect.stringMatching(message)])
  })

  it('in a gauge unit needs the pressure of the site', () => {
    const bindings = { room: 'Plate!F4:F4', setPoints: 'Plate!C5' }
    expect(read({ kind: 'setPoints', bindings })).toEqual({ faults: [expect.stringMatching(/^Set points, Plate!C5: psig counts from the pressure of the site: bind the atmospheric pressure of the site too; accepted: /)] })
    const withSite = read({ kind: 'setPoints', bindings: { ...bindings, site: 'Plate!H2' } })
    // 40 psig at 14.7 psia; a psi is 6894.757 Pa (NIST SP 811).
    expect('parts' in withSite && withSite.parts.get('setPoints')?.value).toEqual([expect.objectContaining({ si: expect.closeTo(54.7 * 6894.757, 0), shown: '40 psig' })])
  })

  it('that is needed and bound to nothing is asked for', () => {
    expect(read({ kind: 'drum', bindings: {} })).toEqual({ faults: expect.arrayContaining(['Heads: bound to no cell; accepted: a cell with a text']) })
  })
})

describe('a column of quantities', () => {
  const levels = (reference: string) => {
    const found = read({ kind: 'saturation', bindings: { names: 'Plate!B2', levels: reference } })
    return 'faults' in found ? found : { values: found.parts.get('levels')?.value, remarks: found.remarks }
  }
  const ten = expect.objectContaining({ shown: '10 °F' })
  const thirty = expect.objectContaining({ shown: '30 °F' })

  it.each(['Plate!F4:F6', 'Plate!F3:F6', 'Plate!F4:F900', 'Plate!F4:F1048576'])('%s takes the unit at its head, and passes over what shows an error', (reference) => {
    expect(levels(reference)).toEqual({ values: [ten, undefined, thirty], remarks: [expect.stringMatching(/^Saturation temperatures of the levels, Plate!F5: the cell shows #N\/A: .*; not drawn$/)] })
  })

  it('without anything in it is a fault', () => {
    expect(levels('Empty!A1:A9')).toEqual({ faults: [expect.stringMatching(/from Empty!A1 on: nothing to draw; accepted: a column or a row of temperature/)] })
  })
})

const onPaper = (figure: Figure, source: FigureSource): string => printedFigure({ figure, number: 1 }, source, 640).markup

describe('a source made of areas read one by one', () => {
  it('draws what the graph itself draws', () => {
    const figures = [drumFigure('Drum', 'vertical', 'Drum'), ...zoneFigures('Zones', ZONES.length)]
    const workbook = bookOf({ Drum: drumCells(48, 16, 'hemi', 14.4, LEVELS), Zones: zoneCells(ZONES) }, figures)
    const graph = new Graph(workbook)
    for (const figure of figures) {
      const areas = figureAreas(figure, workbook)
      const source = areaSource(workbook, areas, areas.map(({ sheet, area }) => graph.read(sheet, area)))
      expect(onPaper(figure, source)).toBe(onPaper(figure, graph))
      expect(onPaper(figure, source)).toContain('<svg')
    }
  })
})

describe('a figure on paper', () => {
  it('has a number, a name and what is to be seen in words, all escaped, and no style of its own', () => {
    const figure = drumFigure('Drum', 'vertical', 'A <b>"drum"</b> & more')
    const html = onPaper(figure, new Graph(bookOf({ Drum: drumCells(48, 16, 'hemi', 14.4, [['<script>', 10], ...LEVELS.slice(1)]) }, [figure])))
    expect(html).toContain('role="img"')
    expect(html).toContain('<title>A &lt;b&gt;&quot;drum&quot;&lt;/b&gt; &amp; more</title><desc>Vertical drum, 48 in inside diameter')
    expect(html).toContain('<figcaption><b>Figure 1</b> A &lt;b&gt;&quot;drum&quot;&lt;/b&gt; &amp; more</figcaption>')
    expect(html).toMatch(/<p>Vertical drum, 48 in inside diameter.*&lt;script&gt; 10 in/)
    expect(html).not.toMatch(/<script|<b>"|<b>&|style=|<details/)
  })

  it('says in words why it is not drawn', () => {
    const figure: Figure = { kind: 'drum', title: '', options: {}, bindings: { diameter: '#REF!' } }
    expect(onPaper(figure, new Graph(bookOf({ Plate: {} }, [figure])))).toMatch(/^<figure><figcaption><b>Figure 1<\/b> Drum section<\/figcaption><p>Drum section: not drawn\.<\/p><ul><li>Inside diameter: the cells it was bound to are gone; bind it to others<\/li>/)
  })
})
