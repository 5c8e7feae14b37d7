import type { AreaValues } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import { findFindings } from './find-findings.ts'
import type { Finding } from './finding.ts'
import { KINDS } from './kinds.ts'
import { matchTemplate } from './match-template.ts'
import type { LookedFor } from './messages.ts'
import { Survey } from './survey.ts'

/** What has been found in a workbook when it was looked for. */
export interface Reviewed {
  readonly findings: readonly Finding[]
  readonly lookedFor: readonly LookedFor[]
  /** The title of the template that the workbook was laid beside; undefined where it is like none. */
  readonly template: string | undefined
}

/**
 * Looks for all findings of a workbook.
 * @param areas by sheet name, every value from A1
 * @param report told from time to time what share is done
 */
export function reviewed(workbook: Workbook, areas: ReadonlyMap<string, AreaValues>, templates: readonly Workbook[], report?: (share: number) => void): Reviewed {
  const template = matchTemplate(workbook, templates)
  const findings = findFindings(new Survey(workbook, areas, template), report)
  return { findings, lookedFor: KINDS.map(({ kind, heading, about }) => ({ kind, heading, about })), template: template?.title }
}
