import type { Workbook } from '../workbook/document.ts'
import { readWorkbook, type ReadProblem } from '../workbook/file-reading.ts'
import { MIGRATIONS } from '../workbook/migrations.ts'
import { packRows, withoutRows, type PackedRows } from '../workbook/packed-rows.ts'
import { Graph } from './graph.ts'

/** What a thread tells while it takes in the text of a workbook file. */
export type LoadNews =
  | { readonly step: LoadStep; readonly share: number | undefined }
  /** The workbook without its rows; the rows of its sheets follow. */
  | { readonly workbook: Workbook }
  | { readonly sheet: number; readonly rows: PackedRows }

/** Reading the text; putting the cells into the graph; computing, which cannot be divided. */
export type LoadStep = 'reading' | 'building' | 'computing'

/** Reads a text and builds its graph, the workbook being told part by part; or what is wrong with the text. */
export async function loadGraph(source: Blob | string, tell: (news: LoadNews) => void): Promise<{ readonly graph: Graph } | { readonly problems: readonly ReadProblem[] }> {
  const text = typeof source === 'string' ? source : await source.text()
  const read = readWorkbook(text, MIGRATIONS, (share) => tell({ step: 'reading', share }))
  if ('problems' in read) return read
  const { workbook } = read
  tell({ workbook: withoutRows(workbook) })
  for (const [sheet, { rows }] of workbook.sheets.entries()) {
    for (const part of packRows(rows)) tell({ sheet, rows: part })
  }
  const graph = new Graph(workbook, (share) => tell(share < 1 ? { step: 'building', share } : { step: 'computing', share: undefined }))
  return { graph }
}
