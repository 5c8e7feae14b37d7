import type { LoadSource } from '../../calc/loading.ts'
import { canBeTaken, isAsked, type Change } from '../../exchange/return/changes.ts'
import { takeOver } from '../../exchange/return/take-over.ts'
import { applyEdits } from '../../workbook/edits.ts'
import type { Cell, Workbook } from '../../workbook/document.ts'
import { unpackInto } from '../../workbook/packed-rows.ts'
import type { CalculationClient } from '../calculation/client.ts'
import type { OwnWorkbook } from '../files/library.ts'
import { startTaking } from '../return/return-client.ts'

/** A workbook to compare with: where it comes from, and how it gets into a calculation of its own. */
export interface BeforeSource {
  /** After "with": "the workbook as it was opened". */
  readonly words: string
  readonly isTemplate: boolean
  /** The workbook as it is then in that calculation. @throws Error with words for the user where it cannot be read */
  open(client: CalculationClient, report: (share: number | undefined, words?: string) => void): Promise<Workbook>
}

export const workbookSource = (workbook: Workbook, words: string): BeforeSource => ({ words, isTemplate: false, async open(client) {
  await client.open(workbook)
  return workbook
} })

export const templateSource = (template: OwnWorkbook): BeforeSource => ({
  words: `the template “${template.title}”`,
  isTemplate: true,
  async open(client, report) {
    return load(client, await template.file(), template.title, report)
  },
})

/** A workbook file, or a spreadsheet file that Lowside exported: that one with all that was changed in it since and can be taken over. */
export const fileSource = (file: File): BeforeSource => ({
  words: `“${file.name}”`,
  isTemplate: false,
  async open(client, report) {
    if (!(await isZip(file))) return load(client, file, file.name, report)
    const taken = await startTaking(file, (_, share) => report(share, `Reading ${file.name}`)).result
    if ('problem' in taken) throw new Error(taken.problem)
    if ('contents' in taken) throw new Error(`“${file.name}” was not exported by Lowside, or what it carried of its workbook is damaged${taken.damaged === undefined ? '' : ` (${taken.damaged})`}. ${ACCEPTED}; Import brings its sheets in.`)
    const workbook = await load(client, taken.text, file.name, report)
    const edits = takeOver(workbook, taken.changes, { inputs: true, taken: takeable(taken.changes), setAside: false })
    // What does not fit together is found before the calculation hears of it.
    const { workbook: changed } = applyEdits(workbook, edits)
    await client.apply(edits)
    return changed
  },
})

const ACCEPTED = 'Accepted: a workbook file (.lowside.json), or a spreadsheet file that Lowside exported (.xlsx, .ods)'

const takeable = (changes: readonly Change[]): ReadonlySet<number> => new Set(changes.flatMap((change) => (isAsked(change) && canBeTaken(change) ? [change.id] : [])))

async function isZip(file: File): Promise<boolean> {
  const [first, second] = new Uint8Array(await file.slice(0, 2).arrayBuffer())
  return first === 0x50 && second === 0x4b
}

async function load(client: CalculationClient, source: LoadSource, name: string, report: (share: number | undefined, words?: string) => void): Promise<Workbook> {
  let head: Workbook | undefined
  const rows: (Cell | undefined)[][][] = []
  const problems = await client.load(source, (news) => {
    if ('step' in news) report(news.share, `Reading ${name}`)
    else if ('workbook' in news) {
      head = news.workbook
      rows.push(...news.workbook.sheets.map(() => []))
    } else {
      const sheet = rows[news.sheet]
      if (sheet) unpackInto(sheet, news.rows)
    }
  })
  if (head === undefined) throw new Error(`“${name}” cannot be compared with: ${problems[0]?.message ?? 'it holds no workbook'}. ${ACCEPTED}.`)
  return { ...head, sheets: head.sheets.map((sheet, index) => ({ ...sheet, rows: rows[index] ?? [] })) }
}
