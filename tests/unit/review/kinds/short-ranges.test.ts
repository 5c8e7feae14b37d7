import { describe, expect, it } from 'vitest'
import { shortRanges } from '../../../../src/review/kinds/short-ranges.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, surveyOf } from '../survey-of.ts'

/** A list in rows 3 to 10 of charges by part, and formulas beside and below it. */
const list = (others: Readonly<Record<string, Put>>, gap?: number) => surveyOf({
  Charge: {
    ...Object.fromEntries(Array.from({ length: 8 }, (_, index) => index + 3).filter((row) => row !== gap).flatMap((row): [string, Put][] => [[`A${row}`, `Part ${row}`], [`B${row}`, [row, 'input']], [`C${row}`, `=B${row}*38`]])),
    ...others,
  },
})
const found = (others: Readonly<Record<string, Put>>, gap?: number) => findOf(shortRanges, list(others, gap))

describe('ranges that leave out rows of their list', () => {
  it('end before it, or begin after it', () => {
    const [only] = found({ C12: '=SUM(C3:C8)' })
    expect(only).toMatchObject({ severity: 'warning', area: { top: 11, left: 2 }, reason: 'Takes in C3:C8, and leaves out rows 9 to 10 of that list.', key: 'leaves out 2 rows', causes: [{ sheet: 'Charge', row: 8, column: 2 }] })
    expect(only?.mend?.edits).toEqual([{ kind: 'cells', sheet: 'Charge', cells: [{ row: 11, column: 2, cell: { content: '=SUM(C3:C10)', role: 'result' } }] }])
    expect(found({ C12: '=SUM($B$4:$B$9)' }).map(({ reason }) => reason)).toEqual(['Takes in $B$4:$B$9, and leaves out row 3 and row 10 of that list.'])
  })

  it('are one where totals of several columns do', () => {
    expect(found({ B12: '=SUM(B3:B8)', C12: '=SUM(C3:C8)' }).map(({ area }) => area)).toEqual([{ top: 11, bottom: 11, left: 1, right: 2 }])
  })

  it('are none where they take in all of it, or more', () => {
    expect(found({ C12: '=SUM(C3:C10)', C13: '=SUM(C2:C11)', C14: '=SUM(C:C)', C15: '=C3+C4' })).toEqual([])
  })

  it('are none of running sums, of a list that ends at a gap, and of rows that are no list', () => {
    expect(found(Object.fromEntries(Array.from({ length: 8 }, (_, index) => [`D${index + 3}`, `=SUM(C$3:C${index + 3})`] as const)))).toEqual([])
    expect(found({ C12: '=SUM(C3:C6)' }, 7)).toEqual([])
    expect(findOf(shortRanges, surveyOf({ Duty: { B1: 1, B2: '=B1+1', B3: '=B2*5', B4: '=SQRT(B3)', B5: '=B4/7', B6: '=SUM(B1:B3)' } }))).toEqual([])
  })
})
