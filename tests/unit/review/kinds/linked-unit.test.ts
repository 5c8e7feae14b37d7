import { describe, expect, it } from 'vitest'
import { linkedUnit } from '../../../../src/review/kinds/linked-unit.ts'
import { findOf, surveyOf } from '../survey-of.ts'

const found = (declared: string, linked: string, formula = '=Basis!C5') =>
  findOf(linkedUnit, surveyOf({ Duty: { C8: formula, D8: [declared, 'unit'] }, Basis: { C5: 30, D5: [linked, 'unit'], C6: 12.2, D6: ['psia', 'unit'] } }, { site_pressure: 'Basis!$C$6:$D$6', suction: 'Basis!$C$5' }))

describe('links that change the unit', () => {
  it('name the cell, its unit and the one it is shown in', () => {
    expect(found('psia', 'kPa')).toMatchObject([{ severity: 'warning', reason: 'Shows Basis!C5, which is in kPa, as a number in psia (D8): it is 6.8948 times too large (6.895 kPa are 1 psi).', causes: [{ sheet: 'Basis', row: 4, column: 2 }] }])
    expect(found('psia', 'psig')[0]?.reason).toBe('Shows Basis!C5, which is in psig, as a number in psia (D8): it counts from the atmosphere, a number in psia does not.')
    expect(found('ft', 'psig')[0]?.reason).toBe('Shows Basis!C5, which is in psig, as a number in ft (D8): a pressure is no number in ft, a length.')
    expect(found('°C', '°F', '=suction')[0]?.reason).toBe('Shows suction, which is in °F, as a number in °C (D8): it is 1.8 times too large (1.8 Δ°F are 1 ΔK).')
    expect(found('Δ°F', '°F')[0]?.reason).toContain('it is a temperature, not a difference in Δ°F')
  })

  it('are mended by a conversion, with the pressure of the site where the atmosphere comes in', () => {
    const mend = (declared: string, linked: string) => found(declared, linked)[0]?.mend?.edits.map((edit) => edit.kind === 'cells' && edit.cells[0]?.cell?.content)
    expect(mend('psia', 'kPa')).toEqual(['=UNIT.CONVERT(Basis!C5:D5,D8)'])
    expect(mend('psia', 'psig')).toEqual(['=UNIT.CONVERT(Basis!C5:D5,D8,site_pressure)'])
    expect(mend('ft', 'psia')).toBeUndefined()
  })

  it('are none where the units agree, however they are written', () => {
    expect(found('psia', 'psia')).toEqual([])
    expect(found('psi', 'psia')).toEqual([])
    expect(found('ft³', 'ft3')).toEqual([])
    expect(found('MBH', 'kW', '=UNIT.CONVERT(Basis!C5:D5,D8)')).toEqual([])
  })
})
