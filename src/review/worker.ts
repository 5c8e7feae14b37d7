import type { HandedOver } from '../calc/messages.ts'
import type { Workbook } from '../workbook/document.ts'
import { matchTemplate } from './match-template.ts'
import type { ReviewNews, ReviewQuestion, ReviewRequest } from './messages.ts'
import { readTemplates } from './read-templates.ts'
import { reviewed } from './reviewed.ts'

/** Reviews workbooks on a thread of its own, with what the calculation hands over: one request after another. */
let templates: readonly Workbook[] = []
let before: Promise<void> = Promise.resolve()

addEventListener('message', ({ data: { id, question, port, templates: files } }: MessageEvent<ReviewRequest>) => {
  const handed = new Promise<HandedOver>((resolve) => {
    port.onmessage = ({ data }: MessageEvent<HandedOver>) => {
      port.close()
      resolve(data)
    }
  })
  before = before.then(async () => {
    try {
      if (files !== undefined) templates = await readTemplates(files)
      ANSWERS[question.kind](id, await handed)
    } catch (fault) {
      tell({ id, kind: 'fault', words: fault instanceof Error ? fault.message : String(fault) })
    }
  })
})

const ANSWERS: Readonly<Record<ReviewQuestion['kind'], (id: number, handed: HandedOver) => void>> = {
  findings(id, { workbook, areas }) {
    const { findings, lookedFor, template } = reviewed(workbook, areas, templates, (share) => tell({ id, kind: 'share', share }))
    for (let at = 0; at < findings.length; at += PART) tell({ id, kind: 'findings part', findings: findings.slice(at, at + PART) })
    tell({ id, kind: 'found', lookedFor, template })
  },
  template: (id, { workbook }) => tell({ id, kind: 'template', title: matchTemplate(workbook, templates)?.title }),
}

/** So many cross to the screen at once: more would take it longer than a frame. */
const PART = 500

const tell = (news: ReviewNews): void => postMessage(news)
