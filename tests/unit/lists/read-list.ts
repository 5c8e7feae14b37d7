import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import type { WorkbookList } from '../../../src/exchange/lists/list.ts'
import { listsOf } from '../../../src/exchange/lists/lists-of.ts'
import { mapRows, type MappedRow } from '../../../src/exchange/lists/map-rows.ts'
import { sourceFor, suggestMapping } from '../../../src/exchange/lists/suggest-mapping.ts'
import type { FileContents, ReadSheet, ReadValue } from '../../../src/exchange/reading/contents.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { readTemplate } from '../../templates/open-template.ts'

export const inventory = (): Workbook => readTemplate('templates/charge-inventory.lowside.json')

export function listNamed(workbook: Workbook, name: string): WorkbookList {
  const list = listsOf(workbook).find((one) => one.name === name)
  if (!list) throw new Error(`no list ${name}`)
  return list
}

/** A sheet of a file, row by row; `null` and nothing are empty cells. */
export const sheetOfRows = (rows: readonly (readonly (ReadValue | undefined)[])[]): ReadSheet => ({
  name: 'List', hidden: false, widthsPx: [],
  rows: rows.map((row) => row.map((value) => (value === undefined || value === null ? undefined : { value }))),
})

export async function contentsOf(text: string, name = 'list.csv'): Promise<FileContents> {
  const read = await readFileContents(new TextEncoder().encode(text), name)
  if ('problem' in read) throw new Error(read.problem)
  return read
}

export const vesselListText = (): string => readFileSync(fileURLToPath(new URL('../../../demo-data/vessel-list.csv', import.meta.url)), 'utf8')

/** The rows of a text file as its headings suggest. */
export async function rowsOfText(workbook: Workbook, list: WorkbookList, text: string): Promise<MappedRow[]> {
  const contents = await contentsOf(text)
  const [sheet] = contents.sheets
  if (!sheet) throw new Error('no sheet')
  const source = sourceFor(list, sheet)
  return mapRows(list, source, suggestMapping(list, source), { workbook, fileHasDecimalCommas: contents.dialect?.decimalMark === ',' })
}
