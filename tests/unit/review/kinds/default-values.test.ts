import { describe, expect, it } from 'vitest'
import { defaultValues } from '../../../../src/review/kinds/default-values.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { insertLines } from '../../../../src/workbook/line-commands.ts'
import { setEntry } from '../../../../src/workbook/commands.ts'
import type { Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { restate } from '../../../../src/workbook/restate.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at } from '../../workbook-of.ts'
import { findOf, surveyOfWorkbook } from '../survey-of.ts'

const template = readTemplate('templates/feed-comparison.lowside.json')
const typed = (workbook: Workbook, sheet: string, entries: Readonly<Record<string, string>>): Workbook =>
  Object.entries(entries).reduce((before, [address, text]) => applyEdits(before, setEntry(before, sheet, at(address), text)).workbook, workbook)
const found = (workbook: Workbook) => findOf(defaultValues, surveyOfWorkbook(workbook, matchTemplate(workbook, [template])))
const basis = (workbook: Workbook) => found(workbook).filter(({ sheet }) => sheet === 'Basis')

const started = typed(template, 'Comparison', { C6: '140' })

describe('values from memory or practice that are still the template’s', () => {
  it('are one remark a block, once the workbook has a number of its own', () => {
    expect(found(template)).toEqual([])
    expect(basis(started).map(({ severity, area, reason, key }) => ({ severity, area, reason, key }))).toEqual([{
      severity: 'remark', area: { top: 7, bottom: 12, left: 2, right: 2 }, key: 'as in the template',
      reason: '4 numbers are still as in the template “Feed methods compared”, with a source that is memory or common practice: “Margin on the load”, “Separation factor K”, “Droplet that must fall” and “Share of the velocity allowed for unsteady flow”. Confirm them, and write where from beside it.',
    }])
  })

  it('are no more once another number, or another source, stands there', () => {
    const confirmed = typed(started, 'Basis', { C8: '15', F10: 'Read in the current handbook, table 3, on 2 November', C11: '150', C13: '70' })
    expect(basis(confirmed)).toEqual([])
  })

  it('are known in other units, and after rows have been inserted', () => {
    const si = applyEdits(started, restate(started, 'SI')).workbook
    expect(basis(si).map(({ reason }) => reason.slice(0, 9))).toEqual(['4 numbers'])
    const longer = applyEdits(started, insertLines(started, 'Basis', { axis: 'rows', at: 6, count: 2 })).workbook
    expect(basis(longer).map(({ area }) => area)).toEqual([{ top: 9, bottom: 14, left: 2, right: 2 }])
  })

  it('are not looked for without a template', () => {
    expect(findOf(defaultValues, surveyOfWorkbook(started))).toEqual([])
  })
})
