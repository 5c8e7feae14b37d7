import { describe, expect, it } from 'vitest'
import { readdirSync } from 'node:fs'
import { isCellError } from '../../../../src/calc/values.ts'
import { surveySource } from '../../../../src/review/derivation/formula-source.ts'
import { formulaValues } from '../../../../src/review/derivation/formula-values.ts'
import { derive } from '../../../../src/review/derivation/derive.ts'
import type { Derivation, Step } from '../../../../src/review/derivation/derivation.ts'
import { shownEqualities } from '../../../../src/review/derivation/shown-lines.ts'
import { eachCell } from '../../../../src/workbook/cells.ts'
import { printCellPlace, type CellPlace } from '../../../../src/workbook/cell-place.ts'
import { isFormula, type Workbook } from '../../../../src/workbook/document.ts'
import { upstreamOf } from '../../../../src/workbook/upstream.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { rangeOfLine } from './line-arithmetic.ts'
import { surveyOf } from './survey-of.ts'

const FILES = [...readdirSync('templates').filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`), 'demo-data/tallowmere.lowside.json']

/** Checks, and of the other results one in so many: each is a derivation of its own. */
const ONE_IN = 9

function chosenResults({ sheets }: Workbook): CellPlace[] {
  const found: CellPlace[] = []
  let count = 0
  for (const sheet of sheets) {
    eachCell(sheet, ({ role, content }, row, column) => {
      if (isFormula(content) && ((role === 'check' && count % 5 === 0) || count % ONE_IN === 0)) found.push({ sheet: sheet.name, row, column })
      if (isFormula(content)) count++
    })
  }
  return found
}

function cellsTold({ steps, noPart, words }: Derivation): ReadonlySet<string> {
  const told = new Set<string>()
  const add = (sheet: string, { top, left, bottom, right }: Step['cells']['area']): void => {
    for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) told.add(printCellPlace({ sheet, row, column }))
  }
  for (const { cells: { sheet, area } } of steps) add(sheet, area)
  for (const { sheet, area } of [...noPart, ...words]) add(sheet, area)
  for (const { passedOn } of steps) for (const { place } of passedOn) told.add(printCellPlace(place))
  return told
}

let computedInAll = 0

describe.each(FILES)('%s', (file) => {
  const workbook = readTemplate(file)
  const survey = surveyOf(workbook)
  const results = chosenResults(workbook)
  const derivations = results.map((place) => derive(survey, [place]))

  it('has every cell that a result hangs on in its derivation, in a step or in a block', () => {
    expect(results.length).toBeGreaterThan(0)
    for (const [at, place] of results.entries()) {
      const derivation = derivations[at]
      const told = derivation === undefined ? new Set<string>() : cellsTold(derivation)
      const missing = upstreamOf(workbook, [place]).places().map(printCellPlace).filter((cell) => !told.has(cell))
      expect(missing, printCellPlace(place)).toEqual([])
    }
  })

  it('has each step after those that it uses, and the result with the number asked for', () => {
    for (const { steps, results: numbers } of derivations) {
      expect(numbers).toHaveLength(1)
      for (const [at, { number, uses, circular }] of steps.entries()) {
        expect(number).toBe(at + 1)
        if (circular !== true) for (const used of uses) expect(used).toBeLessThan(number)
      }
    }
  })

  it('prints numbers that give, read again and computed by plain arithmetic, the printed result', () => {
    let computed = 0
    for (const derivation of derivations) {
      for (const step of derivation.steps) {
        const lines = shownEqualities(step)
        for (const [at, line] of lines.slice(0, -1).entries()) {
          const [range, next] = [rangeOfLine(line), rangeOfLine(lines[at + 1] ?? '')]
          // A conversion from a line to the next is no arithmetic with the same number.
          if (range === undefined || next === undefined || unitOf(lines[at + 1] ?? '') !== unitOf(line)) continue
          computed++
          expect(range.low <= next.high && next.low <= range.high, `${printCellPlace(step.place)}: ${line} = ${lines[at + 1]}`).toBe(true)
        }
        for (const { what, comes } of step.formula?.wheres ?? []) {
          if (comes === undefined || !/ [×/+−] /.test(what)) continue
          const [range, next] = [rangeOfLine(what.split(' = ').at(-1) ?? ''), rangeOfLine(comes)]
          if (range === undefined || next === undefined) continue
          computed++
          expect(range.low <= next.high && next.low <= range.high, `${printCellPlace(step.place)}: ${what} = ${comes}`).toBe(true)
        }
      }
    }
    computedInAll += computed
  })

  it('works the parts of formulas out as the calculation does, wherever it works them out at all', () => {
    let known = 0
    for (const { sheet, row, column, formula } of survey.formulas) {
      const tree = survey.tree(formula)
      const value = tree && formulaValues(surveySource(survey, sheet, { row, column })).single(tree)
      if (value === undefined) continue
      known++
      const calculated = survey.value(sheet.name, row, column)
      const where = `${printCellPlace({ sheet: sheet.name, row, column })} ${formula}`
      if (typeof value === 'number' && typeof calculated === 'number') expect(Math.abs(value - calculated), where).toBeLessThanOrEqual(1e-9 * Math.max(Math.abs(calculated), 1e-3))
      else if (isCellError(value)) expect(isCellError(calculated) && calculated.error, where).toBe(value.error)
      else expect(value === '' ? null : value, where).toEqual(calculated === '' ? null : calculated)
    }
    expect(known).toBeGreaterThanOrEqual(survey.formulas.length * 0.85)
  })
})

it('computed a good many lines again, and reads them as they are printed', () => {
  expect(rangeOfLine('50 TR × (1 + 0.1) − 2 lb/min / (-4 °F)')?.low).toBeCloseTo(55.5, 1)
  expect(rangeOfLine('50 TR × (1 + 0.1)')?.high).toBeLessThan(55.01)
  expect(rangeOfLine('smallest of (1; 2)')).toBeUndefined()
  expect(computedInAll).toBeGreaterThan(200)
})

/** The unit that a line's number has, where it is one number; a line of arithmetic counts as having that of what follows. */
function unitOf(line: string): string | undefined {
  return /^-?[\d.]+(?:e-?\d+)?(?: (\S+))?$/.exec(line)?.[1] ?? (/^-?[\d.e-]+$/.test(line) ? '' : undefined)
}
