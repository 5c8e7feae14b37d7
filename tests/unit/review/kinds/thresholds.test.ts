import { describe, expect, it } from 'vitest'
import { roundedThresholds } from '../../../../src/review/kinds/rounded-thresholds.ts'
import { thresholdUnits } from '../../../../src/review/kinds/threshold-units.ts'
import { triggerWords } from '../../../../src/review/kinds/trigger-words.ts'
import { withinRounding } from '../../../../src/review/kinds/within-rounding.ts'
import type { Put } from '../../workbook-of.ts'
import { findOf, placesOf, surveyOf } from '../survey-of.ts'

const unit = (text: string): Put => [text, 'unit']
const label = (text: string): Put => [text, 'label']

/** A charge and a limit, and what compares them. */
const charge = (amount: number, limit: Put, limitUnit: string, check: string, words = 'Charge stays below', further: Readonly<Record<string, Put>> = {}) => surveyOf({
  Thresholds: {
    B1: label('Charge'), C1: `=${amount}+0*A1`, D1: unit('lb'), A1: 0, B2: label('Limit'), C2: limit, D2: unit(limitUnit), B4: label(words), C4: [check, 'check'],
    B5: label('Charge, in hundreds'), C5: '=ROUND(C1,-2)', D5: unit('lb'), ...further,
  },
})

describe('thresholds compared in rounded numbers', () => {
  it('are named, and whether the rounding decides', () => {
    const [only, ...others] = findOf(roundedThresholds, charge(9_960, 10_000, 'lb', '=ROUND(C1,-2)<C2'))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', area: { top: 3, left: 2 }, key: 'rounded by ROUND' })
    expect(only?.reason).toBe('A side of the comparison is rounded by ROUND before it is compared: unrounded the comparison comes to TRUE. Compare the numbers as they are, and round what is shown.')
    expect(findOf(roundedThresholds, charge(9_700, 10_000, 'lb', '=ROUND(C1,-2)<C2'))[0]?.reason).toBe('A side of the comparison is rounded by ROUND before it is compared. Compare the numbers as they are, and round what is shown.')
  })

  it('are found in the cell that is compared, in a conversion, as text, and inside of another formula', () => {
    expect(findOf(roundedThresholds, charge(9_960, 10_000, 'lb', '=C5<C2'))[0]?.reason).toContain('C5 is rounded by ROUND before it is compared')
    for (const check of ['=UNIT.CONVERT(ROUND(C1,0)&D1,"lb")>=C2', '=VALUE(TEXT(C1,"0"))<C2', '=IF(INT(C1)>=C2,"reached","not reached")', '=C2>TRUNC(C1)', '=AND(ROUNDDOWN(C1,1)<C2,C1>0)']) {
      expect([check, placesOf(roundedThresholds, charge(9_960, 10_000, 'lb', check))]).toEqual([check, ['Thresholds!C4']])
    }
  })

  it('are not comparisons of equality, rounding of the last digits, sizes rounded up to a step, or rounding of what is shown', () => {
    for (const check of ['=ROUND(C1,1)=ROUND(C2,1)', '=ROUND(C1,9)<C2', '=C1<C2', '=IF(C1<C2,ROUND(C1,0),0)', '="below: "&ROUND(C2-C1,1)']) {
      expect([check, placesOf(roundedThresholds, charge(9_960, 10_000, 'lb', check))]).toEqual([check, []])
    }
    expect(placesOf(roundedThresholds, charge(9_960, '=ROUNDUP(9.2,0)*1000', 'lb', '=C1<C2'))).toEqual([])
  })
})

describe('checks decided by the last digits', () => {
  // 29 CFR 1910.119 prints 4535.9 kg for 10 000 lb, which are 4535.9237 kg.
  it('are those whose sides are one number, exact and as printed', () => {
    const survey = surveyOf({ Thresholds: { B1: label('Charge'), C1: 4535.9, D1: unit('kg'), B2: label('Limit'), C2: 10_000, D2: unit('lb'), C4: ['=UNIT.CONVERT(C1:D1,D2)<C2', 'check'] } })
    const [only, ...others] = findOf(withinRounding, survey)
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'remark', area: { top: 3, left: 2 } })
    expect(only?.reason).toBe('9999.94775 and 10000 differ by 0.00052 %: the last digits decide, and may have been lost in print or in another unit.')
  })

  it('are not those with room, those whose sides are equal, and comparisons that are no check', () => {
    for (const [amount, role] of [[9_990, 'check'], [10_000, 'check'], [10_000 * (1 + 1e-12), 'check'], [9_999.9, 'result']] as const) {
      const survey = surveyOf({ Thresholds: { C1: amount, D1: unit('lb'), C2: 10_000, D2: unit('lb'), C4: ['=C1<=C2', role] } })
      expect([amount, placesOf(withinRounding, survey)]).toEqual([amount, []])
    }
  })
})

