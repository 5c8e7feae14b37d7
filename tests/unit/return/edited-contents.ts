import type { FileContents, ReadCell, ReadSheet } from '../../../src/exchange/reading/contents.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import { changesInFile } from '../../../src/exchange/return/find-changes.ts'
import type { Change } from '../../../src/exchange/return/changes.ts'
import { ownWorkbook, type OwnWorkbook } from '../../../src/exchange/return/own-workbook.ts'
import { decisionsFor, type Accept } from '../../../src/exchange/return/return-workbook.ts'
import { takeOver } from '../../../src/exchange/return/take-over.ts'
import { parseAddress } from '../../../src/workbook/address.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { deleting, inserting, shiftedReference } from '../../../src/workbook/formula/line-references.ts'
import { rewriteReferences } from '../../../src/workbook/formula/references.ts'
import { exported } from './other-program.ts'

/** What an exported workbook's file holds. */
export async function contentsOfExport(workbook: Workbook): Promise<FileContents> {
  const contents = await readFileContents(await exported(workbook), 'a.xlsx')
  if ('problem' in contents) throw new Error(contents.problem)
  return contents
}

const withSheet = (contents: FileContents, name: string, change: (sheet: ReadSheet) => ReadSheet): FileContents => ({ ...contents, sheets: contents.sheets.map((sheet) => (sheet.name === name ? change(sheet) : sheet)) })

/** A cell typed over: a text that begins with "=" is a formula. */
export function typed(contents: FileContents, sheet: string, address: string, value: number | string | boolean | null | ReadCell): FileContents {
  const { row, column } = parseAddress(address) ?? { row: 0, column: 0 }
  const cell: ReadCell = typeof value === 'object' && value !== null ? value : typeof value === 'string' && value.startsWith('=') ? { value: 0, formula: value.slice(1) } : { value }
  return withSheet(contents, sheet, (one) => {
    const rows = one.rows.slice()
    const cells = rows[row]?.slice() ?? []
    cells[column] = cell
    rows[row] = cells
    return { ...one, rows }
  })
}

/** Rows opened or closed by a program that lets formulas and names follow. */
export function withRows(contents: FileContents, sheet: string, kind: 'insert' | 'delete', at: number, count: number): FileContents {
  const shift = kind === 'insert' ? inserting('rows', at, count) : deleting(at, count)
  const follow = (formula: string, host: string | null): string => rewriteReferences(formula, (reference) => shiftedReference(reference, host, sheet, 'rows', shift))
  const followed: FileContents = {
    ...contents,
    names: new Map([...contents.names].map(([name, text]) => [name, follow(text, null)])),
    sheets: contents.sheets.map((one) => ({ ...one, rows: one.rows.map((row) => row?.map((cell) => (cell?.formula === undefined ? cell : { ...cell, formula: follow(cell.formula, one.name) }))) })),
  }
  return withSheet(followed, sheet, (one) => {
    const rows = Array.from(one.rows)
    if (kind === 'insert') rows.splice(at, 0, ...Array.from({ length: count }, () => undefined))
    else rows.splice(at, count)
    return { ...one, rows }
  })
}

export async function own(contents: FileContents): Promise<OwnWorkbook> {
  const found = await ownWorkbook(contents)
  if (found === undefined || 'problem' in found) throw new Error(found?.problem ?? 'not known as an own file')
  return found
}

export const changesIn = async (contents: FileContents): Promise<readonly Change[]> => changesInFile(await own(contents), contents)

export async function takenOver(contents: FileContents, accept: Accept, setAside = false): Promise<Workbook> {
  const { workbook } = await own(contents)
  const changes = await changesIn(contents)
  return applyEdits(workbook, takeOver(workbook, changes, { ...decisionsFor(changes, accept), setAside })).workbook
}
