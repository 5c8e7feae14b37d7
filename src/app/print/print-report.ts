import type { AreaValues } from '../../calc/values.ts'
import figureStyle from '../../figures/figures.css?inline'
import { dateInWords } from '../../pages/date-words.ts'
import { makeReport } from '../../report/report.ts'
import { joined, valuesNeeded } from '../../report/values-needed.ts'
import type { Finding } from '../../review/finding.ts'
import type { Reviewed } from '../../review/reviewed.ts'
import type { ReportSettings } from '../../workbook/report-settings.ts'
import { createReviewThread } from '../review/review-thread.ts'
import type { Session } from '../state/session.ts'
import { printPages } from './print-pages.ts'

/** What to print, as chosen in the dialog. */
export interface Printing {
  readonly settings: ReportSettings
  readonly sheets: ReadonlySet<string>
  /** Looks for findings, so that the report has them. */
  readonly withReview: boolean
}

/** Makes the report of the workbook as it is and hands it to the browser's printing. It stands in the page, unseen on the screen, until that is over. */
export async function printReport(session: Session, { settings, sheets, withReview }: Printing): Promise<void> {
  const { service, document: { workbook: current } } = session
  const workbook = current()
  const found = withReview ? await review(session) : undefined
  const states = await service.states()
  const values = new Map<string, AreaValues>()
  for (const [sheet, areas] of valuesNeeded(workbook, sheets)) {
    values.set(sheet, joined(await Promise.all(areas.map(async (area) => [area, await service.read(sheet, area)] as const))))
  }
  printPages(makeReport({ workbook, values, states, settings, sheets, date: dateInWords(new Date()), figureStyle, ...(found && { reviewed: found }) }))
}

/** All findings of the open workbook. */
async function review(session: Session): Promise<Reviewed> {
  const thread = createReviewThread(session)
  const findings: Finding[] = []
  let last: Pick<Reviewed, 'lookedFor' | 'template'> | undefined
  const { result } = thread.ask('Looking for findings to print', { kind: 'findings' }, (news) => {
    if (news.kind === 'findings part') findings.push(...news.findings)
    else if (news.kind === 'found') last = { lookedFor: news.lookedFor, template: news.template }
    return news.kind === 'share' ? news.share : undefined
  })
  await result.finally(thread.end)
  if (last === undefined) throw new Error('what is to be found in the workbook did not come')
  return { findings, ...last }
}
