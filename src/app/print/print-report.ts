import type { AreaValues } from '../../calc/values.ts'
import figureStyle from '../../figures/figures.css?inline'
import { dateInWords } from '../../report/date-words.ts'
import { makeReport } from '../../report/report.ts'
import { joined, valuesNeeded } from '../../report/values-needed.ts'
import type { ReportSettings } from '../../workbook/report-settings.ts'
import type { Session } from '../state/session.ts'

/** What to print, as chosen in the dialog. */
export interface Printing {
  readonly settings: ReportSettings
  readonly sheets: ReadonlySet<string>
}

/** Makes the report of the workbook as it is and hands it to the browser's printing. It stands in the page, unseen on the screen, until that is over. */
export async function printReport({ service, document: { workbook: current } }: Session, { settings, sheets }: Printing): Promise<void> {
  const workbook = current()
  const states = await service.states()
  const values = new Map<string, AreaValues>()
  for (const [sheet, areas] of valuesNeeded(workbook, sheets)) {
    values.set(sheet, joined(await Promise.all(areas.map(async (area) => [area, await service.read(sheet, area)] as const))))
  }
  const { markup, style, pages } = makeReport({ workbook, values, states, settings, sheets, date: dateInWords(new Date()), figureStyle })

  const place = document.createElement('div')
  place.className = 'report-place'
  // A tree of its own: what the app says of its looks does not reach it.
  const paper = place.attachShadow({ mode: 'open' })
  paper.innerHTML = markup.markup // every text in it has been escaped by `element`
  paper.adoptedStyleSheets = [styleSheet(style)]
  const pageSheet = styleSheet(pages)
  document.body.append(place)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, pageSheet]
  window.addEventListener('afterprint', () => {
    place.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== pageSheet)
  }, { once: true })
  window.print()
}

function styleSheet(text: string): CSSStyleSheet {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(text)
  return sheet
}
