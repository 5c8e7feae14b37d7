import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { KINDS } from '../../src/review/kinds.ts'
import { ROLES, usedRange } from '../../src/workbook/document.ts'
import { surveyOf } from '../unit/review/survey-of.ts'
import type { Put } from '../unit/workbook-of.ts'

const address = fc.tuple(fc.constantFrom('A', 'B', 'C', 'D'), fc.integer({ min: 1, max: 8 })).map(([column, row]) => `${column}${row}`)
const atom = fc.oneof(
  address, fc.constantFrom('$A$1', 'A1:B3', 'C:C', 'Other!B2', 'load', 'nobody', '0.75', '14.7', '60', '"20 °F"', '"psia"', '"12"', '""', 'TRUE', '#N/A', '{1,2;3,4}', '-3', '10%'),
)
const call = (parts: fc.Arbitrary<string>): fc.Arbitrary<string> => fc.tuple(
  fc.constantFrom('SUM', 'IF', 'ROUND', 'INDEX', 'MATCH', 'VLOOKUP', 'UNIT.CONVERT', 'SAT.PRESSURE', 'HOLDUP.MASS', 'CIRCULATION.NUMBER', 'VALVE.LIQUID', 'IFERROR', 'CHOOSE', 'PI', 'TEXT', 'NOBODY'),
  fc.array(parts, { maxLength: 4 }),
).map(([name, given]) => `${name}(${given.join(',')})`)
const formula = fc.letrec<{ part: string }>((tie) => ({
  part: fc.oneof({ maxDepth: 3 }, atom, call(tie('part')), fc.tuple(tie('part'), fc.constantFrom('+', '-', '*', '/', '^', '&', '<', '>=', '='), tie('part')).map((parts) => parts.join(''))),
})).part.map((part) => `=${part}`)
const content = fc.oneof(formula, formula, fc.double({ noNaN: true, noDefaultInfinity: true }), fc.constantFrom<string | number | boolean | null>('ft', '%', '°F', 'Load', 'PSM', 'more than', 'from memory', 4540, 20, null, true))
const put: fc.Arbitrary<Put> = fc.tuple(content, fc.constantFrom(...ROLES))
const sheet = fc.dictionary(address, put, { maxKeys: 25, noNullPrototype: true })

describe('findings', () => {
  it('of every kind can be looked for in whatever stands in a workbook, and say where and what', () => {
    fc.assert(fc.property(sheet, sheet, (duty, other) => {
      const survey = surveyOf({ Duty: duty, Other: other }, { load: 'Duty!$B$2:$C$2', nobody: 'Gone!$A$1' })
      const sizes = new Map(survey.workbook.sheets.map((one) => [one.name, usedRange(one)]))
      for (const { kind, find } of KINDS) {
        for (const { sheet: name, area: { top, left, bottom, right }, reason, key } of find(survey)) {
          const size = sizes.get(name)
          expect(size, kind).toBeDefined()
          expect(top >= 0 && left >= 0 && top <= bottom && left <= right && bottom <= (size?.rows ?? 0) && right <= (size?.columns ?? 0), kind).toBe(true)
          // What the engine says of an error is told in its own words.
          if (kind !== 'error-cells') expect(reason, kind).not.toMatch(/undefined|NaN|\[object/)
          expect(reason.length, kind).toBeLessThan(1200)
          expect(key, kind).not.toBe('')
        }
      }
    }), { numRuns: 150 })
  })
})
