import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import type { FileSheet } from '../package/file-sheet.ts'
import type { ReadCell, ReadSheet } from '../reading/contents.ts'
import { COLUMNS_BEFORE, HEADER_ROWS, type FunctionRows } from '../workings/call-book.ts'
import type { WorkingsChange } from './changes.ts'
import { expectedRows, type ExpectedCell } from './expected-sheet.ts'
import { cellWords } from './file-content.ts'
import type { Found } from './find-changes.ts'
import type { FormulasCompared } from './formulas-compared.ts'
import { readingMark } from './reading-mark.ts'
import { sameComputed } from './same-value.ts'
import { readRows } from './sheet-matching.ts'

/** What differs in the workings of a function, or, without it, in tables. */
export function* workingsChanges(sheet: FileSheet, read: ReadSheet | undefined, rows: FunctionRows | undefined, formulas: FormulasCompared): Generator<Found> {
  const of = rows?.definition.name ?? sheet.name
  const words = quoteSheetName(sheet.name)
  const change = (place: string, was: string, is: string, step = '', firstCalledIn = ''): Omit<WorkingsChange, 'id'> => ({ kind: 'workings', place, was, is, of, step, firstCalledIn })
  if (read === undefined) {
    yield change(words, 'the sheet', 'gone, or with another name')
    return
  }
  if (read.name !== sheet.name) yield change(words, `the name ${sheet.name}`, `the name ${read.name}`)
  const seen = new Set<number>()
  for (const { row, cells } of expectedRows(sheet)) {
    seen.add(row)
    const found = read.rows[row] ?? []
    for (let column = 0; column < Math.max(cells.length, found.length); column++) {
      if (!differs(cells[column], found[column], sheet.name, formulas)) continue
      const call = rows?.rows[row - HEADER_ROWS]
      const step = call === undefined ? '' : (rows?.definition.workings.columns[column - COLUMNS_BEFORE]?.label ?? '')
      yield change(`${words}!${printAddress(row, column)}`, cellWords(cells[column]), cellWords(found[column]), step, call?.place ?? '')
    }
  }
  for (const { row, cells } of readRows(read)) {
    if (seen.has(row)) continue
    for (const [column, cell] of cells.entries()) if (differs(undefined, cell, sheet.name, formulas)) yield change(`${words}!${printAddress(row, column)}`, 'nothing', cellWords(cell))
  }
}

/** The cover, and what comes out in cases, are made anew with every export: that someone wrote on them is said in one line. @param mark of what stood there */
export function* readingChanges(name: string, mark: string | undefined, read: ReadSheet | undefined): Generator<Found> {
  if (mark === undefined || (read !== undefined && readingMark(readRows(read)) === mark)) return
  yield {
    kind: 'passedOver', place: quoteSheetName(name), was: 'what the export wrote', is: read === undefined ? 'gone' : 'something else, or more, was written on it',
    reason: 'The sheet is no part of the workbook: every export makes it anew.',
  }
}

function differs(exported: ExpectedCell | undefined, inFile: ReadCell | undefined, host: string, formulas: FormulasCompared): boolean {
  if (exported?.formula !== undefined && inFile?.formula !== undefined) return !formulas.same(exported.formula, host, inFile.formula, true)
  if (exported?.formula !== undefined || inFile?.formula !== undefined) return true
  return !sameComputed(exported?.value ?? null, inFile?.value ?? null)
}
