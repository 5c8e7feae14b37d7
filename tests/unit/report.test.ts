import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { CAUTIONS } from '../../functions/cautions.ts'
import { functionByName } from '../../functions/catalogue.ts'
import { Graph } from '../../src/calc/graph.ts'
import type { AreaValues } from '../../src/calc/values.ts'
import { layOut, type ColumnNeed } from '../../src/report/bands.ts'
import { element } from '../../src/pages/html.ts'
import { outlineOf, printedRowCount } from '../../src/report/outline.ts'
import { cssString } from '../../src/pages/page-rules.ts'
import { printableWidth } from '../../src/pages/paper.ts'
import { estimatedPages } from '../../src/report/page-estimate.ts'
import { MANY_ROWS, printedRows } from '../../src/report/print-size.ts'
import type { Pages } from '../../src/pages/pages.ts'
import { makeReport } from '../../src/report/report.ts'
import { unitsInUse } from '../../src/workbook/units-in-use.ts'
import { joined, valuesNeeded } from '../../src/report/values-needed.ts'
import type { Sheet, Workbook } from '../../src/workbook/document.ts'
import type { Figure } from '../../src/workbook/figure.ts'
import { bookOf, drumCells, drumFigure, LEVELS, zoneCells, zoneFigures, ZONES } from './figures/sample-figures.ts'
import { sheetOf, workbookOf } from './workbook-of.ts'

const FIGURE_STYLE = readFileSync(new URL('../../src/figures/figures.css', import.meta.url), 'utf8')

function reportOf(workbook: Workbook, sheets = workbook.sheets.map(({ name }) => name)): Pages {
  const graph = new Graph(workbook)
  const values = new Map([...valuesNeeded(workbook, new Set(sheets))].map(([sheet, areas]): [string, AreaValues] =>
    [sheet, joined(areas.map((area) => [area, graph.read(sheet, area)]))]))
  const settings = workbook.report ?? { preparedBy: '', checkedBy: '', paper: 'Letter' }
  return makeReport({ workbook, values, states: graph.states(), sheets: new Set(sheets), settings, date: '2026-01-31', figureStyle: FIGURE_STYLE })
}

const markupOf = (workbook: Workbook, sheets?: readonly string[]): string => reportOf(workbook, sheets && [...sheets]).markup.markup

/** Of a workbook of one sheet, what is printed of the sheet. */
const sheetMarkup = (cells: Parameters<typeof sheetOf>[1], change: (sheet: Sheet) => Sheet = (sheet) => sheet): string => {
  const workbook = workbookOf({ Duty: cells })
  return markupOf({ ...workbook, sheets: workbook.sheets.map(change) }).split('<section class="sheet')[1] ?? ''
}

describe('the builder of the report', () => {
  it('escapes every text and value of an attribute, and keeps what it has made', () => {
    const inner = element('b', {}, `<script>"&'`)
    expect(element('p', { title: `"><x a='&'`, hidden: undefined }, 'a < b', inner, undefined, ['c', 'd']).markup).toBe(
      '<p title="&quot;&gt;&lt;x a=&#39;&amp;&#39;">a &lt; b<b>&lt;script&gt;&quot;&amp;&#39;</b>cd</p>',
    )
  })

  it('writes a text of the page margins so that nothing in it can end the string or the style', () => {
    expect(cssString('Drum "A"\n</style>\\')).toBe('"Drum \\22 A\\22 \\a \\3c \\2f style\\3e \\5c "')
    expect(cssString('Größe 5 – 7')).toBe('"Größe 5 – 7"')
  })
})

