import type { HandedOver } from '../../calc/messages.ts'
import { applyEdits } from '../../workbook/edits.ts'
import { acceptDifferences } from './accept.ts'
import { compareWorkbooks, type CompareOptions } from './compare-workbooks.ts'
import type { Comparison } from './difference.ts'
import type { DifferencesNews, DifferencesRequest } from './messages.ts'
import { differencesReport } from './report.ts'
import { toCase } from './results-case.ts'

/** Compares workbooks on a thread of its own: with one before, which is kept, as often as that now changes. One request after another. */
let before: HandedOver | undefined
let sides: CompareOptions['sides']
let now: HandedOver | undefined
let comparison: Comparison | undefined
let earlier: Promise<void> = Promise.resolve()

addEventListener('message', ({ data: request }: MessageEvent<DifferencesRequest>) => {
  const handed = 'port' in request ? handedOver(request.port) : undefined
  earlier = earlier.then(async () => {
    try {
      tell(answer(request, await handed))
    } catch (fault) {
      tell({ id: request.id, kind: 'fault', words: fault instanceof Error ? fault.message : String(fault) })
    }
  })
})

/** With the case current that was so; the values stay those of the other. */
const asItWas = ({ workbook, ...rest }: HandedOver, current: string): HandedOver => ({ ...rest, workbook: applyEdits(workbook, toCase(workbook, current)).workbook })

const handedOver = (port: MessagePort): Promise<HandedOver> =>
  new Promise((resolve) => {
    port.onmessage = ({ data }: MessageEvent<HandedOver>) => {
      port.close()
      resolve(data)
    }
  })

function answer(request: DifferencesRequest, handed: HandedOver | undefined): DifferencesNews {
  const { id } = request
  if (request.kind === 'before') {
    before = handed && asItWas(handed, request.current)
    sides = request.isTemplate ? 'template' : 'workbooks'
    return { id, kind: 'kept' }
  }
  if (before === undefined) throw new Error('there is no workbook to compare with yet')
  if (request.kind === 'compare') {
    now = handed && asItWas(handed, request.current)
    if (now === undefined) throw new Error('there is no workbook to compare')
    comparison = compareWorkbooks(before, now, { ...(sides && { sides }), results: request.chosen, report: (share) => tell({ id, kind: 'share', share }) })
    const { differences, effects, resultsCompared, resultsOf } = comparison
    for (let at = 0; at < differences.length; at += PART) tell({ id, kind: 'differences part', differences: differences.slice(at, at + PART) })
    return { id, kind: 'compared', effects, resultsCompared, resultsOf }
  }
  if (now === undefined || comparison === undefined) throw new Error('nothing has been compared yet')
  if (request.kind === 'accept') return { id, kind: 'edits', edits: acceptDifferences(before.workbook, now.workbook, comparison, request.ids) }
  return { id, kind: 'report', html: differencesReport({ before, now, comparison, ...request }) }
}

/** So many cross to the screen at once: more would take it longer than a frame. */
const PART = 500

const tell = (news: DifferencesNews): void => postMessage(news)
