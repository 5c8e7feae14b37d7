import { isCellError, type CellValue } from '../../calc/values.ts'
import { columnLetters, printAddress } from '../../workbook/address.ts'
import type { FileCell, FileFormulaText, FileSheet } from './file-sheet.ts'
import type { StyleBook } from './styles.ts'
import { cellText, DECLARATION, xml } from './xml.ts'

export interface SheetNote {
  readonly row: number
  readonly column: number
  readonly text: string
}

export interface SheetOptions {
  readonly styles: StyleBook
  /** ECMA-376, part 1, 18.3.1.63: 1 is Letter, 9 A4. */
  readonly paper: number
  readonly active: boolean
  readonly footer: string
  /** Gathers the notes that the cells have. */
  readonly notes: SheetNote[]
}

/** A worksheet part (ECMA-376, part 1, 18.3), in pieces. */
export function* sheetPart({ widthsPx, frozen, rows, checks = [] }: FileSheet, { styles, paper, active, footer, notes }: SheetOptions): Generator<string> {
  yield (
    `${DECLARATION}<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships">` +
    `<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr><sheetViews>${view(frozen, active)}</sheetViews><sheetFormatPr defaultRowHeight="15"/>` +
    (widthsPx.length === 0 ? '' : `<cols>${widthsPx.map((width, index) => `<col min="${index + 1}" max="${index + 1}" width="${widthInDigits(width)}" customWidth="1"/>`).join('')}</cols>`) +
    '<sheetData>'
  )
  for (const { row, heightPt, cells } of rows) {
    let text = `<row r="${row + 1}"${heightPt === undefined ? '' : ` ht="${heightPt}" customHeight="1"`}>`
    for (const [column, cell] of cells.entries()) {
      if (cell === undefined) continue
      if (cell.note !== undefined) notes.push({ row, column, text: cell.note })
      text += cellXml(cell, printAddress(row, column), styles)
    }
    yield `${text}</row>`
  }
  yield (
    '</sheetData>' +
    (checks.length === 0 ? '' : `<conditionalFormatting sqref="${checks.join(' ')}"><cfRule type="cellIs" dxfId="0" priority="1" operator="equal"><formula>FALSE</formula></cfRule></conditionalFormatting>`) +
    '<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.7" header="0.3" footer="0.3"/>' +
    `<pageSetup paperSize="${paper}" orientation="landscape" fitToWidth="1" fitToHeight="0"/>` +
    `<headerFooter><oddHeader>&amp;L${xml(footer.replaceAll('&', '&&'))}&amp;R&amp;A</oddHeader><oddFooter>&amp;LEngineering estimate, not a compliance finding&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>` +
    (notes.length === 0 ? '' : '<legacyDrawing r:id="rId2"/>') +
    '</worksheet>'
  )
}

function view([rows, columns]: readonly [number, number], active: boolean): string {
  const head = `<sheetView ${active ? 'tabSelected="1" ' : ''}showGridLines="0" workbookViewId="0"`
  if (rows === 0 && columns === 0) return `${head}/>`
  const pane = rows > 0 && columns > 0 ? 'bottomRight' : rows > 0 ? 'bottomLeft' : 'topRight'
  const splits = `${columns > 0 ? ` xSplit="${columns}"` : ''}${rows > 0 ? ` ySplit="${rows}"` : ''}`
  return `${head}><pane${splits} topLeftCell="${columnLetters(columns)}${rows + 1}" activePane="${pane}" state="frozen"/><selection pane="${pane}"/></sheetView>`
}

/** A column's width is counted in digits of 7 px (ECMA-376, part 1, 18.3.1.13). */
const widthInDigits = (px: number): number => Math.round((px / 7) * 256) / 256

function cellXml({ value, formula, style }: FileCell, address: string, styles: StyleBook): string {
  const head = `<c r="${address}" s="${styles.number(style)}"`
  if (formula === undefined && typeof value === 'string') return value === '' ? `${head}/>` : `${head} t="inlineStr"><is><t${preserved(value)}>${cellText(value)}</t></is></c>`
  const { type, text } = valueXml(value)
  const inside = (formula === undefined ? '' : formulaXml(formula, address)) + text
  return inside === '' ? `${head}/>` : `${head}${type}>${inside}</c>`
}

const preserved = (text: string): string => (/^\s|\s$|\n/.test(text) ? ' xml:space="preserve"' : '')

function formulaXml({ text, array, shared }: FileFormulaText, address: string): string {
  if (shared) return shared.range === undefined ? `<f t="shared" si="${shared.number}"/>` : `<f t="shared" ref="${shared.range}" si="${shared.number}">${xml(text)}</f>`
  return `<f${array ? ` t="array" ref="${address}"` : ''}>${xml(text)}</f>`
}

const FILE_ERRORS: ReadonlySet<string> = new Set(['#NULL!', '#DIV/0!', '#VALUE!', '#REF!', '#NAME?', '#NUM!', '#N/A'])

function valueXml(value: CellValue): { readonly type: string; readonly text: string } {
  if (value === null) return { type: '', text: '' }
  if (typeof value === 'number') return { type: '', text: `<v>${value}</v>` }
  if (typeof value === 'boolean') return { type: ' t="b"', text: `<v>${value ? 1 : 0}</v>` }
  if (isCellError(value)) return { type: ' t="e"', text: `<v>${FILE_ERRORS.has(value.error) ? value.error : '#VALUE!'}</v>` }
  return { type: ' t="str"', text: `<v${preserved(value)}>${cellText(value)}</v>` }
}
