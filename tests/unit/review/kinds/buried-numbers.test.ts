import { describe, expect, it } from 'vitest'
import { buriedNumbers } from '../../../../src/review/kinds/buried-numbers.ts'
import { findOf, surveyOf } from '../survey-of.ts'

/** What is said of one formula beside a load in TR. */
const said = (formula: string) => {
  const survey = surveyOf({ Duty: { B1: ['Load', 'label'], C1: 40, D1: ['TR', 'unit'], B2: ['Drum', 'label'], C2: 20, D2: ['°F', 'unit'], C9: formula, D9: ['TR', 'unit'] } })
  return findOf(buriedNumbers, survey).map(({ severity, key, reason }) => ({ severity, key, reason }))
}
const keys = (formula: string) => said(formula).map(({ key }) => key)

describe('numbers buried in formulas', () => {
  it('are named, with the unit that they are joined to', () => {
    expect(said('=C1*1.15')).toEqual([{ severity: 'remark', key: '1.15', reason: '1.15 stands in the formula itself: an input with label, unit and source would show it.' }])
    expect(said('=IF(C1>30,C1*0.75,C1*0.9)')[0]?.reason).toBe('30, 0.75 and 0.9 stand in the formula itself: an input with label, unit and source would show them.')
    expect(keys('=SAT.PRESSURE("20 °F",D9)')).toEqual(['20 °F'])
    expect(keys('=SAT.PRESSURE(20&" °F","psia")')).toEqual(['20 °F'])
    expect(keys('=SAT.PRESSURE("20"&D2,"psia")')).toEqual(['20'])
    expect(keys('=SAT.PRESSURE(IF(C1>0,"20 °F","0 °F"),"psia")')).toEqual(['20 °F; 0 °F'])
    expect(keys('=VALVE.CHOKE("180 psia",C2:D2,0.9,"psi")')).toEqual(['180 psia; 0.9'])
    expect(keys('=C1<=80')).toEqual(['80'])
    expect(keys('=C1-7%*C1')).toEqual(['7 %'])
    expect(keys('=CEILING(C1,0.5)')).toEqual(['0.5'])
    expect(keys('=-3.5+C1')).toEqual(['−3.5'])
  })

  it('are not what counts, rounds, indexes, raises to a power or is a constant of geometry or nature', () => {
    for (const formula of [
      '=C1*2+1-0', '=ROUND(C1,3)', '=INDEX(C1:D5,3,1)', '=VLOOKUP(C1,C1:D5,2,0)', '=C1^1.5', '=C1^(1/3)', '=10^C1', '=C1/100', '=SQRT(4*C1/PI())', '=0.5*C1*C2^2', '=C1*9.80665', '=ROW()-7',
      '=COUNTA(C1:C5)>=5', '=LEFT("Drum 12",4)', '=UNIT.CONVERT(C1:D1,"kW")', '=UNIT.CONVERT("1 -","%")', '=IF(C1="2:1","12 in",C1)', '="in row "&12', '=PIPE.BORE("4","40","in")', '=C1&" of 12"', '=MATCH(3,C1:C5,0)>4',
    ]) expect([formula, keys(formula).filter((key) => key !== '3')]).toEqual([formula, []])
  })

  it('are told for what they are where everybody knows them: steps between units, the atmosphere', () => {
    expect(said('=C1*60')[0]?.reason).toBe('60 looks like a conversion factor, as between h and min: UNIT.CONVERT takes it from the units in the cells.')
    expect(said('=C1/2.2046')[0]?.reason).toContain('as between lb and kg')
    expect(said('=C2*9/5')[0]?.key).toBe('9; 5')
    expect(said('=C2*(9/5)')[0]?.reason).toContain('9/5 looks like a conversion factor, as between Δ°C and Δ°F')
    expect(said('=5/9*(C2-32)').map(({ key }) => key)).toEqual(['5/9; 32'])
    expect(said('=C2+459.67')[0]?.reason).toContain('two temperature scales')
    // 14.7 psi is the standard atmosphere, 101 325 Pa, rounded.
    expect(said('=C1+14.7')).toEqual([{ severity: 'warning', key: '14.7', reason: '14.7 looks like the pressure of the atmosphere at sea level: take that of the site, by SITE.PRESSURE or UNIT.CONVERT with the site’s pressure.' }])
  })

  it('are one finding for a column that was filled down', () => {
    const rows = Object.fromEntries([1, 2, 3, 4].flatMap((row) => [[`A${row}`, row * 10], [`B${row}`, `=A${row}*1.15`]]))
    expect(findOf(buriedNumbers, surveyOf({ Duty: rows })).map(({ area }) => area)).toEqual([{ top: 0, bottom: 3, left: 1, right: 1 }])
  })
})
