import { printAddress } from './address.ts'
import { eachCell } from './cells.ts'
import type { Cell, Sheet, Workbook } from './document.ts'
import { FILE_VERSION, type FileCellFormat } from './schema.ts'

/**
 * The workbook as the text of a file: stable order, cells in reading order, one a line, so that a version-control diff
 * is a list of changes. The same workbook always gives the same bytes (as UTF-8).
 */
export function writeWorkbook({ title, purpose, sheets, names }: Workbook): string {
  const nameLines = [...names]
    .toSorted(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, refersTo]) => `\n  ${json(name)}: ${json(refersTo)}`)
  return (
    `{"lowside": ${FILE_VERSION},\n "title": ${json(title)},\n "purpose": ${json(purpose)},\n` +
    ` "sheets": [${sheets.map(sheetText).join(',')}\n ],\n "names": {${nameLines.join(',')}${nameLines.length > 0 ? '\n ' : ''}}}\n`
  )
}

function sheetText(sheet: Sheet): string {
  const lines: string[] = []
  eachCell(sheet, (cell, row, column) => lines.push(`\n    "${printAddress(row, column)}": ${cellText(cell)}`))
  return (
    `\n  {"name": ${json(sheet.name)}, "columns": [${sheet.columns.join(', ')}], "frozen": [${sheet.frozen.join(', ')}],\n` +
    `   "cells": {${lines.join(',')}${lines.length > 0 ? '\n   ' : ''}}}`
  )
}

function cellText(cell: Cell): string {
  const format = FORMAT_ORDER.filter((key) => cell[key] !== undefined).map((key) => `"${key}": ${json(cell[key] ?? null)}`)
  return `[${json(cell.content)}, "${cell.role}"${format.length > 0 ? `, {${format.join(', ')}}` : ''}]`
}

const FORMAT_ORDER = ['digits', 'decimals', 'wrap', 'note', 'restatedFrom'] as const satisfies readonly (keyof FileCellFormat)[]

function json(value: string | number | boolean | null): string {
  return JSON.stringify(value)
}
