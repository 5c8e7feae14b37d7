import { isCellError, type CellValue } from '../../calc/values.ts'
import type { FileCell, FileFormulaText, FileRow, FileSheet } from '../package/file-sheet.ts'
import type { CellStyleBook } from './cell-styles.ts'
import { shownNumber } from './number-style.ts'
import { movingOpenFormula } from './open-formula.ts'
import { attributeText, paragraphs } from './open-xml.ts'

export interface TableStyles {
  readonly cells: CellStyleBook
  /** The name of the style of the table. */
  readonly table: string
  /** The name of the style of a row; undefined where the row is as high as what it holds. */
  readonly row: (row: FileRow) => string | undefined
  /** Whether a cell says in words how a check stands. */
  readonly checked: (row: number, column: number) => boolean
  /** The name of the style of a column of a width. */
  readonly column: (widthPx: number) => string
}

/** A sheet (OpenDocument 1.3, part 3, 9.1), in pieces, a piece a row. What stays in view stands on every page as well. */
export function* tablePart({ name, widthsPx, frozen: [frozenRows, frozenColumns], rows }: FileSheet, styles: TableStyles): Generator<string> {
  const columns = widthsPx.map((width) => `<table:table-column table:style-name="${styles.column(width)}" table:default-cell-style-name="Default"/>`)
  while (columns.length < Math.max(1, frozenColumns)) columns.push('<table:table-column/>')
  yield `<table:table table:name="${attributeText(name)}" table:style-name="${styles.table}">` +
    (frozenColumns === 0 ? '' : `<table:table-header-columns>${columns.slice(0, frozenColumns).join('')}</table:table-header-columns>`) + columns.slice(frozenColumns).join('') +
    (frozenRows === 0 ? '' : '<table:table-header-rows>')
  const formulas = new SharedFormulas()
  let written = 0
  for (const fileRow of rows) {
    const { row, cells } = fileRow
    yield emptyRows(written, row, frozenRows)
    const height = styles.row(fileRow)
    let text = height === undefined ? '<table:table-row>' : `<table:table-row table:style-name="${height}">`
    let next = 0
    for (const [column, cell] of cells.entries()) {
      if (cell === undefined || column < next) continue
      if (column > next) text += emptyCells(column - next)
      text += cellXml(cell, styles.cells.name(cell.style, styles.checked(row, column)), row, formulas)
      next = column + (cell.across ?? 1)
      if (next > column + 1) text += `<table:covered-table-cell table:number-columns-repeated="${next - column - 1}"/>`
    }
    written = row + 1
    yield `${text}${next === 0 ? '<table:table-cell/>' : ''}</table:table-row>${written === frozenRows ? '</table:table-header-rows>' : ''}`
  }
  yield emptyRows(written, Math.max(1, frozenRows, written), frozenRows)
  yield '</table:table>'
}

const emptyCells = (count: number): string => (count === 1 ? '<table:table-cell/>' : `<table:table-cell table:number-columns-repeated="${count}"/>`)

/** Rows without a cell from one to before another; those that are header rows end with the last of them. */
function emptyRows(from: number, to: number, headerRows: number): string {
  if (from >= to) return ''
  if (from < headerRows && to >= headerRows) return `${repeatedRow(headerRows - from)}</table:table-header-rows>${to > headerRows ? repeatedRow(to - headerRows) : ''}`
  return repeatedRow(to - from)
}

const repeatedRow = (count: number): string => `<table:table-row${count === 1 ? '' : ` table:number-rows-repeated="${count}"`}><table:table-cell/></table:table-row>`

function cellXml({ value, formula, style, note, across = 1 }: FileCell, styleName: string, row: number, formulas: SharedFormulas): string {
  const { type, text } = valueXml(value, formula !== undefined, style.format)
  const inside = (note === undefined ? '' : `<office:annotation office:display="false">${paragraphs(note)}</office:annotation>`) + text
  // An error that no formula gives is one as a formula: as a text it would be left out of sums.
  const written = formula === undefined ? (isCellError(value) ? fileError(value.error) : '') : formulas.text(formula, row)
  const head = `<table:table-cell table:style-name="${styleName}"${written === '' ? '' : ` table:formula="of:=${written}"`}${formula?.array ? ONE_CELL : ''}${across > 1 ? ` table:number-columns-spanned="${across}" table:number-rows-spanned="1"` : ''}${type}`
  return inside === '' ? `${head}/>` : `${head}>${inside}</table:table-cell>`
}

const ONE_CELL = ' table:number-matrix-columns-spanned="1" table:number-matrix-rows-spanned="1"'

/** Formulas as an attribute has them. The format has none that several cells share: each gets its own, made from the first. */
class SharedFormulas {
  readonly #first = new Map<number, { readonly row: number; readonly below: (rows: number) => string }>()

  text({ text, shared }: FileFormulaText, row: number): string {
    if (shared === undefined) return movingOpenFormula(text, attributeText)(0)
    if (shared.range !== undefined) this.#first.set(shared.number, { row, below: movingOpenFormula(text, attributeText) })
    const first = this.#first.get(shared.number)
    if (first === undefined) throw new Error(`shared formula ${shared.number} has no first cell`)
    return first.below(row - first.row)
  }
}

const FILE_ERRORS: ReadonlySet<string> = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'])
const fileError = (error: string): string => (FILE_ERRORS.has(error) ? error : '#VALUE!')

/** What a cell comes to (part 3, 19.387). There is no type for errors: the value of a formula that has none stands as the text that is shown. */
function valueXml(value: CellValue, ofFormula: boolean, format: string | undefined): { readonly type: string; readonly text: string } {
  if (value === null || (value === '' && !ofFormula)) return { type: '', text: '' }
  if (typeof value === 'number') return { type: ` office:value-type="float" office:value="${value}"`, text: `<text:p>${shownNumber(value, format)}</text:p>` }
  if (typeof value === 'boolean') return { type: ` office:value-type="boolean" office:boolean-value="${value}"`, text: `<text:p>${value ? 'TRUE' : 'FALSE'}</text:p>` }
  return { type: ' office:value-type="string"', text: paragraphs(isCellError(value) ? fileError(value.error) : value) }
}
