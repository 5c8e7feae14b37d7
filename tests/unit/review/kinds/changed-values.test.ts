import { describe, expect, it } from 'vitest'
import { changedValues } from '../../../../src/review/kinds/changed-values.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { setEntry } from '../../../../src/workbook/commands.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { restate } from '../../../../src/workbook/restate.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at } from '../../workbook-of.ts'
import { findOf, surveyOfWorkbook } from '../survey-of.ts'

const template = readTemplate('templates/feed-comparison.lowside.json')
const typed = (entries: Readonly<Record<string, string>>, workbook: Workbook = template): Workbook =>
  Object.entries(entries).reduce((before, [address, text]) => applyEdits(before, setEntry(before, 'Basis', at(address), text)).workbook, workbook)
const found = (workbook: Workbook) => findOf(changedValues, surveyOfWorkbook(workbook, matchTemplate(workbook, [template])))

describe('values that are not the template’s any more, beside its source', () => {
  it('are a remark with both numbers and the source', () => {
    const [only, ...others] = found(typed({ C10: '0.35' }))
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'remark', sheet: 'Basis', area: { top: 9, left: 2 }, key: 'changed to 0.35 ft/s' })
    expect(only?.reason).toBe(
      'The template “Feed methods compared” has 0.18 ft/s here, and its source still stands beside 0.35 ft/s: “Derived from the practice table (from memory); Souders & Brown 1934 for the form”. Write where the number comes from now.',
    )
  })

  it('are none with a source of their own, and where the source says only who knows the number', () => {
    expect(found(typed({ C10: '0.35', F10: 'Maker of the mesh pad, quotation 4711' }))).toEqual([])
    // "High side of the plant".
    expect(found(typed({ C7: '88' }))).toEqual([])
    expect(found(template)).toEqual([])
  })

  it('are none that only stand in other units', () => {
    const si = applyEdits(template, restate(template, 'SI')).workbook
    expect(found(si)).toEqual([])
    expect(found(typed({ C10: '0.1' }, si)).map(({ key, reason }) => [key, reason.slice(0, 55)])).toEqual([['changed to 0.1 m/s', 'The template “Feed methods compared” has 0.054864 m/s h']])
  })

  it('are none of a workbook that is like no template', () => {
    expect(findOf(changedValues, surveyOfWorkbook(typed({ C10: '0.35' })))).toEqual([])
  })
})
