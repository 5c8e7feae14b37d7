import { printAddress } from './address.ts'
import { casesText } from './case-files.ts'
import { atBase } from './case-switching.ts'
import { casesOf, currentName } from './cases.ts'
import { eachCell } from './cells.ts'
import type { Cell, Sheet, Workbook } from './document.ts'
import type { Figure } from './figure.ts'
import type { KeptMapping } from './kept-mapping.ts'
import type { ReportSettings } from './report-settings.ts'
import { FILE_VERSION } from './file-version.ts'
import { reviewText } from './review/review-files.ts'
import type { FileCellFormat } from './schema.ts'
import { tolerancesText } from './tolerance-files.ts'

/**
 * The workbook as the text of a file: stable order, cells in reading order, one a line, so that a version-control diff
 * is a list of changes. The same workbook always gives the same bytes (as UTF-8).
 */
export const writeWorkbook = (workbook: Workbook): string => [...workbookText(workbook)].join('')

/** The same text in pieces, of which each takes about a millisecond: for whoever has something else to do as well. */
export function* workbookText(workbook: Workbook): Generator<string> {
  const base = atBase(workbook)
  const { title, purpose, sheets, names, figures, report, mappings } = base
  const currentCase = casesOf(workbook).current === null ? undefined : currentName(workbook)
  const nameLines = [...names]
    .toSorted(([one], [other]) => (one < other ? -1 : 1))
    .map(([name, refersTo]) => `\n  ${json(name)}: ${json(refersTo)}`)
  yield `{"lowside": ${FILE_VERSION},\n "title": ${json(title)},\n "purpose": ${json(purpose)},\n "sheets": [`
  for (const [index, sheet] of sheets.entries()) {
    if (index > 0) yield ','
    yield* sheetText(sheet)
  }
  yield (
    `\n ],\n "names": {${nameLines.join(',')}${nameLines.length > 0 ? '\n ' : ''}}${figuresText(figures)}${reportText(report)}${mappingsText(mappings)}${casesText(base, currentCase)}${tolerancesText(base)}`
  )
  yield* reviewText(base)
  yield '}\n'
}

/** Nothing where there is none, as in files of before. */
function figuresText(figures: readonly Figure[]): string {
  return figures.length === 0 ? '' : `,\n "figures": [${figures.map(figureText).join(',')}\n ]`
}

function reportText(report: ReportSettings | undefined): string {
  return report ? `,\n "report": {"preparedBy": ${json(report.preparedBy)}, "checkedBy": ${json(report.checkedBy)}, "paper": ${json(report.paper)}}` : ''
}

/** A mapping's column a line. */
function mappingsText(mappings: readonly KeptMapping[] = []): string {
  const texts = mappings.map(({ name, list, headings, columns }) => {
    const lines = columns.map((column) => `\n     ${JSON.stringify(column)}`)
    return `\n  {"name": ${json(name)}, "list": ${json(list)},\n   "headings": ${JSON.stringify(headings)},\n   "columns": [${lines.join(',')}${lines.length > 0 ? '\n   ' : ''}]}`
  })
  return texts.length === 0 ? '' : `,\n "mappings": [${texts.join(',')}\n ]`
}

function figureText({ kind, title, sheet, options, bindings }: Figure): string {
  const head = [`"kind": ${json(kind)}`, `"title": ${json(title)}`, ...(sheet === undefined ? [] : [`"sheet": ${json(sheet)}`]), `"options": {${members(options).join(', ')}}`]
  const lines = members(bindings).map((line) => `\n     ${line}`)
  return `\n  {${head.join(', ')},\n   "bindings": {${lines.join(',')}${lines.length > 0 ? '\n   ' : ''}}}`
}

const members = (record: Readonly<Record<string, string>>): string[] => Object.entries(record).map(([name, value]) => `${json(name)}: ${json(value)}`)

function* sheetText(sheet: Sheet): Generator<string> {
  yield `\n  {"name": ${json(sheet.name)}, "columns": [${sheet.columns.join(', ')}], "frozen": [${sheet.frozen.join(', ')}],\n   "cells": {`
  let isFirst = true
  for (let top = 0; top < sheet.rows.length; top += ROWS_IN_PIECE) {
    const lines: string[] = []
    eachCell({ ...sheet, rows: sheet.rows.slice(top, top + ROWS_IN_PIECE) }, (cell, row, column) => lines.push(`\n    "${printAddress(top + row, column)}": ${cellText(cell)}`))
    if (lines.length === 0) continue
    yield (isFirst ? '' : ',') + lines.join(',')
    isFirst = false
  }
  yield isFirst ? '}}' : '\n   }}'
}

const ROWS_IN_PIECE = 100

function cellText(cell: Cell): string {
  const format = FORMAT_ORDER.filter((key) => cell[key] !== undefined).map((key) => `"${key}": ${json(cell[key] ?? null)}`)
  return `[${json(cell.content)}, "${cell.role}"${format.length > 0 ? `, {${format.join(', ')}}` : ''}]`
}

const FORMAT_ORDER = ['digits', 'decimals', 'wrap', 'note', 'restatedFrom'] as const satisfies readonly (keyof FileCellFormat)[]

function json(value: string | number | boolean | null): string {
  return JSON.stringify(value)
}
