import { MAX_TEXT } from './limits.ts'

export const PAPERS = ['Letter', 'A4'] as const
export type Paper = (typeof PAPERS)[number]

/** What a printed report says of its making. An empty name is a place to sign. */
export interface ReportSettings {
  readonly preparedBy: string
  readonly checkedBy: string
  readonly paper: Paper
}

/** What of them no file accepts, in words. */
export function reportSettingsProblem({ preparedBy, checkedBy, paper }: ReportSettings): string | undefined {
  if (preparedBy.length > MAX_TEXT || checkedBy.length > MAX_TEXT) return `prepared by, checked by: accepted: up to ${MAX_TEXT} characters`
  return PAPERS.includes(paper) ? undefined : `paper ${JSON.stringify(paper)}; accepted: ${PAPERS.join(', ')}`
}

export const sameReportSettings = (one: ReportSettings | undefined, other: ReportSettings | undefined): boolean =>
  one?.preparedBy === other?.preparedBy && one?.checkedBy === other?.checkedBy && one?.paper === other?.paper
