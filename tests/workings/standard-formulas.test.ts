import { HyperFormula } from 'hyperformula'
import { describe, expect, it } from 'vitest'
import { catalogue, functionByName } from '../../functions/catalogue.ts'
import { workingsTables } from '../../functions/workings/all-tables.ts'
import { fillMarks } from '../../functions/workings/expression.ts'
import { unitsTable } from '../../functions/workings/tables.ts'
import { findUnit } from '../../functions/units/units.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { workingsValues } from './plain-engine.ts'

/** Of the small group of OpenFormula 1.3 (part 4, 2.3.2), all of which programs had before 2007 as well. */
const STANDARD = new Set([
  'IF', 'AND', 'OR', 'NOT', 'EXP', 'LN', 'LOG10', 'SQRT', 'ABS', 'SIGN', 'MIN', 'MAX', 'SIN', 'COS', 'TAN', 'ACOS', 'ASIN', 'ATAN', 'PI', 'INT',
  'SUM', 'SUMPRODUCT', 'INDEX', 'MATCH', 'EXACT', 'ISNUMBER', 'ISERROR', 'NA', 'TRIM',
])

const formulas = (name: string) =>
  (functionByName(name)?.workings.columns ?? []).flatMap(({ formula }, column) => (formula === undefined ? [] : [{ column, formula: `=${fillMarks(formula, (mark) => (typeof mark === 'number' ? `AB${mark + 1}` : 'Tables!$AA$1:$AZ$40'))}` }]))

it('the plain engine of these tests knows no function of the catalogue', () => {
  const known = new Set(HyperFormula.getRegisteredFunctionNames('enGB'))
  expect(catalogue.filter(({ name }) => known.has(name))).toEqual([])
})

describe.each(catalogue.map(({ name }) => name))('%s', (name) => {
  it('uses standard functions only', () => {
    const used = formulas(name).flatMap(({ formula }) => tokenise(formula).filter(({ kind }) => kind === 'function').map(({ text }) => text))
    expect([...new Set(used)].filter((one) => !STANDARD.has(one))).toEqual([])
  })

  it('has formulas that every program can hold (ECMA-376: 8 192 characters), well formed and without array braces', () => {
    for (const { formula } of formulas(name)) {
      expect(formula.length).toBeLessThan(2000)
      expect(tokenise(formula).filter(({ problem, kind }) => problem !== undefined || kind === 'openBrace' || kind === 'unknown')).toEqual([])
    }
  })

  // Programs differ over -x^2: a minus sign right before a power stands in brackets, or between two terms.
  it('leaves no sign to be read in two ways', () => {
    for (const { formula } of formulas(name)) expect(formula).not.toMatch(/(^=|[(,*/^<>=])-[A-Z$\d.]+\^/)
  })

  it('refers only to columns before, and to blocks of shared tables', () => {
    const blocks = new Set(workingsTables.flatMap(({ name: table, blocks: named }) => Object.keys(named).map((block) => `${table}.${block}`)))
    functionByName(name)?.workings.columns.forEach(({ formula }, column) =>
      fillMarks(formula ?? '', (mark) => {
        if (typeof mark === 'number') expect(mark).toBeLessThan(column)
        else expect(blocks).toContain(mark)
        return ''
      }))
  })
})

describe('the table of units', () => {
  const spellings = (unitsTable.blocks['spelling'] ?? []).map(([spelling]) => String(spelling))

  it('has every spelling once, capitals aside: programs match the first whatever its capitals', () => {
    expect(new Set(spellings.map((one) => one.toLowerCase())).size).toBe(spellings.length)
  })

  it('is found by each of its spellings, and gives the unit that the code finds', () => {
    const convert = functionByName('UNIT.CONVERT')
    if (convert === undefined) throw new Error('UNIT.CONVERT is gone')
    const calls = spellings.map((spelling) => [{ rows: [[1.25, spelling]] }, findUnit(spelling)?.code])
    expect(workingsValues(convert, calls).map((value) => Number(value).toPrecision(12))).toEqual(spellings.map(() => (1.25).toPrecision(12)))
  })

  it('has no row for a text that is no unit', () => {
    const convert = functionByName('UNIT.CONVERT')
    if (convert === undefined) throw new Error('UNIT.CONVERT is gone')
    const wrong = ['psiG', 'furlong', 'PSIA', 'f', '*', '?', '~', 'm2 ', '']
    expect(workingsValues(convert, wrong.map((unit) => [{ rows: [[1, unit]] }, 'Pa'])).every((value) => String(value).startsWith('#'))).toBe(true)
  })
})