describe('thresholds in another unit than their rule’s', () => {
  // 10 000 lb are 4535.9237 kg: the pound is 0.45359237 kg by definition (NIST SP 811).
  it('are limits near a rounded print of it', () => {
    const [only, ...others] = findOf(thresholdUnits, charge(9_960, 4540, 'kg', '=UNIT.CONVERT(C1:D1,D2)<C2'))
    expect(others).toEqual([])
    expect(only?.severity).toBe('warning')
    expect(only?.reason).toBe('Held to 4540 kg in C2, a rounded 10000 lb (4535.924 kg), the threshold of 29 CFR 1910.119 (PSM) and 40 CFR 68 (RMP): compare in lb.')
    for (const limit of [4536, 4535.9, 4540]) expect([limit, placesOf(thresholdUnits, charge(9_960, limit, 'kg', '=UNIT.CONVERT(C1:D1,D2)>=C2'))]).toEqual([limit, ['Thresholds!C4']])
    // 500 lb are 226.796 kg, 50 t are 110 231 lb.
    expect(placesOf(thresholdUnits, charge(400, 227, 'kg', '=UNIT.CONVERT(C1:D1,D2)>=C2'))).toEqual(['Thresholds!C4'])
    expect(placesOf(thresholdUnits, charge(400, 110_000, 'lb', '=C1>=C2'))).toEqual(['Thresholds!C4'])
  })

  it('are found as numbers in the comparison itself, in the unit of the other side', () => {
    expect(placesOf(thresholdUnits, charge(9_960, 10_000, 'lb', '=UNIT.CONVERT(C1:D1,"kg")>=4536'))).toEqual(['Thresholds!C4'])
    expect(placesOf(thresholdUnits, charge(9_960, 10_000, 'lb', '=C1>=4536'))).toEqual([])
  })

  it('are not those in the rule’s own unit, exact ones, other limits, or numbers that nothing is held to', () => {
    for (const [limit, code] of [[10_000, 'lb'], [4535.9237, 'kg'], [4.5, 't'], [4500, 'kg'], [50, 't'], [8000, 'lb'], [4300, 'kg']] as const) {
      expect([limit, code, placesOf(thresholdUnits, charge(9_000, limit, code, '=UNIT.CONVERT(C1:D1,D2)>=C2'))]).toEqual([limit, code, []])
    }
    expect(placesOf(thresholdUnits, charge(9_000, 4540, 'kg', '=C1>0'))).toEqual([])
  })
})

describe('thresholds with the wrong word', () => {
  // 29 CFR 1910.119(a)(1)(i): at or above; 40 CFR 68.115(a): more than.
  it('are comparisons that decide otherwise at exactly the threshold than the rule that their row names', () => {
    const [only, ...others] = findOf(triggerWords, charge(9_960, 10_000, 'lb', '=C1>C2', 'PSM (29 CFR 1910.119) applies'))
    expect(others).toEqual([])
    expect(only?.reason).toBe('> decides here as for a rule that begins more than its threshold; PSM, 29 CFR 1910.119, which its row names, begins at or above it.')
    for (const [check, words] of [['=C2<C1', 'OSHA PSM'], ['=C1<=C2', 'Below PSM'], ['=C1>=C2', 'RMP, 40 CFR 68'], ['=IF(C1>=10000,"applies","no")', 'EPA RMP'], ['=C1>C2', 'Seveso, lower tier']] as const) {
      expect([check, words, placesOf(triggerWords, charge(9_960, 10_000, 'lb', check, words))]).toEqual([check, words, ['Thresholds!C4']])
    }
  })

  it('are words in a cell beside the rule', () => {
    const rows = (word: string) => surveyOf({ Thresholds: { B1: label('EPA risk management program (RMP)'), C1: 10_000, D1: unit('lb'), E1: [word, 'input'] } })
    expect(findOf(triggerWords, rows('at or above')).map(({ reason }) => reason)).toEqual(['“at or above”, but RMP, 40 CFR 68 begins more than its threshold.'])
    expect(placesOf(triggerWords, rows('more than'))).toEqual([])
    expect(findOf(triggerWords, rows('at or above'))[0]?.mend).toEqual({
      words: 'Write “more than”', edits: [{ kind: 'cells', sheet: 'Thresholds', cells: [{ row: 0, column: 4, cell: { content: 'more than', role: 'input' } }] }],
    })
  })

  it('are not comparisons with the rule’s own word, of other things, of rows that name no rule, or that choose the word', () => {
    for (const [check, words] of [
      ['=C1>=C2', 'PSM applies'], ['=C1<C2', 'Below PSM'], ['=C1>C2', 'RMP applies'], ['=C1<=C2', 'Below RMP'], ['=C1>C2', 'Charge is high'], ['=IF(D4="more than",C1>C2,C1>=C2)', 'PSM applies'], ['=C1>C2', 'PSM and RMP'],
    ] as const) expect([check, words, placesOf(triggerWords, charge(9_960, 10_000, 'lb', check, words))]).toEqual([check, words, []])
  })
})
