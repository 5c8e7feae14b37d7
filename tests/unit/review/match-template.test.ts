import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { matchTemplate } from '../../../src/review/match-template.ts'
import { sameFormula } from '../../../src/review/plain-formula.ts'
import type { TemplateMatch } from '../../../src/review/template-match.ts'
import { eachCell } from '../../../src/workbook/cells.ts'
import { setEntry } from '../../../src/workbook/commands.ts'
import { isFormula, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { fillFrom } from '../../../src/workbook/fill.ts'
import { insertLines, deleteLines } from '../../../src/workbook/line-commands.ts'
import { restate } from '../../../src/workbook/restate.ts'
import { renameSheet } from '../../../src/workbook/commands.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { at, workbookOf } from '../workbook-of.ts'

const folder = fileURLToPath(new URL('../../../templates', import.meta.url))
const templates = readdirSync(folder).filter((file) => file.endsWith('.lowside.json')).map((file) => readTemplate(`templates/${file}`))
const sizing = readTemplate('templates/vessel-sizing.lowside.json')

const after = (workbook: Workbook, ...steps: readonly ((workbook: Workbook) => readonly Edit[])[]): Workbook =>
  steps.reduce((before, step) => applyEdits(before, step(before)).workbook, workbook)

/** Formulas that are not as the template has them, and formulas that it has nothing for. */
function compared(workbook: Workbook, match: TemplateMatch | undefined): { readonly other: string[]; readonly none: number } {
  const other: string[] = []
  let none = 0
  for (const { name, ...sheet } of workbook.sheets) {
    eachCell({ name, ...sheet }, ({ content }, row, column) => {
      if (!isFormula(content)) return
      const template = match?.cell({ sheet: name, row, column })
      if (template === undefined) none++
      else if (!isFormula(template.content) || !sameFormula(template.content, content, name)) other.push(`${name}!${row + 1}:${column + 1} ${content}`)
    })
  }
  return { other, none }
}

const SAME = { other: [], none: 0 }

describe('the template a workbook came from', () => {
  it.each(templates.map((template) => [template.title, template] as const))('is itself of “%s”, formula by formula', (title, template) => {
    const match = matchTemplate(template, templates)
    expect({ title: match?.title, ...compared(template, match) }).toEqual({ title, ...SAME })
  })

  it('is the plant of the demo, though its inputs are others', () => {
    const demo = readTemplate('demo-data/tallowmere.lowside.json')
    const match = matchTemplate(demo, templates)
    expect({ title: match?.title, ...compared(demo, match) }).toEqual({ title: 'Plant', ...SAME })
  })

  it('is none of a workbook that is like none', () => {
    expect(matchTemplate(workbookOf({ Basis: { A1: ['Basis', 'title'], A2: ['Rent', 'label'], B2: 900, A3: ['Heat', 'label'], B3: 120, A4: ['Both', 'label'], B4: '=B2+B3' } }), templates)).toBeUndefined()
    expect(matchTemplate(workbookOf({ Sheet: {} }), templates)).toBeUndefined()
  })

  it('is found in the other units', () => {
    const workbook = after(sizing, (one) => restate(one, 'SI'))
    const match = matchTemplate(workbook, templates)
    expect({ title: match?.title, ...compared(workbook, match) }).toEqual({ title: 'Surge drum sizing', ...SAME })
  })

  it('is laid over rows and columns that were inserted, and sheets of another name', () => {
    const workbook = after(sizing,
      (one) => insertLines(one, 'Duty', { axis: 'rows', at: 9, count: 2 }),
      (one) => insertLines(one, 'Practice values', { axis: 'rows', at: 3, count: 1 }),
      (one) => insertLines(one, 'Drums', { axis: 'columns', at: 4, count: 1 }),
      (one) => renameSheet(one, 'Drums', 'Surge drums'))
    expect(compared(workbook, matchTemplate(workbook, templates))).toEqual(SAME)
  })

  it('is laid over a table that was lengthened: new rows are held to those that they were filled from', () => {
    const lengthened = after(sizing,
      (one) => insertLines(one, 'Drums', { axis: 'rows', at: 14, count: 30 }),
      (one) => fillFrom(one, 'Drums', { top: 13, bottom: 13, left: 0, right: 51 }, { top: 14, bottom: 43, left: 0, right: 51 }))
    expect(compared(lengthened, matchTemplate(lengthened, templates))).toEqual(SAME)

    const overwritten = after(lengthened, (one) => setEntry(one, 'Drums', at('O30'), '41'), (one) => setEntry(one, 'Drums', at('P31'), '=FEED.FLOW(O31&O$6,G30&G$6,liquid_temperature,P$6)'))
    const match = matchTemplate(overwritten, templates)
    expect(compared(overwritten, match).other).toEqual(['Drums!31:16 =FEED.FLOW(O31&O$6,G30&G$6,liquid_temperature,P$6)'])
    expect(match?.cell({ sheet: 'Drums', ...at('O30') })?.content).toBe('=UNIT.CONVERT(F30&F$6,O$6)*(1+UNIT.CONVERT(load_margin,"-"))')
  })

  it('leaves out what was taken away', () => {
    const workbook = after(sizing, (one) => deleteLines(one, 'Drums', { axis: 'rows', at: 8, count: 3 }))
    expect(compared(workbook, matchTemplate(workbook, templates))).toEqual(SAME)
  })
})
