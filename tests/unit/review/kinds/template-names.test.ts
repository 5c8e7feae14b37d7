import { expect, it } from 'vitest'
import { templateNames } from '../../../../src/review/kinds/template-names.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { insertLines } from '../../../../src/workbook/line-commands.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { findOf, surveyOfWorkbook } from '../survey-of.ts'

const sizing = readTemplate('templates/vessel-sizing.lowside.json')
const found = (workbook: Workbook) => findOf(templateNames, surveyOfWorkbook(workbook, matchTemplate(workbook, [sizing])))
const pointed = (refersTo: string): Workbook => applyEdits(sizing, [{ kind: 'name', name: 'velocity_share', refersTo }]).workbook

it('a name that stands for another cell than in the template is found, and can be pointed back', () => {
  const [only, ...others] = found(pointed('Basis!$C$18:$D$18'))
  expect(others).toEqual([])
  expect(only).toMatchObject({
    severity: 'warning', sheet: 'Basis', area: { top: 17, bottom: 17, left: 2, right: 3 }, causes: [{ sheet: 'Basis', row: 13, column: 2 }],
    reason: 'The name velocity_share stands for Basis!$C$18:$D$18; in the template “Surge drum sizing” it stands for Basis!$C$14:$D$14.',
  })
  expect(found(applyEdits(pointed('Basis!$C$18:$D$18'), only?.mend?.edits ?? []).workbook)).toEqual([])
  expect(found(pointed('75')).map(({ key }) => key)).toEqual(['velocity_share: 75'])
})

it('names that only follow inserted rows, are spelt otherwise or are new are none', () => {
  expect(found(applyEdits(sizing, insertLines(sizing, 'Basis', { axis: 'rows', at: 8, count: 2 })).workbook)).toEqual([])
  expect(found(pointed('basis!C14:D14'))).toEqual([])
  expect(found(applyEdits(sizing, [{ kind: 'name', name: 'own_name', refersTo: 'Basis!$C$18' }]).workbook)).toEqual([])
  expect(findOf(templateNames, surveyOfWorkbook(pointed('Basis!$C$18')))).toEqual([])
})