describe('the cells of a sheet on paper', () => {
  it('have the look of their roles, and numbers as in the grid', () => {
    const markup = sheetMarkup({
      A1: ['Drum', 'title'], A2: ['Duty', 'heading'], A3: ['Load', 'label'], B3: 84.123456, C3: ['TR', 'unit'],
      A4: ['Twice', 'label'], B4: '=B3*2', C4: ['TR', 'unit'], D4: ['by hand', 'note'],
    })
    expect(markup).toContain('<td class="role-title" colspan="5">Drum</td>')
    expect(markup).toContain('<tr class="row-heading"><td class="role-heading" colspan="5">Duty</td></tr>')
    expect(markup).toContain('<td class="role-label">Load</td><td class="role-input number"><span>84.123</span></td><td class="role-unit">TR</td>')
    // The place of the third decimal, unseen.
    expect(markup).toContain('<td class="role-result number">168.25<i>0</i></td>')
    expect(markup).toContain('<td class="role-note" colspan="2">by hand</td>')
  })

  it('have decimal points under each other within a block, whatever stands between', () => {
    const markup = sheetMarkup({ A1: 5, A2: ['none', 'input'], A3: 1.25, A5: 7 })
    expect(markup).toContain('>5<i>.00</i></span></td>')
    expect(markup).toMatch(/number"><span>1\.25<.*number"><span>7</)
  })

  it('are escaped', () => {
    const markup = sheetMarkup({ A1: '<img src=x onerror=alert(1)>', A2: `="<b>"&"&amp;"` })
    expect(markup).toContain('&lt;img src=x onerror=alert(1)&gt;')
    expect(markup).toContain('&lt;b&gt;&amp;amp;')
    expect(markup).not.toContain('<img')
  })

  it('say met or not in words beside a mark of another shape', () => {
    const markup = sheetMarkup({ A1: ['=5>3', 'check'], A2: ['=5>30', 'check'], A3: ['=1/0', 'check'], A4: [null, 'check'] })
    const shapes = [...markup.matchAll(/<svg class="mark".*?<\/svg>([^<]*)/g)]
    expect(shapes.map(([, words]) => words)).toEqual(['met, 2 to spare', 'not met by 25', '#DIV/0!'])
    expect(new Set(shapes.map(([whole, words = '']) => whole.replace(words, ''))).size).toBe(3)
  })

  it('leave room to fill in, and say in numbered footnotes what their notes and errors say', () => {
    const markup = sheetMarkup({ A1: ['Load', 'label'], B1: [null, 'input'], A2: 7, B2: '=1/0', A3: [null, 'label'] }, (sheet) => ({
      ...sheet,
      rows: sheet.rows.map((row) => row?.map((cell) => (cell?.content === 7 ? { ...cell, note: 'from the <list>' } : cell))),
    }))
    expect(markup).toContain('<td class="role-input"><span></span></td>')
    expect(markup).toContain('7<sup>1</sup>')
    expect(markup).toMatch(/#DIV\/0!<sup>2<\/sup>/)
    expect(markup).toMatch(/<ol class="footnotes"><li><b>A2<\/b> from the &lt;list&gt;<\/li><li><b>B2<\/b> #DIV\/0!: .+<\/li><\/ol>/)
  })

  it('come in the rows and columns that hold something, those in view at the head of every page', () => {
    const markup = sheetMarkup({ B1: ['Drums', 'title'], B2: ['Zone', 'heading'], D2: ['Load', 'heading'], B4: 'Cooler', D4: 5, B900000: 'far' }, (sheet) => ({ ...sheet, frozen: [2, 1] }))
    expect(markup).toMatch(/<thead><tr class="row-title"><th class="role-title" colspan="\d">Drums<\/th>.*<th class="role-heading( over-numbers)?"[^>]*>Load<\/th>.*<\/thead>/)
    // Zone and Load; a place for what runs on at the right where the page is wider than they are.
    expect(markup.match(/<col>/g)).toHaveLength(3)
    expect(markup.match(/<tr/g)).toHaveLength(4)
    expect(markup.match(/<tbody/g)).toHaveLength(2)
  })

  it('are not parted so that a row stands alone: the first three and the last four of a block stay together', () => {
    const cells = Object.fromEntries(Array.from({ length: 30 }, (_, index) => [`A${index + 1}`, index]))
    const bodies = sheetMarkup(cells).split('<tbody').slice(1)
    expect(bodies.map((body) => [body.startsWith(' class="together"'), body.match(/<tr/g)?.length])).toEqual([[true, 3], [false, 23], [true, 4]])
  })
})

describe('a sheet wider than a page', () => {
  // Two notes of this many words on each of 12 columns are wider than a turned page.
  const wide = Object.fromEntries(Array.from({ length: 12 }, (_, index) => 'CDEFGHIJKLMN'[index] ?? '').flatMap((letter, index): [string, number | [string, 'heading' | 'unit']][] => [
    [`${letter}2`, [`Heading${index}`, 'heading']], [`${letter}3`, ['lb/min', 'unit']], [`${letter}5`, 1234567.125 + index], [`${letter}6`, index],
  ]))
  const markup = sheetMarkup({
    A1: ['Drums', 'title'], A2: ['Drum', 'heading'], A5: 'Drum A', A6: 'Drum B', A8: 'A remark', A9: ['Only here', 'label'], C9: 5, ...wide,
  }, (sheet) => ({ ...sheet, frozen: [4, 1] }))
  const parts = markup.split('<div class="part').slice(1)

  it('is printed in parts that name their columns, each with the headings and the names of its rows', () => {
    expect(parts.length).toBeGreaterThan(1)
    for (const [index, part] of parts.entries()) {
      expect(part).toMatch(new RegExp(`Duty: columns A.* to [A-N] \\(part ${index + 1} of ${parts.length}\\)`))
      for (const name of ['Drum A', 'Drum B', 'Drum<', 'lb/min']) expect(part).toContain(name)
    }
    for (let index = 0; index < 12; index++) expect(parts.filter((part) => part.includes(`>Heading${index}<`))).toHaveLength(1)
  })

  it('leaves rows out of further parts that have nothing in their columns', () => {
    for (const only of ['Drums', 'A remark', 'Only here']) expect(parts.map((part) => part.includes(`>${only}<`))).toEqual(parts.map((_, index) => index === 0))
  })
})

describe('a long table with headings of its own', () => {
  const rows = (from: number) => Object.fromEntries(Array.from({ length: 12 }, (_, index): [string, number][] => [[`A${from + index}`, index], [`B${from + index}`, index], [`C${from + index}`, index]]).flat())
  const heads = (row: number) => Object.fromEntries(['A', 'B', 'C'].flatMap((letter): [string, [string, 'heading' | 'unit']][] => [[`${letter}${row}`, [`Head ${letter}${row}`, 'heading']], [`${letter}${row + 1}`, ['in', 'unit']]]))

  it('has them at the head of every page, the sheet\'s own at its first', () => {
    const markup = sheetMarkup({ A1: ['Diameters', 'title'], ...heads(3), ...rows(5), ...heads(20), ...rows(23), A40: 'The end' }, (sheet) => ({ ...sheet, frozen: [1, 0] }))
    const tables = markup.split('<table').slice(1)
    expect(tables.map((table) => /<thead>(.*)<\/thead>/.exec(table)?.[1]?.match(/Diameters|Head A\d+|>in</g))).toEqual([['Diameters', 'Head A3', '>in<', '>in<', '>in<'], ['Head A20', '>in<', '>in<', '>in<'], undefined])
    expect(tables[2]).toContain('The end')
  })

  it('has of many rows that stay in view the column headings there, as a browser repeats no head of more than a quarter of a page', () => {
    const notes = Object.fromEntries([2, 3, 4, 5].map((row) => [`A${row}`, `Note ${row}`]))
    const markup = sheetMarkup({ A1: ['Saturation', 'title'], ...notes, ...heads(6), ...rows(8) }, (sheet) => ({ ...sheet, frozen: [7, 0] }))
    const tables = markup.split('<table').slice(1)
    expect(tables.map((table) => [table.includes('<thead>'), /Note 5/.test(table), /<thead>.*Head A6.*<\/thead>/.test(table)])).toEqual([[false, true, false], [true, false, true]])
  })
})

describe('figures', () => {
  const [zones, setPoints, levels] = zoneFigures('Zones', ZONES.length)
  const levelsOfAll: readonly Figure[] = levels ? [{ kind: levels.kind, title: levels.title, options: {}, bindings: levels.bindings }] : []
  const notDrawn: Figure = { kind: 'drum', title: '', sheet: 'Zones', options: {}, bindings: { diameter: '#REF!' } }
  const figures = [...levelsOfAll, ...[setPoints, zones].flatMap((figure) => figure ?? []), drumFigure('Drum', 'vertical', 'A <b>"drum"</b> & more'), notDrawn]
  const workbook = bookOf({ Drum: { ...drumCells(48, 16, 'hemi', 14.4, LEVELS), B1: ['Drum 7', 'title'] }, Zones: { ...zoneCells(ZONES), B1: ['All zones', 'title'] } }, figures)
  const captions = (markup: string) => [...markup.matchAll(/<figcaption><b>(.*?)<\/b> (.*?)<\/figcaption>/g)].map(([, number, name]) => [number, name])

  it('stand after the rows of their sheets, those of none at the end, numbered as they come', () => {
    const [, , drum = '', zonesPart = '', atEnd = ''] = markupOf(workbook).split('<section')
    expect(captions(drum)).toEqual([['Figure 1', 'A &lt;b&gt;&quot;drum&quot;&lt;/b&gt; &amp; more']])
    expect(captions(zonesPart)).toEqual([['Figure 2', 'Regulator set points'], ['Figure 3', 'Zones from room to house suction'], ['Figure 4', 'Drum section']])
    expect(captions(atEnd)).toEqual([['Figure 5', 'Levels of the plant']])
    expect(atEnd).toContain('<h2>Figures</h2>')
    for (const [part, title] of [[drum, 'Drum 7'], [zonesPart, 'All zones']] as const) expect(part.indexOf('<figure')).toBeGreaterThan(part.indexOf(title))
  })

  it('say what is to be seen, and why one is not drawn, in words; nothing of them is for pressing', () => {
    const markup = markupOf(workbook)
    expect(markup).toContain('<p>Vertical drum, 48 in inside diameter, 16 ft between tangent lines, hemi heads. Liquid at 14.4 in above the lowest inside point.')
    expect(markup).toContain('<p>Drum section: not drawn.</p><ul><li>Inside diameter: the cells it was bound to are gone; bind it to others</li>')
    expect(markup.match(/class="figure-drawing"/g)).toHaveLength(4)
    expect(markup).not.toMatch(/<details|<b>"| style=/)
  })

  it('of a sheet that is not printed are left out; those of none are drawn from sheets that are not', () => {
    const markup = markupOf(workbook, ['Drum'])
    expect(captions(markup)).toEqual([['Figure 1', expect.stringContaining('drum')], ['Figure 2', 'Levels of the plant']])
    expect(markup).toContain('Ripening room: 38.5 °F')
  })

  it('are ink on paper: no colour of the screen reaches them', () => {
    const { style } = reportOf(workbook)
    const read = new Set([...FIGURE_STYLE.matchAll(/var\((--(?!figure-)[a-z-]+)/g)].map(([, name]) => name ?? ''))
    expect(read.size).toBeGreaterThan(5)
    for (const name of read) expect(style).toContain(`${name}: initial;`)
  })
})

describe('what stands before the sheets', () => {
  const workbook: Workbook = {
    ...workbookOf({
      Duty: { A1: ['Load', 'label'], B1: 84, C1: ['TR', 'unit'], A2: ['Enough', 'label'], B2: ['=B1>80', 'check'] },
      Site: { A1: ['Pressure', 'label'], B1: '=SITE.PRESSURE("2000 ft",C1)', C1: ['psia', 'unit'], A3: ['High', 'label'], B3: ['=B1>200', 'check'] },
    }),
    title: 'Drum <1>', purpose: 'To & fro', report: { preparedBy: 'A. Writer', checkedBy: '', paper: 'A4' },
  }
  const markup = markupOf(workbook)
  const front = markup.split('<section class="sheet')[0] ?? ''

  it('names the workbook, its purpose, date, units and people, with room to sign', () => {
    expect(front).toContain('<h1>Drum &lt;1&gt;</h1>')
    expect(front).toContain('To &amp; fro')
    expect(front).toContain('2026-01-31')
    expect(front).toContain('US units')
    expect(front).toContain('A. Writer')
    expect(front.match(/Signature/g)).toHaveLength(2)
  })

  it('has every check with verdict and margin, and every sheet with its state, whether printed or not', () => {
    const some = markupOf(workbook, ['Duty']).split('<section class="sheet')
    expect(some).toHaveLength(2)
    for (const text of [front, some[0] ?? '']) {
      expect(text).toContain('1 of 2 met, 1 not met')
      expect(text).toMatch(/<td>Duty<\/td><td>B2<\/td><td>Enough<\/td><td class="met"><svg.*?<\/svg>met, 4 TR \(5 %\) to spare/)
      expect(text).toMatch(/<td>Site<\/td><td>B3<\/td><td>High<\/td><td class="not-met"><svg.*?<\/svg>not met by/)
    }
    expect(some[0]).toMatch(/<td>Site<\/td>.*?1 of 1 checks not met<\/td><td>not printed<\/td>/)
    expect(front).not.toContain('not printed')
  })

  it('lists the functions that are called, with equation, sources and how sure they are, and no others', () => {
    const called = functionByName('SITE.PRESSURE')
    expect(front).toContain('SITE.PRESSURE')
    expect(front).toContain(called?.gives)
    expect(front).toContain(`${called?.sources[0]?.cite} [${called?.sources[0]?.confidence}]`)
    expect(front).not.toContain('SAT.PRESSURE')
  })

  it('has all cautions, and no style in the markup', () => {
    for (const caution of CAUTIONS) expect(front).toContain(caution)
    expect(markup).not.toMatch(/ style=|<style|<script| on\w+=/)
  })

  it('a check without a verdict, and one named by its row in a table, are told of', () => {
    const table = markupOf(workbookOf({ Drums: { A1: ['Drum', 'heading'], B1: ['Full', 'heading'], A2: ['Drum 7', 'input'], B2: ['=1/0', 'check'], C2: ['=TRUE', 'check'] } }))
    expect(table).toContain('<td>Drum 7: Full</td>')
    expect(table).toContain('no verdict, #DIV/0!:')
    expect(table).toContain('1 of 2 met, 1 without verdict')
  })
})

describe('the pages', () => {
  const workbook: Workbook = { ...workbookOf({ Duty: { A1: 1 } }), title: 'Drum "A"', report: { preparedBy: 'A. Writer', checkedBy: 'B. Reader', paper: 'A4' } }

  it('have title, people, date, number and caution in their margins, and the paper chosen', () => {
    const { pages } = reportOf(workbook)
    expect(pages).toContain('size: A4 portrait')
    expect(pages).toContain('"Prepared by A. Writer · Checked by B. Reader · 2026-01-31"')
    expect(pages).toContain('counter(page) " / " counter(pages)')
    expect(pages).toContain('Engineering estimate, not a compliance finding')
    expect(pages).toMatch(/@page sheet-1 \{ size: A4 portrait; @top-left \{ content: "Drum \\22 A\\22 {3}– {2}Duty"/)
  })

  it('are turned where the columns of a sheet do not fit upright, and columns go on further pages where even that is too narrow', () => {
    const need = (column: number, least: number): ColumnNeed => ({ column, least, wanted: least * 2, isShort: true, followsOn: column % 2 === 1 })
    const columns = (count: number): ColumnNeed[] => Array.from({ length: count }, (_, column) => need(column, 80))
    expect(layOut(columns(5), 1, 'Letter')).toMatchObject({ orientation: 'portrait', bands: [{ columns: { length: 5 } }] })
    expect(layOut(columns(10), 1, 'Letter')).toMatchObject({ orientation: 'landscape', bands: [{ columns: { length: 10 } }] })
    const { orientation, bands } = layOut(columns(30), 2, 'Letter')
    expect(orientation).toBe('landscape')
    expect(bands.map((band) => band.columns.slice(0, 2).map(({ column }) => column))).toEqual(bands.map(() => [0, 1]))
    expect(bands.flatMap((band) => band.columns.slice(2).map(({ column }) => column))).toEqual(columns(30).slice(2).map(({ column }) => column))
    // Of one value and its unit (an odd column) neither begins a band alone.
    expect(bands.map((band) => band.columns[2]?.column).every((column) => column !== undefined && column % 2 === 0)).toBe(true)
    for (const band of bands) expect(band.columns.reduce((sum, { width }) => sum + width, 0)).toBeLessThanOrEqual(printableWidth('Letter', 'landscape') + 0.5)
  })

  it('one column wider than any page is made as wide as the page', () => {
    const { bands } = layOut([{ column: 0, least: 5000, wanted: 5000, isShort: true, followsOn: false }], 0, 'A4')
    expect(bands).toHaveLength(1)
    expect(bands[0]?.columns[0]?.width).toBeCloseTo(printableWidth('A4', 'landscape'), 6)
  })
})

describe('the values it needs', () => {
  const areasOf = (sheet: Sheet, isPrinted: boolean, figures: readonly Figure[] = []) =>
    valuesNeeded({ ...workbookOf({}), sheets: [sheet], figures }, new Set(isPrinted ? [sheet.name] : [])).get(sheet.name)
  const sheet = sheetOf('Duty', { B2: 1, C3: ['=TRUE', 'check'], A20: 2, A900000: 'far', B903000: 'farther' })

  it('are those of what is printed, without the empty rows before a far cell, and of a sheet that is not printed those of its checks', () => {
    expect(areasOf(sheet, true)).toEqual([[1, 19], [899_999, 899_999], [902_999, 902_999]].map(([top, bottom]) => ({ top, left: 0, bottom, right: 2 })))
    expect(areasOf(sheet, false)).toEqual([{ top: 2, left: 0, bottom: 2, right: 2 }])
  })

  it('come in pieces of 2 000 rows and are joined as if read at once', () => {
    const long = sheetOf('Long', Object.fromEntries(Array.from({ length: 4500 }, (_, index) => [`B${index + 2}`, index])))
    const areas = areasOf(long, true) ?? []
    expect(areas.map(({ top, bottom }) => [top, bottom])).toEqual([[1, 2000], [2001, 4000], [4001, 4500]])
    const { values } = joined(areas.map((area) => [area, { values: Array.from({ length: area.bottom - area.top + 1 }, (_, offset) => [null, area.top + offset]), checks: new Map() }]))
    expect([values[1], values[2001], values[4500]]).toEqual([[null, 1], [null, 2001], [null, 4500]])
  })
})

describe('how long it becomes', () => {
  it('counts the rows that hold something, wherever they are', () => {
    const sheet = sheetOf('Duty', { A1: 1, C3: 'x', A1000000: 'far', A5: [null, 'label'], A6: [null, 'input'] })
    expect(printedRowCount(sheet)).toBe(4)
    expect(outlineOf(sheet).columns).toEqual([0, 2])
    expect(printedRows([sheet, sheet])).toBe(8)
  })

  it('grows with the rows, about fifty of one line to a page, and with what makes lines longer or the sheet wider', () => {
    const sheet = (rows: number, more: (row: number) => readonly (readonly [string, string])[] = () => []) =>
      sheetOf('Long', Object.fromEntries(Array.from({ length: rows }, (_, index) => index + 1).flatMap((row) => [[`A${row}`, row] as const, ...more(row)])))
    const pages = (one: Sheet) => estimatedPages({ ...workbookOf({}), sheets: [one] }, { sheets: [one], paper: 'Letter', withReview: true })
    const long = sheet(3500)
    expect(printedRows([long])).toBeGreaterThan(MANY_ROWS)
    expect(pages(long)).toBeGreaterThan(3500 / 60)
    expect(pages(long)).toBeLessThan(3500 / 40)
    expect(pages(sheet(200, (row) => [[`B${row}`, 'many words '.repeat(60)]]))).toBeGreaterThan(3 * pages(sheet(200)))
    expect(pages(sheet(200, (row) => Array.from('CDEFGHIJKLMNOPQRSTUVWXYZ', (column) => [`${column}${row}`, 'twelve signs'] as const))))
      .toBeGreaterThan(1.5 * pages(sheet(200)))
  })
})

describe('units in use', () => {
  it.each([
    [['°F', 'psia', '%'], 'US'], [['°C', 'kPa', '%'], 'SI'], [['°F', 'kPa'], 'mixed'], [['%', 'no unit'], undefined],
  ] as const)('%j are %s', (units, system) => {
    const cells = Object.fromEntries(units.map((unit, index) => [`A${index + 1}`, [unit, 'unit'] as const]))
    expect(unitsInUse(workbookOf({ Duty: cells }))).toBe(system)
  })
})
