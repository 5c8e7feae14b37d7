import { describe, expect, it } from 'vitest'
import { swallowedErrors } from '../../../../src/review/kinds/swallowed-errors.ts'
import { unsortedLookups } from '../../../../src/review/kinds/unsorted-lookups.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, surveyOf } from '../survey-of.ts'

/** Levels in no order with their temperatures, and pressures that rise. */
const TABLE: Readonly<Record<string, Put>> = { J1: ['Level', 'heading'], J2: 'High', J3: 'Low', J4: 'Blast', K2: 20, K3: -28, K4: -40, L2: 10, L3: 20, L4: 30, M2: 30, M3: 20, M4: 10, A1: 'Low', A2: 'Lwo' }
const survey = (formula: string, names: Readonly<Record<string, string>> = {}) => surveyOf({ Drums: { ...TABLE, B1: formula } }, names)

describe('lookups in lists that are in no order', () => {
  const reasonOf = (formula: string, names?: Record<string, string>): string | undefined => findOf(unsortedLookups, survey(formula, names))[0]?.reason

  it('are those without an exact match, by default or as asked', () => {
    expect(reasonOf('=INDEX(K2:K4,MATCH(A1,J2:J4))')).toBe('MATCH takes J2:J4 to rise from cell to cell, and it does not: the row that it finds may be any. A third argument 0 finds exactly what is sought.')
    expect(reasonOf('=VLOOKUP(A1,$J$2:$K$4,2)')).toContain('VLOOKUP takes $J$2:$K$4 to rise from cell to cell, and it does not: the row that it finds may be any. A fourth argument FALSE')
    expect(reasonOf('=MATCH(15,L2:L4,-1)')).toContain('to fall from cell to cell')
    expect(reasonOf('=MATCH(A1,levels,1)', { levels: 'Drums!$J$2:$J$4' })).toContain('MATCH takes levels to rise')
  })

  it('are none where the match is exact, or the list in order', () => {
    for (const formula of ['=MATCH(A1,J2:J4,0)', '=VLOOKUP(A1,J2:K4,2,FALSE())', '=VLOOKUP(A1,J2:K4,2,0)', '=MATCH(15,L2:L4)', '=MATCH(15,L1:L9,1)', '=MATCH(15,M2:M4,-1)', '=MATCH(A1,J2:J4,B2)']) expect(reasonOf(formula), formula).toBeUndefined()
  })
})

describe('errors turned into numbers', () => {
  const found = (formula: string) => findOf(swallowedErrors, survey(formula))

  it('are a value that a lookup does not find, and a cell that shows an error', () => {
    expect(found('=IFERROR(INDEX(K2:K4,MATCH(A2,J2:J4,0)),0)')).toMatchObject([{ severity: 'warning', reason: 'Counts as 0 what is an error: “Lwo” is not in J2:J4.', key: 'error as 0', causes: [{ sheet: 'Drums', row: 1, column: 0 }] }])
    expect(found('=2*IFNA(VLOOKUP("Dock",J2:K4,2,FALSE()),1)').map(({ reason }) => reason)).toEqual(['Counts as 1 what is an error: “Dock” is not in J2:K4.'])
    expect(findOf(swallowedErrors, surveyOf({ Drums: { A1: '=1/0', B1: '=IFERROR(A1*2,0)' } })).map(({ reason }) => reason)).toEqual(['Counts as 0 what is an error: A1 shows #DIV/0!.'])
  })

  it('are none where nothing is wrong now, nothing is looked for yet, or a text shows instead', () => {
    for (const formula of ['=IFERROR(INDEX(K2:K4,MATCH(A1,J2:J4,0)),0)', '=IFERROR(INDEX(K2:K4,MATCH("LOW",J2:J4,0)),0)', '=IFERROR(MATCH(A9,J2:J4,0),0)', '=IFERROR(MATCH(A2,J2:J4,0),"–")', '=IFERROR(MATCH("L*",J2:J4,0),0)']) expect(found(formula), formula).toEqual([])
  })
})
