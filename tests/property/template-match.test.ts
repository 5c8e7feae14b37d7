import fc from 'fast-check'
import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, it } from 'vitest'
import { matchTemplate } from '../../src/review/match-template.ts'
import { Survey } from '../../src/review/survey.ts'
import { templateDifferences } from '../../src/review/template-differences.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { isFormula, usedRange, type Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { fillFrom } from '../../src/workbook/fill.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { readTemplate } from '../templates/open-template.ts'

const folder = fileURLToPath(new URL('../../templates', import.meta.url))
const templates = readdirSync(folder).filter((file) => file.endsWith('.lowside.json')).map((file) => readTemplate(`templates/${file}`))

/** A template, and places where empty rows go into sheets of it. */
const lengthened = fc.record({ template: fc.constantFrom(...templates), rows: fc.array(fc.record({ sheet: fc.nat(), at: fc.nat(), count: fc.integer({ min: 1, max: 4 }) }), { maxLength: 4 }) })
  .map(({ template, rows }) => rows.reduce((before, { sheet, at, count }) => {
    const { name, ...rest } = before.sheets[sheet % before.sheets.length] ?? before.sheets[0] ?? { name: '', columns: [], frozen: [0, 0] as const, rows: [] }
    return applyEdits(before, insertLines(before, name, { axis: 'rows', at: at % (usedRange({ name, ...rest }).rows + 1), count })).workbook
  }, template))

const differencesOf = (workbook: Workbook) => templateDifferences(new Survey(workbook, new Map(), matchTemplate(workbook, templates)))

it('rows inserted anywhere make no formula another one than the template’s', () => {
  fc.assert(fc.property(lengthened, (workbook) => {
    expect(differencesOf(workbook).map(({ sheet, row, column, cell, expected }) => [sheet.name, row, column, cell?.content, expected.content])).toEqual([])
  }), { numRuns: 30 })
})

it('a formula that is typed over is found wherever it stands, and nothing else', () => {
  fc.assert(fc.property(lengthened, fc.nat(), fc.constantFrom('42', '=1+1'), (workbook, which, typed) => {
    const formulas = new Survey(workbook, new Map()).formulas
    const one = formulas[which % formulas.length]
    if (one === undefined) return
    const { sheet, row, column } = one
    const found = differencesOf(applyEdits(workbook, setEntry(workbook, sheet.name, { row, column }, typed)).workbook)
    expect(found.map((difference) => [difference.sheet.name, difference.row, difference.column, difference.now])).toEqual([[sheet.name, row, column, isFormula(typed) ? 'formula' : 'typed']])
  }), { numRuns: 60 })
})

/** The lines that say where rows go into a list. */
const lists = templates.flatMap((template) => template.sheets.flatMap((sheet) => sheet.rows.flatMap((row, end) =>
  (row?.some((cell) => typeof cell?.content === 'string' && cell.content.startsWith('Insert rows above this line')) ? [{ template, sheet, end }] : []))))

it('rows filled into a list, between its last ones or below them, are as the template would have them', () => {
  expect(lists.length).toBeGreaterThan(10)
  fc.assert(fc.property(fc.constantFrom(...lists), fc.integer({ min: 0, max: 2 }), fc.integer({ min: 1, max: 12 }), ({ template, sheet, end }, up, count) => {
    const at = end - up
    const right = Math.max(0, ...[at - 1].map((row) => (sheet.rows[row]?.length ?? 1) - 1))
    const opened = applyEdits(template, insertLines(template, sheet.name, { axis: 'rows', at, count })).workbook
    const source = { top: at - 1, bottom: at - 1, left: 0, right }
    const workbook = applyEdits(opened, fillFrom(opened, sheet.name, source, { ...source, bottom: at - 1 + count })).workbook
    expect(differencesOf(workbook).map((one) => [one.sheet.name, one.row, one.column, one.cell?.content, one.expected.content])).toEqual([])
  }), { numRuns: 30 })
})
