import { describe, expect, it } from 'vitest'
import { gaugeWithoutSite } from '../../../../src/review/kinds/gauge-without-site.ts'
import { findOf, surveyOf } from '../survey-of.ts'
import { kindsFound, mended, reasonsOf } from '../unit-fixture.ts'

describe('gauge pressure without the site’s atmosphere', () => {
  it('is named where the workbook has a site', () => {
    expect(reasonsOf(gaugeWithoutSite, '=SAT.PRESSURE(C1:D1,D9)', 'psig', ['20 °F'])).toEqual([
      'SAT.PRESSURE converts a gauge pressure here with the standard atmosphere, 101.325 kPa; the workbook has its own site pressure, site_pressure, which is another.',
    ])
    expect(kindsFound('=UNIT.CONVERT(C1:D1,D9)', 'psia', ['20 psig'])).toEqual(['gauge-without-site'])
    expect(mended('=SAT.TEMPERATURE(C1:D1,D9)', '°F', ['20 psig'])).toBe('=SAT.TEMPERATURE(C1:D1,D9,site_pressure)')
  })

  it('is none with the site, between two gauge units, without gauge units, or in a workbook without site', () => {
    expect(kindsFound('=SAT.PRESSURE(C1:D1,D9,site_pressure)', 'psig', ['20 °F'])).toEqual([])
    expect(kindsFound('=UNIT.CONVERT(C1:D1,D9)', 'kPa(g)', ['20 psig'])).toEqual([])
    expect(kindsFound('=SAT.PRESSURE(C1:D1,D9)', 'psia', ['20 °F'])).toEqual([])
    expect(findOf(gaugeWithoutSite, surveyOf({ Duty: { C1: 20, D1: ['°F', 'unit'], C2: '=SAT.PRESSURE(C1:D1,D2)', D2: ['psig', 'unit'] } }))).toEqual([])
  })

  it('is a remark where the site is at the standard atmosphere, and the site is found by its function where it has no name', () => {
    const survey = surveyOf({
      Basis: { C1: 0, D1: ['ft', 'unit'], C2: '=SITE.PRESSURE(C1:D1,D2)', D2: ['psia', 'unit'] },
      Duty: { C1: 20, D1: ['°F', 'unit'], C2: '=SAT.PRESSURE(C1:D1,D2)', D2: ['psig', 'unit'] },
    })
    expect(findOf(gaugeWithoutSite, survey)).toMatchObject([{ severity: 'remark', mend: { edits: [{ cells: [{ cell: { content: '=SAT.PRESSURE(C1:D1,D2,Basis!$C$2:$D$2)' } }] }] } }])
  })
})
