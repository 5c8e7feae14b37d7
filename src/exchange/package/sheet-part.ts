import { isCellError, type CellValue } from '../../calc/values.ts'
import { columnLetters, printAddress } from '../../workbook/address.ts'
import type { FileCell, FileFormulaText, FileSheet } from './file-sheet.ts'
import { heightFor } from './row-height.ts'
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
  const merged: string[] = []
  for (const { row, heightPt, cells } of rows) {
    const height = heightPt ?? heightFor(cells, widthsPx)
    let text = `<row r="${row + 1}"${height === undefined ? '' : ` ht="${height}" customHeight="1"`}>`
    for (const [column, cell] of cells.entries()) {
      if (cell === undefined) continue
      if ((cell.across ?? 1) > 1) merged.push(`${printAddress(row, column)}:${printAddress(row, column + (cell.across ?? 1) - 1)}`)
      if (cell.note !== undefined) notes.push({ row, column, text: cell.note })
      text += cellXml(cell, printAddress(row, column), styles)
    }
    yield `${text}</row>`
  }
  yield (
    '</sheetData>' +
    (merged.length === 0 ? '' : `<mergeCells count="${merged.length}">${merged.map((area) => `<mergeCell ref="${area}"/>`).join('')}</mergeCells>`) +
    (checks.length === 0 ? '' : `<conditionalFormatting sqref="${checks.join(' ')}">${marking('FALSE', 1)}${marking('"not met"', 2)}</conditionalFormatting>`) +
    '<pageMargins left="0.5" right="0.5" top="0.6" bottom="0.7" header="0.3" footer="0.3"/>' +
    `<pageSetup paperSize="${paper}" orientation="landscape" fitToWidth="${pagesWide(widthsPx)}" fitToHeight="0"/>` +
    `<headerFooter><oddHeader>&amp;L${xml(headerText(footer))}&amp;R&amp;A</oddHeader><oddFooter>&amp;LEngineering estimate, not a compliance finding&amp;RPage &amp;P of &amp;N</oddFooter></headerFooter>` +
    (notes.length === 0 ? '' : '<legacyDrawing r:id="rId2"/>') +
    '</worksheet>'
  )
}

const marking = (value: string, priority: number): string =>
  `<cfRule type="cellIs" dxfId="0" priority="${priority}" operator="equal"><formula>${xml(value)}</formula></cfRule>`

/** A sheet goes on one page across as long as it can then be read; workings of many steps go on several. */
export const pagesWide = (widthsPx: readonly number[]): number => Math.max(1, Math.ceil(widthsPx.reduce((sum, width) => sum + width, 0) / PAGE_PX))

/** What a page across still shows of a sheet in letters that can be read: about half their size. */
const PAGE_PX = 2000

/** What a page's header may hold is 255 characters with its codes (ECMA-376, part 1, 18.3.1.46 and 18.3.1.51): there a "&" is two, and digits first would be a size of letters. */
function headerText(title: string): string {
  const whole = (/^\d/.test(title) ? ` ${title}` : title).replaceAll('&', '&&')
  const cut = whole.slice(0, MAX_HEADER)
  // No half of a pair is left at the end.
  return whole.length <= MAX_HEADER ? whole : `${cut.replace(/&+$/, (signs) => '&'.repeat(signs.length - (signs.length % 2))).replace(/[\ud800-\udbff]$/, '')}…`
}

const MAX_HEADER = 240

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
