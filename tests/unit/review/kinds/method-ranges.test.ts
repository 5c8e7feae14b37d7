import { describe, expect, it } from 'vitest'
import { methodRanges } from '../../../../src/review/kinds/method-ranges.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

const unit = (text: string): Put => [text, 'unit']
const label = (text: string): Put => [text, 'label']

/** A drum temperature and what is made of it. */
const drum = (temperature: number, cells: Readonly<Record<string, Put>> = {}) =>
  surveyOf({ Duty: { B1: label('Drum'), C1: temperature, D1: unit('°C'), B2: label('Pressure'), C2: '=SAT.PRESSURE(C1:D1,D2)', D2: unit('kPa'), ...cells } })

describe('inputs outside of a method’s range', () => {
  it('are named once, where the value was typed, with function, argument, range and reason', () => {
    const [only, ...others] = findOf(methodRanges, drum(110, { C3: '=LIQUID.DENSITY(C1:D1,D3)', D3: unit('kg/m3') }))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'error', area: { top: 0, left: 2 }, causes: [{ sheet: 'Duty', row: 1, column: 2 }, { sheet: 'Duty', row: 2, column: 2 }] })
    // Gao et al. 2023 go down to 195.55 K here; 100 °C is where the generated table ends.
    expect(only?.reason).toBe('SAT.PRESSURE and LIQUID.DENSITY in C2 and C3: temperature is 110 °C; accepted is -77.6 °C to 100 °C (from just above the triple point to 100 °C, Gao et al. 2023).')
  })

  it('are found where an error is caught, so that no cell shows one', () => {
    expect(placesOf(methodRanges, drum(110, { C2: '=IFERROR(SAT.PRESSURE(C1:D1,D2),0)' }))).toEqual(['Duty!C1'])
  })

  it('are traced back through cells that only hand the value on, and to the inputs of one that is computed', () => {
    const survey = surveyOf({
      Basis: { B1: label('Coil'), C1: -60, D1: unit('°C'), B2: label('Fall'), C2: 25, D2: unit('Δ°C'), B3: label('Drum'), C3: '=C1-C2', D3: unit('°C') },
      Duty: { B1: label('Drum'), C1: '=UNIT.CONVERT(Basis!C3:D3,D1)', D1: unit('K'), B2: label('Pressure'), C2: '=SAT.PRESSURE(C1:D1,D2)', D2: unit('kPa') },
    })
    const [only] = findOf(methodRanges, survey)
    expect(only).toMatchObject({ sheet: 'Basis', area: { top: 2, left: 2 } })
    expect(only?.reason).toContain('SAT.PRESSURE in Duty!C2: temperature is 188.15 K; accepted is 195.55 K to 373.15 K')
    expect(only?.reason).toContain(' C3 comes from C1 and C2.')
  })

  it('are found in a block of rows, by the row’s own range', () => {
    const rows = [[100, 'kW'], [-10, '°C'], [2, 'm'], [0.05, 'm'], [4, 'm'], [2.5, '-'], [40, 'm'], [6, '-'], [0.021, 'm'], [18, 'm'], [0.1, 'm'], [3, 'm'], [2, '-'], [1.3, 'm'], [45.72, 'µm']] as const
    const cells = Object.fromEntries(rows.flatMap(([value, code], row): [string, Put][] => [[`C${row + 1}`, value], [`D${row + 1}`, unit(code)]]))
    const [only, ...others] = findOf(methodRanges, surveyOf({ Loop: { ...cells, C20: '=CIRCULATION.NUMBER(C1:D15)' } }))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'error', area: { top: 6, left: 2 } })
    expect(only?.reason).toContain('row 7, coil height is 40 m; accepted is 0 m to 30 m')
  })
})

describe('inputs near the edge of a method’s range', () => {
  it('are a remark, within 2 % of the range of temperature', () => {
    const [only, ...others] = findOf(methodRanges, drum(-76))
    expect(others).toEqual([])
    expect(only?.severity).toBe('remark')
    expect(only?.reason).toBe('SAT.PRESSURE in C2: temperature is -76 °C, close to -77.6 °C, the least that is accepted (from just above the triple point to 100 °C, Gao et al. 2023).')
    // 2 % of 177.6 K are 3.55 K.
    expect(placesOf(methodRanges, drum(-74))).toEqual([])
    expect(placesOf(methodRanges, drum(97))).toEqual(['Duty!C1'])
  })

  it('are within 2 % of another limit, and never near 0 or the whole of a share', () => {
    const column = (height: number) => surveyOf({ Head: { B1: label('Height'), C1: height, D1: unit('m'), B2: label('Drum'), C2: -10, D2: unit('°C'), C3: '=HEAD.PRESSURE(C1:D1,C2:D2,"kPa")' } })
    expect(placesOf(methodRanges, column(29.5))).toEqual(['Head!C1'])
    expect(placesOf(methodRanges, column(29))).toEqual([])
    expect(placesOf(methodRanges, column(0.01))).toEqual([])
    expect(placesOf(methodRanges, surveyOf({ Charge: { C1: 2, D1: unit('m3'), C2: 99.5, D2: unit('%'), C3: -10, D3: unit('°C'), C4: '=HOLDUP.MASS(C1:D1,C2:D2,C3:D3,"kg")' } }))).toEqual([])
  })

  it('are not looked for in a branch that is not taken', () => {
    expect(placesOf(methodRanges, drum(110, { C2: '=IF(C1>100,0,SAT.PRESSURE(C1:D1,D2))' }))).toEqual([])
  })

  it('of a table are one finding', () => {
    const rows = Object.fromEntries([3, 4, 5].flatMap((row): [string, Put][] => [[`B${row}`, -76.5 + row / 10], [`C${row}`, `=SAT.PRESSURE(B${row}&B$2,C$2)`]]))
    expect(placesOf(methodRanges, surveyOf({ Drums: { B1: ['Drum', 'heading'], B2: unit('°C'), C2: unit('kPa'), ...rows } }))).toEqual(['Drums!B3:B5'])
  })
})
