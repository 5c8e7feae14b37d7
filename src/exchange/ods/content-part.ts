import { areaOf, parseReference, printReference, quoteSheetName, type Corner } from '../../workbook/address.ts'
import type { FileRow, FileSheet } from '../package/file-sheet.ts'
import { heightFor } from '../package/row-height.ts'
import { pagesWide } from '../package/sheet-part.ts'
import { CellStyleBook, FONTS } from './cell-styles.ts'
import { openFormula } from './open-formula.ts'
import { attributeText, namespaces, OPEN_DECLARATION } from './open-xml.ts'
import { masterPageName } from './page-styles.ts'
import { tablePart } from './table-part.ts'

/** The content part (OpenDocument 1.3, part 3, 3.1.3.2), in pieces: automatic styles, sheets, names. */
export function* contentPart(sheets: readonly FileSheet[], names: ReadonlyMap<string, string>): Generator<string> {
  const known = sheets.map((sheet) => (sheet.styles === undefined ? { ...sheet, rows: [...sheet.rows], checked: inAreas(sheet.checks ?? []) } : { ...sheet, checked: () => false }))
  const cells = new CellStyleBook(attributeText(`${quoteSheetName(sheets[0]?.name ?? '')}.A1`))
  const heights = new Set<number>()
  for (const { styles, rows, widthsPx, checked } of known) {
    if (styles !== undefined) for (const style of styles()) cells.add(style)
    else {
      for (const row of rows) {
        for (const [column, cell] of row.cells.entries()) if (cell) cells.add(cell.style, checked(row.row, column))
        const height = heightOf(row, widthsPx)
        if (height !== undefined) heights.add(height)
      }
    }
  }
  const widths = [...new Set(known.flatMap(({ widthsPx }) => widthsPx))]
  yield `${OPEN_DECLARATION}<office:document-content${namespaces('office', 'style', 'text', 'table', 'fo', 'svg', 'number', 'of')} office:version="1.3">` +
    FONTS +
    `<office:automatic-styles>${widths.map(columnStyle).join('')}${[...heights].map(rowStyle).join('')}${[...new Set(known.map(tableStyle))].join('')}${cells.text()}</office:automatic-styles>` +
    `<office:body><office:spreadsheet>${CALCULATION}`
  for (const sheet of known) {
    yield* tablePart(sheet, {
      cells, table: tableStyleName(sheet), column: (width) => `co${widths.indexOf(width) + 1}`, checked: sheet.checked,
      // A program finds the height of rows itself, but not that of a text across several columns.
      row: (row) => (sheet.styles === undefined ? rowStyleName(heightOf(row, sheet.widthsPx)) : undefined),
    })
  }
  yield `${namesXml(names, sheets[0]?.name ?? '')}</office:spreadsheet></office:body></office:document-content>`
}

/** As Lowside computes: texts compare whatever their capitals, and a pattern is a whole cell (part 3, 9.4.1; part 4, 3.4). */
const CALCULATION =
  '<table:calculation-settings table:case-sensitive="false" table:search-criteria-must-apply-to-whole-cell="true" table:use-regular-expressions="false" ' +
  'table:use-wildcards="true" table:automatic-find-labels="false" table:precision-as-shown="false"/>'

const inches = (px: number): string => `${Math.round((px / 96) * 10_000) / 10_000}in`

const columnStyle = (widthPx: number, index: number): string =>
  `<style:style style:name="co${index + 1}" style:family="table-column"><style:table-column-properties style:column-width="${inches(widthPx)}"/></style:style>`

const heightOf = ({ heightPt, cells }: FileRow, widthsPx: readonly number[]): number | undefined => heightPt ?? heightFor(cells, widthsPx)

const rowStyleName = (heightPt: number | undefined): string | undefined => (heightPt === undefined ? undefined : `ro${String(heightPt).replace('.', '_')}`)

const rowStyle = (heightPt: number): string =>
  `<style:style style:name="${rowStyleName(heightPt)}" style:family="table-row"><style:table-row-properties style:row-height="${heightPt}pt" style:use-optimal-row-height="false"/></style:style>`

const tableStyleName = ({ hidden, widthsPx }: FileSheet): string => `ta${pagesWide(widthsPx)}${hidden ? 'h' : ''}`

const tableStyle = (sheet: FileSheet): string =>
  `<style:style style:name="${tableStyleName(sheet)}" style:family="table" style:master-page-name="${masterPageName(pagesWide(sheet.widthsPx))}"><style:table-properties table:display="${sheet.hidden !== true}"/></style:style>`

/** Whether a cell is in one of these areas. */
function inAreas(texts: readonly string[]): (row: number, column: number) => boolean {
  const areas = texts.flatMap((text) => parseReference(text) ?? []).map(areaOf)
  return (row, column) => areas.some(({ top, bottom, left, right }) => row >= top && row <= bottom && column >= left && column <= right)
}

/** Names of cells and areas, and of what else a formula says (part 3, 9.4.11). */
function namesXml(names: ReadonlyMap<string, string>, firstSheet: string): string {
  if (names.size === 0) return ''
  const base = attributeText(`$${quoteSheetName(firstSheet)}.$A$1`)
  return `<table:named-expressions>${[...names].map(([name, text]) => {
    const area = cellRangeAddress(text)
    const head = `table:name="${attributeText(name)}" table:base-cell-address="${base}"`
    return area === undefined ? `<table:named-expression ${head} table:expression="of:=${attributeText(openFormula(text))}"/>` : `<table:named-range ${head} table:cell-range-address="${attributeText(area)}"/>`
  }).join('')}</table:named-expressions>`
}

/** `$Duty.$B$1:$Duty.$B$9`: cells by their sheet (part 3, 18.3.6); undefined for anything but cells of a sheet. */
function cellRangeAddress(text: string): string | undefined {
  const reference = parseReference(text)
  if (reference === undefined || reference.sheet === null) return undefined
  const { sheet, from, to } = reference
  if (isWhole(from) || (to !== null && isWhole(to))) return undefined
  const address = (corner: Corner): string => `$${quoteSheetName(sheet)}.${printReference({ sheet: null, from: corner, to: null })}`
  return to === null ? address(from) : `${address(from)}:${address(to)}`
}

const isWhole = ({ row, column }: Corner): boolean => row === null || column === null
