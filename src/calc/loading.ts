import type { Workbook } from '../workbook/document.ts'
import { readWorkbook, type ReadProblem, type ReadResult } from '../workbook/file-reading.ts'
import { MIGRATIONS } from '../workbook/migrations.ts'
import { packRows, withoutRows, type PackedRows } from '../workbook/packed-rows.ts'
import { recover, type Recovered, type RecoveredFrom } from '../storage/recover.ts'
import type { KeptContents } from '../storage/shelf.ts'
import { withTexts } from '../storage/stored.ts'
import { Graph } from './graph.ts'

/** The text of a workbook file, or what a browser keeps of a workbook. */
export type LoadSource = Blob | string | KeptContents

/** What a thread tells while it takes in a workbook. */
export type LoadNews =
  | { readonly step: LoadStep; readonly share: number | undefined }
  /** The workbook without its rows; the rows of its sheets follow. */
  | { readonly workbook: Workbook; readonly from?: RecoveredFrom }
  | { readonly sheet: number; readonly rows: PackedRows }

/** Reading the text; putting the cells into the graph; computing, which cannot be divided. */
export type LoadStep = 'reading' | 'building' | 'computing'

/** Reads a workbook and builds its graph, the workbook being told part by part; or what is wrong with it. */
export async function loadGraph(source: LoadSource, tell: (news: LoadNews) => void): Promise<{ readonly graph: Graph } | { readonly problems: readonly ReadProblem[] }> {
  const read = await readSource(source, (share) => tell({ step: 'reading', share }))
  if ('problems' in read) return read
  const { workbook, ...from } = read
  tell({ workbook: withoutRows(workbook), ...('number' in from ? { from } : {}) })
  for (const [sheet, { rows }] of workbook.sheets.entries()) {
    for (const part of packRows(rows)) tell({ sheet, rows: part })
  }
  const graph = new Graph(workbook, (share) => tell(share < 1 ? { step: 'building', share } : { step: 'computing', share: undefined }))
  return { graph }
}

async function readSource(source: LoadSource, report: (share: number) => void): Promise<ReadResult | Recovered> {
  if (typeof source === 'string') return readWorkbook(source, MIGRATIONS, report)
  if (source instanceof Blob) return readWorkbook(await source.text(), MIGRATIONS, report)
  const recovered = recover(await withTexts(source), report)
  return 'problem' in recovered ? { problems: [{ message: recovered.problem }] } : recovered
}
