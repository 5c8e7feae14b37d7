import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { derivationFile } from '../../src/review/derivation/derivation-report.ts'
import { derivationText } from '../../src/review/derivation/derivation-text.ts'
import { derive } from '../../src/review/derivation/derive.ts'
import type { Derivation } from '../../src/review/derivation/derivation.ts'
import { handFile } from '../../src/review/derivation/hand-pages.ts'
import { handSheet } from '../../src/review/derivation/hand-sheet.ts'
import { Survey } from '../../src/review/survey.ts'
import { printAddress, type Area } from '../../src/workbook/address.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { printCellPlace, type CellPlace } from '../../src/workbook/cell-place.ts'
import { isFormula, type CellContent, type Role, type Workbook } from '../../src/workbook/document.ts'
import { upstreamOf } from '../../src/workbook/upstream.ts'
import { workbookOf, type Put } from '../unit/workbook-of.ts'

const anyReference = fc.constantFrom('A1', 'B1', 'C2', 'A2', 'B3', 'A3', '$A$1', 'E5', 'Basis!A1', 'Basis!B2', 'Gone!A1', 'load', 'pair', 'other')
const anyArea = fc.constantFrom('A1:B1', 'A2:B2', 'A1:C3', 'Basis!A1:B1', 'Basis!A1:A4', 'A:A', 'B1:B4', 'pair')
const anyFormula = fc.oneof(
  fc.tuple(anyReference, fc.constantFrom('+', '*', '-', '&', '<', '>=', '/', '^'), anyReference).map((parts) => `=${parts.join('')}`),
  fc.tuple(fc.constantFrom('SUM', 'MAX', 'COUNT', 'AND', 'SUMPRODUCT'), anyArea).map(([name, area]) => `=${name}(${area})`),
  fc.tuple(fc.constantFrom('SAT.PRESSURE', 'LIQUID.DENSITY', 'UNIT.CONVERT', 'DRUM.DIAMETER'), anyArea, anyReference).map(([name, area, unit]) => `=${name}(${area},${unit})`),
  fc.tuple(anyReference, anyReference).map(([value, unit]) => `=UNIT.CONVERT(UNIT.CONVERT(${value}&${unit},"K")&" K","°F")`),
  fc.tuple(anyReference, anyReference, anyReference).map(([test, yes, no]) => `=IF(${test}>5,${yes},IFERROR(${no}/0,${yes}))`),
  fc.tuple(anyArea, anyReference, anyReference).map(([area, row, wanted]) => `=INDEX(${area},${row},1)+MATCH(${wanted},${area},0)`),
  anyReference.map((reference) => `=${reference}`),
  anyReference.map((reference) => `=ROUND(-${reference}%,1)`),
  fc.constantFrom('=A1:B1*2', '=1/0', '=NA()', '=SUM(', '=nowhere', '="a""b"', '=TRUE', '=-A1^2', '={1,2;3,4}', '=SUM()', '=IF(,,)', '=INDEX(A1:A3,0)'),
)
const anyContent: fc.Arbitrary<CellContent> = fc.oneof(
  fc.constantFrom<CellContent>(0, 1, 5, -40, 86, 1e-5, 123456.789, true, '°F', 'TR', 'psia', 'text', '31 °F', null),
  { weight: 3, arbitrary: anyFormula },
)
const anyRole = fc.constantFrom<Role | undefined>(undefined, undefined, undefined, 'unit', 'label', 'heading', 'check', 'input')
const anyCells = fc.array(fc.tuple(fc.nat(5), fc.nat(4), anyContent, anyRole), { maxLength: 18 })

const anyWorkbook: fc.Arbitrary<Workbook> = fc.tuple(anyCells, anyCells).map(([own, basis]) => workbookOf({ S: cellsOf(own), Basis: cellsOf(basis) }, { load: 'Basis!$A$1', pair: 'Basis!$A$2:$B$2' }))

const cellsOf = (cells: readonly (readonly [number, number, CellContent, Role | undefined])[]): Record<string, Put> =>
  Object.fromEntries(cells.map(([row, column, content, role]) => [printAddress(row, column), role === undefined ? content : [content, role] as const]))

function told({ steps, noPart, words }: Derivation): ReadonlySet<string> {
  const cells = new Set<string>()
  const add = (sheet: string, { top, left, bottom, right }: Area): void => {
    for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) cells.add(printCellPlace({ sheet, row, column }))
  }
  for (const { cells: { sheet, area } } of steps) add(sheet, area)
  for (const { sheet, area } of [...noPart, ...words]) add(sheet, area)
  for (const { passedOn } of steps) for (const { place } of passedOn) cells.add(printCellPlace(place))
  return cells
}

function formulas(workbook: Workbook): CellPlace[] {
  const found: CellPlace[] = []
  for (const sheet of workbook.sheets) eachCell(sheet, ({ content }, row, column) => void (isFormula(content) && found.push({ sheet: sheet.name, row, column })))
  return found
}

describe('of any workbook, circles, gaps and nonsense included', () => {
  it('a derivation has every cell upstream, steps in order, and prints; and so does a hand calculation sheet', () => {
    const settings = { preparedBy: '', checkedBy: '', paper: 'A4' as const }
    fc.assert(fc.property(anyWorkbook, (workbook) => {
      const survey = new Survey(workbook, new Graph(workbook).allAreas())
      for (const place of formulas(workbook)) {
        const derivation = derive(survey, [place])
        const cells = told(derivation)
        expect(upstreamOf(workbook, [place]).places().map(printCellPlace).filter((cell) => !cells.has(cell)), printCellPlace(place)).toEqual([])
        for (const { number, uses } of derivation.steps) {
          // In a circle one step has to come before what it is computed from.
          if (!derivation.steps.some(({ circular }) => circular)) for (const used of uses) expect(used).toBeLessThan(number)
          for (const used of uses) expect(derivation.steps[used - 1]?.number).toBe(used)
        }
        expect(derivationText(derivation, { unfold: true }).length).toBeGreaterThan(0)
        expect(derivationFile({ derivation, settings, date: '2026-11-27', unfold: true })).not.toContain('undefined')
        if (survey.tree(workbook.sheets.find(({ name }) => name === place.sheet)?.rows[place.row]?.[place.column]?.content as string) === undefined) continue
        expect(handFile({ sheets: [handSheet(survey, place)], settings, date: '2026-11-27', blind: true })).not.toContain('undefined')
      }
    }), { numRuns: 120 })
  })
})
