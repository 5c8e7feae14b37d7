import fc from 'fast-check'
import { expect, it } from 'vitest'
import { catalogue } from '../../functions/catalogue.ts'
import { units } from '../../functions/units/units.ts'
import { unitFindings } from '../unit/review/unit-fixture.ts'

const FUNCTIONS = [
  'SUM', 'MIN', 'MAX', 'AVERAGE', 'IF', 'IFERROR', 'INDEX', 'MATCH', 'XLOOKUP', 'VLOOKUP', 'LOOKUP', 'SUMPRODUCT', 'SUMIF', 'SUMIFS', 'ROUND', 'ABS', 'SQRT', 'POWER', 'CEILING', 'MOD', 'COUNT', 'PI', 'EXP', 'LN', 'CHOOSE', 'SWITCH', 'IFS', 'TEXT', 'CONCATENATE',
  'STDEV', 'QUOTIENT', 'PRODUCT', 'AND', 'N', 'NOSUCH', ...catalogue.map(({ name }) => name),
]
const formula: fc.Arbitrary<string> = fc.letrec<{ node: string }>((tie) => ({
  node: fc.oneof(
    { maxDepth: 4, withCrossShrink: true },
    fc.constantFrom('C1', 'C2', 'C3', 'D1', 'D2', 'C1:D1', 'C1:C3', '$C$2:D$2', 'C:C', 'site_pressure', 'no_name', 'Nowhere!A1', '32', '60', '0', '1e300', '-1', '"psia"', '" ft"', '""', 'TRUE', '#N/A', '273.15', '100'),
    fc.tuple(tie('node'), fc.constantFrom('+', '-', '*', '/', '^', '&', '=', '<', '>='), tie('node')).map((parts) => parts.join('')),
    fc.tuple(fc.constantFrom(...FUNCTIONS), fc.array(fc.oneof(tie('node'), fc.constant('')), { maxLength: 5 })).map(([name, given]) => `${name}(${given.join(',')})`),
    tie('node').map((node) => `(${node})`), tie('node').map((node) => `-${node}`), tie('node').map((node) => `${node}%`), tie('node').map((node) => `{${node},${node}}`),
  ),
})).node
const unit = fc.constantFrom(...units.map(({ code }) => code), '', 'Btu/(lb·°F)', '$', 'lbs')

it('whatever a formula says, looking for its units ends, and what is found is said in words', () => {
  fc.assert(fc.property(formula, unit, fc.tuple(unit, unit, unit), (text, declared, inputs) => {
    for (const found of unitFindings(`=${text}`, declared === '' ? undefined : declared, inputs.map((one, index) => `${index + 3} ${one}`.trim()))) {
      expect(found.key).not.toBe('not looked for')
      expect(found.reason).toMatch(/^(?:[A-Z“]).*\.$/s)
      expect(found.reason).not.toMatch(/undefined|NaN|\[object/)
    }
  }), { numRuns: 3000 })
})

it('a formula as long as a cell holds, or as deep, is got through', () => {
  for (const text of [Array.from({ length: 8000 }, () => 'C1').join('+'), Array.from({ length: 8000 }, () => 'C1').join('&'), Array.from({ length: 8000 }, () => '2').join('*'), `${'('.repeat(3000)}C1${')'.repeat(3000)}`, `${'SUM('.repeat(2000)}C1${')'.repeat(2000)}`]) {
    expect(unitFindings(`=${text}`, 'ft', ['3 ft']).map(({ key }) => key)).not.toContain('not looked for')
  }
})
