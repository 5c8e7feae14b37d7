import { describe, expect, it } from 'vitest'
import { percentAsShare } from '../../../../src/review/kinds/percent-as-share.ts'
import { kindsFound, reasonsOf } from '../unit-fixture.ts'

describe('percent and share mixed', () => {
  it('is named', () => {
    expect(reasonsOf(percentAsShare, '=C1*C2', 'ft3', ['40 ft3', '80 %'])).toEqual(['Gives a number in ft3·%, and is declared in ft3 (D9): it is 100 times too large.'])
    expect(reasonsOf(percentAsShare, '=C1*(1+C2)', 'TR', ['40 TR', '10 %'])).toEqual(['Adds C2 in % to 1: the number in % is 100 times too large for that, and has to be divided by 100 first.'])
    expect(reasonsOf(percentAsShare, '=C1/C2', '%', ['40 ft3', '80 ft3'])).toEqual(['Gives a ratio without unit, and is declared in % (D9): a factor 100 is missing.'])
    expect(reasonsOf(percentAsShare, '=C1<=0.85', undefined, ['80 %'], { C9: ['=C1<=0.85', 'check'] })).toEqual(['Compares 0.85 with C1 in %: the number in % is 100 times too large for that, and has to be divided by 100 first.'])
    expect(reasonsOf(percentAsShare, '=VOID.FRACTION(C1,C2:D2)', '-', ['25 %', '20 °F'])[0]).toContain('Gives C1, in %, for a plain number')
  })

  it('is found in sums, comparisons and with the hundred in the wrong place', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1*(1-C2)', 'ft3', '40 ft3', '80 %'], ['=C1+C2', '%', '40 %', '0.8 -'], ['=C1<=C2', undefined, '40 %', '0.8 -'], ['=C1/C2*100', '-', '3 ft', '4 ft'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula, 'percent-as-share'])
  })

  it('is not what is over 100, or converted', () => {
    for (const [formula, unit, ...inputs] of [
      ['=C1*C2/100', 'ft3', '40 ft3', '80 %'], ['=C1*(1+C2/100)', 'TR', '40 TR', '10 %'], ['=C1*(100+C2)/100', 'TR', '40 TR', '10 %'], ['=100-C1', '%', '30 %'], ['=C1/C2*100', '%', '3 ft', '4 ft'], ['=C1*UNIT.CONVERT(C2:D2,"-")', 'ft3', '40 ft3', '80 %'],
      ['=C1*C2%', 'ft3', '40 ft3', '80 %'], ['=C1<=85', undefined, '80 %'], ['=C1>=0', undefined, '80 %'], ['=C1*C2', 'ft3', '40 ft3', '0.8 -'], ['=C1+C2', '%', '40 %', '8 %'], ['=1-C1', '-', '0.3 -'], ['=C1*C2*0.01', 'ft3', '40 ft3', '80 %'],
    ] as const) expect([formula, ...kindsFound(formula, unit, inputs)]).toEqual([formula])
  })
})
