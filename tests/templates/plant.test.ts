import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { drawFigure } from '../../src/figures/draw-figure.ts'
import { areaOf, parseReference } from '../../src/workbook/address.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { isFormula, sheetByName } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { namesIn, referencesIn } from '../../src/workbook/formula/references.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { restate } from '../../src/workbook/restate.ts'
import { DEMOS } from '../../templates/assemble/demo-inputs.ts'
import { demoFile, readTemplates, templateFile } from '../../templates/assemble/files.ts'
import { BASIS, CAUTIONS, TEMPLATE_ORDER } from '../../templates/assemble/order.ts'
import { assemblePlant, demoOf } from '../../templates/assemble/plant.ts'
import { expectRestated } from './cells.ts'
import { OpenWorkbook, readTemplate } from './open-template.ts'

const templates = readTemplates()
const plant = readTemplate('templates/plant.lowside.json')
const fresh = assemblePlant(templates)

describe('the checked-in plant', () => {
  it('is what the templates give (npm run -s plant)', () => {
    expect(readFileSync(templateFile('plant'), 'utf8') === writeWorkbook(fresh.workbook), 'a template has changed since: npm run -s plant').toBe(true)
  })

  it('is made of every template, with every link made', () => {
    expect(templates.map(({ name }) => name)).toEqual(TEMPLATE_ORDER)
    expect(fresh.waiting).toEqual([])
  })

  it.each(DEMOS)('$file: the demo is the plant with its inputs', (demo) => {
    expect(readFileSync(demoFile(demo.file), 'utf8') === writeWorkbook(demoOf(plant, demo)), 'the plant has changed since: npm run -s plant').toBe(true)
  })

  it.each(['US', 'SI'] as const)('shows no error and meets all checks in %s units', (system) => {
    const graph = new Graph(applyEdits(plant, restate(plant, system)).workbook)
    expect(graph.errors()).toEqual([])
    const states = graph.states()
    expect(states.filter(({ notMet }) => notMet > 0)).toEqual([])
    const alone = templates.flatMap(({ workbook }) => new Graph(workbook).states()).filter(({ sheet }) => sheet !== CAUTIONS)
    expect(states.reduce((sum, { checks }) => sum + checks, 0)).toBe(alone.reduce((sum, { checks }) => sum + checks, 0))
  })

  it('gives the same quantities in SI units', () => expectRestated('plant'))

  it('has the figures of the templates, and each can be drawn', () => {
    expect(plant.figures).toEqual(templates.flatMap(({ workbook }) => workbook.figures))
    const graph = new Graph(plant)
    for (const figure of plant.figures) {
      const drawing = drawFigure(figure, graph, 640)
      expect('faults' in drawing ? drawing.faults : [], figure.title).toEqual([])
    }
  })

  it('refers to the basis by names only, and to no name that it lacks', () => {
    for (const sheet of plant.sheets.filter(({ name }) => name !== BASIS)) {
      eachCell(sheet, ({ content }, row, column) => {
        if (!isFormula(content)) return
        const tokens = tokenise(content)
        const where = `${sheet.name}, row ${row + 1}, column ${column + 1}: ${content}`
        expect(referencesIn(tokens).filter(({ reference }) => reference.sheet === BASIS), where).toEqual([])
        for (const name of namesIn(tokens)) expect(plant.names.has(name), `${where}: ${name}`).toBe(true)
      })
    }
  })

  it('has a filled cell behind every name', () => {
    for (const [name, refersTo] of plant.names) {
      const reference = parseReference(refersTo)
      const area = reference && areaOf(reference)
      const cell = area && sheetByName(plant, reference.sheet ?? '')?.rows[area.top]?.[area.left]
      expect(cell?.content, `${name}: ${refersTo}`).toBeDefined()
    }
  })

  it('says each caution once, and all that the templates say', () => {
    const lines = (workbook: typeof plant) => (sheetByName(workbook, CAUTIONS)?.rows ?? []).slice(1).flatMap((row) => row?.[1]?.content ?? [])
    expect(new Set(lines(plant)).size).toBe(lines(plant).length)
    expect(new Set(lines(plant))).toEqual(new Set(templates.flatMap(({ workbook }) => lines(workbook))))
  })
})

describe('one input, and what an engineer expects of the whole plant', () => {
  const zone = 'Cooler 1'

  it('a warmer room: warmer drum on Zones, Drums, Feed, Accumulators and Charge, higher set point', () => {
    const workbook = new OpenWorkbook(plant)
    const drum = () => [
      workbook.siIn('Zones', zone, 'Drum'), workbook.siIn('Drums', 'Drum 1', 'Drum temperature'),
      workbook.graph.value('Feed', rowOf('Feed', 'Drum'), 3), workbook.graph.value('Charge', rowOf('Charge', 'Part (tag)'), 11),
    ].map(Number)
    const [before, setPoint] = [drum(), workbook.siIn('Zones', zone, 'Regulator set point')]
    expect(new Set([before[0]?.toFixed(6), before[1]?.toFixed(6)]).size).toBe(1)
    workbook.setIn('Zones', zone, 'Room', '36')
    drum().forEach((value, index) => expect(value).toBeGreaterThan((before[index] ?? Infinity) + 1))
    expect(workbook.siIn('Zones', zone, 'Regulator set point')).toBeGreaterThan(setPoint)
  })

  it('more load: more feed, more vapour in its drum', () => {
    const workbook = new OpenWorkbook(plant)
    const before = workbook.siIn('Drums', 'Drum 1', 'Liquid fed')
    workbook.setIn('Zones', zone, 'Load', '66')
    expect(workbook.siIn('Drums', 'Drum 1', 'Liquid fed') / before).toBeCloseTo(66 / 55, 9)
  })

  it('a wider drum wants more relief and holds more charge', () => {
    const workbook = new OpenWorkbook(plant)
    const figures = () => [Number(workbook.graph.value('Relief', rowOf('Relief', 'Vessel'), 9)), workbook.si('Charge totals', 'Charge in operation')]
    const before = figures()
    workbook.setIn('Drums', 'Drum 1', 'Inside diameter', '36')
    figures().forEach((value, index) => expect(value).toBeGreaterThan(before[index] ?? Infinity))
  })

  /** The first row below a heading with something typed or computed in it. */
  function rowOf(sheet: string, heading: string): number {
    const rows = sheetByName(plant, sheet)?.rows ?? []
    const head = rows.findIndex((row) => row?.[1]?.role === 'heading' && row[1].content === heading)
    return rows.findIndex((row, index) => index > head && (row?.[1]?.role === 'result' || row?.[1]?.role === 'input'))
  }
})
