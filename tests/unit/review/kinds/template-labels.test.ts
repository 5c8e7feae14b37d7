import { expect, it } from 'vitest'
import { templateLabels } from '../../../../src/review/kinds/template-labels.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { setEntry } from '../../../../src/workbook/commands.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { moveLines } from '../../../../src/workbook/line-commands.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at } from '../../workbook-of.ts'
import { findOf, surveyOfWorkbook } from '../survey-of.ts'

const interlocks = readTemplate('templates/interlocks.lowside.json')
const found = (workbook: Workbook) => findOf(templateLabels, surveyOfWorkbook(workbook, matchTemplate(workbook, [interlocks])))
const withLabels = (labels: Readonly<Record<string, string>>): Workbook =>
  Object.entries(labels).reduce((before, [address, text]) => applyEdits(before, setEntry(before, 'Interlocks', at(address), text)).workbook, interlocks)

it('labels that have changed places are found, each with its own place', () => {
  const swapped = withLabels({ B34: 'High-level cut-out', B35: 'High float, alarm' })
  expect(found(swapped).map(({ area: { top }, reason }) => [top, reason])).toEqual([
    [33, '“High-level cut-out” stands where the template “Interlocks: cause and effect” has “High float, alarm”; there it is the label of B35.'],
    [34, '“High float, alarm” stands where the template “Interlocks: cause and effect” has “High-level cut-out”; there it is the label of B34.'],
  ])
  expect(found(applyEdits(swapped, found(swapped).flatMap(({ mend }) => mend?.edits ?? [])).workbook)).toEqual([])
})

it('labels in other words, and rows that were moved with all that refers to them, are none', () => {
  expect(found(interlocks)).toEqual([])
  expect(found(withLabels({ B34: 'Alarm float', B35: 'Cut-out' }))).toEqual([])
  expect(found(applyEdits(interlocks, moveLines(interlocks, 'Interlocks', { axis: 'rows', at: 33, count: 1 }, 34)).workbook)).toEqual([])
})
