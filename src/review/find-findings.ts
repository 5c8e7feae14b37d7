import { isWithin } from '../workbook/areas.ts'
import { foldCase, sheetByName } from '../workbook/document.ts'
import type { AcceptedFinding } from '../workbook/review-record.ts'
import { labelInRow } from '../workbook/words-beside.ts'
import type { Finding, FindingKind, Found, Severity } from './finding.ts'
import { KINDS } from './kinds.ts'
import type { Survey } from './survey.ts'

/**
 * All there is to look at in a workbook, accepted or not: in the order of the sheets, then of reading, then the worst first.
 * @param report told after each kind what share of them has been looked for
 */
export function findFindings(survey: Survey, report?: (share: number) => void, kinds: readonly FindingKind[] = KINDS): Finding[] {
  const found: Finding[] = []
  for (const [index, { kind, heading, find }] of kinds.entries()) {
    const add = (one: Found): void => void found.push(finding(survey, kind, one))
    try {
      for (const one of find(survey)) add(one)
    } catch (fault) {
      // What the other kinds find is worth no less.
      add(notLookedFor(survey, heading, fault))
    }
    report?.((index + 1) / kinds.length)
  }
  const order = new Map(survey.workbook.sheets.map(({ name }, index) => [name, index] as const))
  const orderOf = ({ sheet }: Finding): number => order.get(sheet) ?? -1
  return found.toSorted((one, other) =>
    orderOf(one) - orderOf(other) || one.area.top - other.area.top || one.area.left - other.area.left || WEIGHT[other.severity] - WEIGHT[one.severity])
}

const WEIGHT: Readonly<Record<Severity, number>> = { error: 2, warning: 1, remark: 0 }

function finding(survey: Survey, kind: string, found: Found): Finding {
  const accepted = survey.workbook.review?.accepted.findLast((one) => isFor(one, kind, found))
  return { ...found, kind, label: labelOfArea(survey, found), ...(accepted && { accepted }) }
}

const isFor = (one: AcceptedFinding, kind: string, { sheet, area, key }: Found): boolean =>
  one.kind === kind && one.key === key && foldCase(one.sheet) === foldCase(sheet) && isWithin(area, one.area)

function labelOfArea(survey: Survey, { sheet: name, area: { top: row, left: column } }: Found): string | undefined {
  const sheet = sheetByName(survey.workbook, name)
  return sheet && labelInRow(sheet, { row, column }, (at) => {
    const value = survey.value(name, row, at)
    return typeof value === 'string' ? value : undefined
  })
}

function notLookedFor(survey: Survey, heading: string, fault: unknown): Found {
  const why = fault instanceof Error ? fault.message : String(fault)
  return {
    severity: 'warning', sheet: survey.workbook.sheets[0]?.name ?? '', area: { top: 0, bottom: 0, left: 0, right: 0 },
    reason: `“${heading}” could not be looked for to the end: ${why}. What is wrong is in Lowside, not in the workbook.`, key: 'not looked for',
  }
}
