import { describe, expect, it } from 'vitest'
import { templateFormulas } from '../../../../src/review/kinds/template-formulas.ts'
import { unlikeNeighbours } from '../../../../src/review/kinds/unlike-neighbours.ts'
import { matchTemplate } from '../../../../src/review/match-template.ts'
import { setEntry } from '../../../../src/workbook/commands.ts'
import { cellAt, isFormula, type Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { insertLines } from '../../../../src/workbook/line-commands.ts'
import { readTemplate } from '../../../templates/open-template.ts'
import { at } from '../../workbook-of.ts'
import { findOf, surveyOfWorkbook } from '../survey-of.ts'

const feed = readTemplate('templates/feed-valves.lowside.json')

/** A formula with a part of it replaced. */
function changed(workbook: Workbook, address: string, part: string, by: string): Workbook {
  const { row, column } = at(address)
  const content = cellAt(workbook, 'Feed', row, column)?.content
  if (!isFormula(content) || !content.includes(part)) throw new Error(`${address} has no ${part}`)
  return applyEdits(workbook, setEntry(workbook, 'Feed', { row, column }, content.replace(part, by))).workbook
}
const surveyed = (workbook: Workbook) => surveyOfWorkbook(workbook, matchTemplate(workbook, [feed]))
const wordsOf = (workbook: Workbook): string[] => findOf(templateFormulas, surveyed(workbook)).map(({ reason }) => reason.replace('Not the formula of the template “Feed of the drums”: ', ''))

describe('formulas other than the template’s', () => {
  it('say in what they differ', () => {
    expect(wordsOf(changed(feed, 'G29', '$C$7:$D$7', '$C$13:$D$13'))).toEqual(['refers to $C$13:$D$13 instead of $C$7:$D$7.'])
    expect(wordsOf(changed(feed, 'C18', '-', '+'))).toEqual(['has + instead of -.'])
    expect(wordsOf(changed(feed, 'E29', '*(1+UNIT.CONVERT(load_margin,"-"))', ''))).toEqual(['lacks “*(1+UNIT.CONVERT(load_margin,"-"))”: =FEED.FLOW(C29&C$25,D29&D$25,liquid_temperature,E$25).'])
    expect(wordsOf(changed(feed, 'C19', 'SAT.PRESSURE(liquid_temperature,D19)', '150'))).toEqual(['is =150 instead of =SAT.PRESSURE(liquid_temperature,D19).'])
  })

  it('are one where a column was changed alike, and are not told of as unlike their neighbours too', () => {
    const workbook = ['G28', 'G29', 'G30'].reduce((before, address) => changed(before, address, '$C$7:$D$7', '$C$13:$D$13'), feed)
    expect(findOf(templateFormulas, surveyed(workbook)).map(({ area }) => area)).toEqual([{ top: 27, bottom: 29, left: 6, right: 6 }])
    expect(findOf(unlikeNeighbours, surveyed(changed(feed, 'G29', '$C$7:$D$7', '$C$13:$D$13')))).toEqual([])
  })

  it('have the formula of the template to put back', () => {
    const workbook = changed(feed, 'E29', 'D$25', 'D$26')
    const [only] = findOf(templateFormulas, surveyed(workbook))
    expect(wordsOf(applyEdits(workbook, only?.mend?.edits ?? []).workbook)).toEqual([])
  })

  it('are accepted by what is so, which inserted rows do not change', () => {
    const keyOf = (workbook: Workbook): string | undefined => findOf(templateFormulas, surveyed(workbook))[0]?.key
    const workbook = changed(feed, 'E29', 'D$25', 'D$24')
    const lower = applyEdits(workbook, insertLines(workbook, 'Feed', { axis: 'rows', at: 16, count: 3 })).workbook
    expect(keyOf(lower)).toBe(keyOf(workbook))
    expect(keyOf(changed(feed, 'E29', 'D$25', 'D$23'))).not.toBe(keyOf(workbook))
  })

  it('are none where the template has no formula, or the formula is only spelt otherwise', () => {
    expect(wordsOf(changed(feed, 'E29', 'D29&D$25', ' $D29 & $D$25 '))).toEqual([])
    expect(wordsOf(applyEdits(feed, setEntry(feed, 'Feed', at('C29'), '=35*2')).workbook)).toEqual([])
    expect(findOf(templateFormulas, surveyOfWorkbook(feed))).toEqual([])
  })
})
