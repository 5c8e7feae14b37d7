import type { FileSheet } from '../package/file-sheet.ts'
import { pagesWide } from '../package/sheet-part.ts'
import { xml } from '../package/xml.ts'
import type { Part } from '../package/zip.ts'
import { commonCellStyles, FONTS } from './cell-styles.ts'
import { contentPart } from './content-part.ts'
import { attributeText, namespaces, OPEN_DECLARATION } from './open-xml.ts'
import { pageStyles, type Paper } from './page-styles.ts'

export interface OpenPackage {
  readonly title: string
  readonly subject: string
  readonly date: Date
  readonly paper: Paper
  readonly sheets: readonly FileSheet[]
  /** What a name stands for, by name, in the dialect of {@link fileFormula}. */
  readonly names: ReadonlyMap<string, string>
}

export const OPEN_SPREADSHEET_TYPE = 'application/vnd.oasis.opendocument.spreadsheet'

/** The parts of a spreadsheet file of OpenDocument 1.3 (part 2: the kind of file comes first, not compressed), each made when it is asked for. */
export function* openPackageParts({ title, subject, date, paper, sheets, names }: OpenPackage): Generator<Part> {
  yield { name: 'mimetype', text: [OPEN_SPREADSHEET_TYPE], stored: true }
  yield { name: 'content.xml', text: contentPart(sheets, names) }
  yield { name: 'styles.xml', text: [stylesPart(title, paper, sheets)] }
  yield { name: 'meta.xml', text: [metaPart(title, subject, date)] }
  yield { name: 'settings.xml', text: [settingsPart(sheets)] }
  yield { name: 'META-INF/manifest.xml', text: [manifestPart()] }
}

const manifestPart = (): string =>
  `${OPEN_DECLARATION}<manifest:manifest${namespaces('manifest')} manifest:version="1.3"><manifest:file-entry manifest:full-path="/" manifest:version="1.3" manifest:media-type="${OPEN_SPREADSHEET_TYPE}"/>` +
  ['content.xml', 'styles.xml', 'meta.xml', 'settings.xml'].map((path) => `<manifest:file-entry manifest:full-path="${path}" manifest:media-type="text/xml"/>`).join('') +
  '</manifest:manifest>'

function metaPart(title: string, subject: string, date: Date): string {
  const at = `${date.toISOString().slice(0, 19)}Z`
  return `${OPEN_DECLARATION}<office:document-meta${namespaces('office', 'meta')} xmlns:dc="http://purl.org/dc/elements/1.1/" office:version="1.3"><office:meta>` +
    `<meta:generator>Lowside</meta:generator><dc:title>${xml(title)}</dc:title><dc:subject>${xml(subject)}</dc:subject><meta:creation-date>${at}</meta:creation-date><dc:date>${at}</dc:date>` +
    '</office:meta></office:document-meta>'
}

/** Looks of cells, and pages. */
const stylesPart = (title: string, paper: Paper, sheets: readonly FileSheet[]): string => {
  const { layouts, masters } = pageStyles(title, paper, [...new Set(sheets.map(({ widthsPx }) => pagesWide(widthsPx)))])
  return `${OPEN_DECLARATION}<office:document-styles${namespaces('office', 'style', 'text', 'table', 'fo', 'svg', 'number')} office:version="1.3">${FONTS}` +
    `<office:styles>${commonCellStyles()}</office:styles><office:automatic-styles>${layouts}</office:automatic-styles><office:master-styles>${masters}</office:master-styles></office:document-styles>`
}

/** What is seen when the file is opened: the first sheet, no grid lines, and of each sheet the rows and columns that stay. Read by their names in use, since the standard leaves them open (part 3, 3.10). */
const settingsPart = (sheets: readonly FileSheet[]): string =>
  `${OPEN_DECLARATION}<office:document-settings${namespaces('office', 'config')} xmlns:ooo="http://openoffice.org/2004/office" office:version="1.3"><office:settings><config:config-item-set config:name="ooo:view-settings">` +
  '<config:config-item-map-indexed config:name="Views"><config:config-item-map-entry>' + item('ViewId', 'string', 'view1') +
  `<config:config-item-map-named config:name="Tables">${sheets.map(viewOf).join('')}</config:config-item-map-named>` +
  item('ActiveTable', 'string', attributeText(sheets[0]?.name ?? '')) + item('ShowGrid', 'boolean', 'false') +
  '</config:config-item-map-entry></config:config-item-map-indexed></config:config-item-set></office:settings></office:document-settings>'

const FROZEN = 2

function viewOf({ name, frozen: [rows, columns] }: FileSheet): string {
  const across = columns === 0 ? [] : [item('HorizontalSplitMode', 'short', FROZEN), item('HorizontalSplitPosition', 'int', columns), item('PositionLeft', 'int', 0), item('PositionRight', 'int', columns)]
  const down = rows === 0 ? [] : [item('VerticalSplitMode', 'short', FROZEN), item('VerticalSplitPosition', 'int', rows), item('PositionTop', 'int', 0), item('PositionBottom', 'int', rows)]
  // The part below and right of what stays is the one in use, counted from 0 at the top left to 3.
  const active = item('ActiveSplitRange', 'short', 2 + (columns > 0 ? 1 : 0))
  return `<config:config-item-map-entry config:name="${attributeText(name)}">${item('CursorPositionX', 'int', 0)}${item('CursorPositionY', 'int', 0)}` +
    `${across.join('')}${down.join('')}${rows + columns > 0 ? active : ''}${item('ShowGrid', 'boolean', 'false')}</config:config-item-map-entry>`
}

const item = (name: string, type: 'string' | 'short' | 'int' | 'boolean', value: string | number): string => `<config:config-item config:name="${name}" config:type="${type}">${value}</config:config-item>`
