import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import { findUnit, units } from '../../functions/units/units.ts'
import { Graph } from '../../src/calc/graph.ts'
import type { AreaValues } from '../../src/calc/values.ts'
import { findFindings } from '../../src/review/find-findings.ts'
import { findingPlace, findingWords } from '../../src/review/finding-words.ts'
import { Survey, type FormulaCell } from '../../src/review/survey.ts'
import { unitFaults } from '../../src/review/units/analysis.ts'
import { unitKinds } from '../../src/review/units/kinds-of-units.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { restate } from '../../src/workbook/restate.ts'
import { readTemplate } from './open-template.ts'

const folder = fileURLToPath(new URL('../../templates', import.meta.url))
const templates = readdirSync(folder).filter((name) => name.endsWith('.json')).map((name) => `templates/${name}`)
const files = [...templates, 'demo-data/tallowmere.lowside.json']

const found = (workbook: Workbook): readonly string[] =>
  findFindings(new Survey(workbook, new Graph(workbook).allAreas()), undefined, unitKinds).map((one) => `${one.kind}, ${findingPlace(one)}: ${findingWords(one)}`)

describe('units in the shipped workbooks', () => {
  it.each(files)('%s: nothing is found, neither in US nor in SI units', (file) => {
    const workbook = readTemplate(file)
    expect(found(workbook)).toEqual([])
    expect(found(applyEdits(workbook, restate(workbook, 'SI')).workbook)).toEqual([])
  })

  it('a unit written into a formula and changed for another of its kind is found in 19 of 20 formulas', () => {
    const [changed, missed] = [new Set<string>(), new Set<string>()]
    for (const file of templates.filter((name) => !name.includes('/plant'))) {
      const workbook = readTemplate(file)
      const areas = new Graph(workbook).allAreas()
      for (let which = 0; which < MOST_UNITS; which++) {
        for (const { formula, isFound } of withChangedUnits(workbook, areas, which)) {
          changed.add(formula)
          if (!isFound) missed.add(formula)
        }
      }
    }
    expect(changed.size).toBeGreaterThan(250)
    // What is left changes nothing (0 in any unit), or is compared or multiplied with numbers that have no unit: money, limits in metres.
    expect([...missed].filter((formula) => !/"0"|0&"|=0,0|>=-500|<=11000|[CEG]5[0-5]/.test(formula))).toEqual([])
    expect(missed.size / changed.size).toBeLessThan(0.05)
  })
})

/** No formula of the templates has more units written out. */
const MOST_UNITS = 9

/** Every formula of the workbook with the unit at that place of it changed, all at once. */
function withChangedUnits(workbook: Workbook, areas: ReadonlyMap<string, AreaValues>, which: number): { readonly formula: string; readonly isFound: boolean }[] {
  const shapes = new Set<string>()
  const changes = new Survey(workbook, areas).formulas.flatMap((cell) => {
    const formula = changedUnit(cell, which)
    const shape = cell.formula.replace(/\d+/g, '#')
    if (formula === undefined || shapes.has(shape)) return []
    shapes.add(shape)
    return [{ ...cell, formula }]
  })
  const edits = changes.map(({ sheet, row, column, cell, formula }) => ({ kind: 'cells' as const, sheet: sheet.name, cells: [{ row, column, cell: { ...cell, content: formula } }] }))
  const faulty = new Set(unitFaults(new Survey(applyEdits(workbook, edits).workbook, areas)).map(({ cell }) => cell.formula))
  return changes.map(({ formula }) => ({ formula, isFound: faulty.has(formula) }))
}

function changedUnit({ formula }: FormulaCell, which: number): string | undefined {
  const written = [...formula.matchAll(/"( ?)([^"]+)"/g)].filter(([, , text = '']) => findUnit(text) !== undefined && findUnit(text)?.dimension !== 'share' && text !== 'K')
  const [whole = '', blank = '', text = ''] = written[which] ?? []
  const unit = findUnit(text)
  const other = unit && units.find((one) => one.dimension === unit.dimension && one.factor !== unit.factor && !one.gauge)
  const at = written[which]?.index
  return other === undefined || at === undefined ? undefined : `${formula.slice(0, at)}"${blank}${other.code}"${formula.slice(at + whole.length)}`
}
