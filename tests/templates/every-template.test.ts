import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { STANDING_CAUTION } from '../../functions/cautions.ts'
import { Graph } from '../../src/calc/graph.ts'
import { drawFigure } from '../../src/figures/draw-figure.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { isFormula } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { restate } from '../../src/workbook/restate.ts'
import { readTemplate } from './open-template.ts'

const NAMES = readdirSync(fileURLToPath(new URL('../../templates', import.meta.url))).filter((file) => file.endsWith('.lowside.json'))

it('there are the twelve of the job', () => {
  expect(NAMES.map((name) => name.replace('.lowside.json', ''))).toEqual([
    'basis', 'charge-inventory', 'feed-comparison', 'feed-valves', 'head-circulation', 'interlocks', 'plant', 'relief', 'saturation-table', 'suction-accumulator', 'vessel-sizing', 'zone-setpoints',
  ])
})

describe.each(NAMES)('%s', (name) => {
  const template = readTemplate(`templates/${name}`)

  it.each(['US', 'SI'] as const)('shows no error, meets its checks and draws its figures in %s units', (system) => {
    const graph = new Graph(applyEdits(template, restate(template, system)).workbook)
    expect(graph.errors()).toEqual([])
    expect(graph.states().filter(({ notMet }) => notMet > 0)).toEqual([])
    for (const figure of graph.workbook.figures) {
      const drawing = drawFigure(figure, graph, 640)
      expect('faults' in drawing ? drawing.faults : [], figure.title).toEqual([])
    }
  })

  it('says what it is for, and on each sheet its limits; and carries the cautions', () => {
    expect(template.purpose).not.toBe('')
    const own = template.sheets.filter(({ name: sheet }) => sheet !== 'Cautions' && sheet !== 'Basis')
    for (const sheet of own) expect(String(sheet.rows[1]?.[1]?.content ?? '').length, sheet.name).toBeGreaterThan(20)
    const cautions = template.sheets.find(({ name: sheet }) => sheet === 'Cautions')?.rows.flatMap((row) => String(row?.[1]?.content ?? '')) ?? []
    expect(cautions.some((text) => text.startsWith(STANDING_CAUTION.slice(0, 40)))).toBe(true)
  })

  it('hides no number of practice in a formula: plain numbers there are counts, shares of a whole and powers', () => {
    const found: string[] = []
    for (const sheet of template.sheets) {
      eachCell(sheet, ({ content }) => {
        if (!isFormula(content)) return
        // References, names, texts and function names taken out, what is left are the numbers typed into the formula.
        const bare = content.replaceAll(/"[^"]*"/g, '').replaceAll(/'[^']*'!|[A-Za-z_][A-Za-z_.]*[!(]/g, '').replaceAll(/\$?[A-Z]{1,2}\$?\d+/g, '')
        for (const [number] of bare.matchAll(/(?<![\w.])\d+(?:\.\d+)?/g)) if (!ALLOWED.has(Number(number))) found.push(`${sheet.name}: ${content}`)
      })
    }
    expect(found).toEqual([])
  })
})

/** Counts, halves, digits to round to, what makes a circle of a diameter, and the reach of ISO 2533 in metres. */
const ALLOWED: ReadonlySet<number> = new Set([0, 1, 2, 3, 4, 5, 6, 9, 100, 500, 11_000])
