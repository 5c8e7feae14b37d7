import { quoteSheetName, columnLetters } from '../../workbook/address.ts'
import type { FileSheet } from './file-sheet.ts'
import { commentsPart, notesDrawing } from './notes-parts.ts'
import { sheetPart, type SheetNote } from './sheet-part.ts'
import { StyleBook } from './styles.ts'
import { cellText, DECLARATION, xml } from './xml.ts'
import type { Part } from './zip.ts'

export interface FilePackage {
  readonly title: string
  readonly subject: string
  readonly date: Date
  readonly paper: number
  readonly sheets: readonly FileSheet[]
  /** What a name stands for, by name. */
  readonly names: ReadonlyMap<string, string>
}

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006'
const TYPES = 'application/vnd.openxmlformats-officedocument.spreadsheetml'

/** The parts of a spreadsheet file (ECMA-376, parts 1 and 2), each made when it is asked for. */
export function* packageParts({ title, subject, date, paper, sheets, names }: FilePackage): Generator<Part> {
  const styles = new StyleBook()
  const withNotes: number[] = []
  for (const [index, sheet] of sheets.entries()) {
    const number = index + 1
    const notes: SheetNote[] = []
    yield { name: `xl/worksheets/sheet${number}.xml`, text: sheetPart(sheet, { styles, paper, active: index === 0, footer: title, notes }) }
    if (notes.length === 0) continue
    withNotes.push(number)
    yield { name: `xl/worksheets/_rels/sheet${number}.xml.rels`, text: relationships([[`${OFFICE}/comments`, `../comments${number}.xml`], [`${OFFICE}/vmlDrawing`, `../drawings/vmlDrawing${number}.vml`]]) }
    yield { name: `xl/comments${number}.xml`, text: [commentsPart(notes)] }
    yield { name: `xl/drawings/vmlDrawing${number}.vml`, text: [notesDrawing(notes)] }
  }
  yield { name: 'xl/styles.xml', text: [styles.part()] }
  yield { name: 'xl/workbook.xml', text: [workbookPart(sheets, names)] }
  yield { name: 'xl/_rels/workbook.xml.rels', text: relationships([...sheets.map((_, index) => [`${OFFICE}/worksheet`, `worksheets/sheet${index + 1}.xml`] as const), [`${OFFICE}/styles`, 'styles.xml']]) }
  yield { name: 'docProps/core.xml', text: [coreProperties(title, subject, date)] }
  yield { name: 'docProps/app.xml', text: [`${DECLARATION}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Lowside</Application></Properties>`] }
  yield {
    name: '_rels/.rels',
    text: relationships([
      [`${OFFICE}/officeDocument`, 'xl/workbook.xml'], [`${PACKAGE}/relationships/metadata/core-properties`, 'docProps/core.xml'],
      [`${OFFICE}/extended-properties`, 'docProps/app.xml'],
    ]),
  }
  yield { name: '[Content_Types].xml', text: [contentTypes(sheets.length, withNotes)] }
}

const relationships = (list: readonly (readonly [type: string, target: string])[]): string[] => [
  `${DECLARATION}<Relationships xmlns="${PACKAGE}/relationships">`,
  ...list.map(([type, target], index) => `<Relationship Id="rId${index + 1}" Type="${type}" Target="${target}"/>`),
  '</Relationships>',
]

function workbookPart(sheets: readonly FileSheet[], names: ReadonlyMap<string, string>): string {
  const titles = sheets.flatMap(({ name, frozen: [rows, columns] }, index) => {
    const parts = [...(columns > 0 ? [`${quoteSheetName(name)}!$A:$${columnLetters(columns - 1)}`] : []), ...(rows > 0 ? [`${quoteSheetName(name)}!$1:$${rows}`] : [])]
    return parts.length === 0 ? [] : [`<definedName name="_xlnm.Print_Titles" localSheetId="${index}">${xml(parts.join(','))}</definedName>`]
  })
  const defined = [...[...names].map(([name, text]) => `<definedName name="${xml(name)}">${xml(text)}</definedName>`), ...titles]
  return (
    `${DECLARATION}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><bookViews><workbookView activeTab="0"/></bookViews><sheets>` +
    sheets.map(({ name, hidden }, index) => `<sheet name="${xml(name)}" sheetId="${index + 1}"${hidden ? ' state="hidden"' : ''} r:id="rId${index + 1}"/>`).join('') +
    `</sheets>${defined.length === 0 ? '' : `<definedNames>${defined.join('')}</definedNames>`}<calcPr fullCalcOnLoad="1"/></workbook>`
  )
}

function coreProperties(title: string, subject: string, date: Date): string {
  const at = `${date.toISOString().slice(0, 19)}Z`
  return (
    `${DECLARATION}<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/" xmlns:dcterms="http://purl.org/dc/terms/" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">` +
    `<dc:title>${cellText(title)}</dc:title><dc:subject>${cellText(subject)}</dc:subject>` +
    `<dcterms:created xsi:type="dcterms:W3CDTF">${at}</dcterms:created><dcterms:modified xsi:type="dcterms:W3CDTF">${at}</dcterms:modified></cp:coreProperties>`
  )
}

const contentTypes = (sheets: number, withNotes: readonly number[]): string =>
  `${DECLARATION}<Types xmlns="${PACKAGE}/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
  '<Default Extension="xml" ContentType="application/xml"/>' +
  '<Default Extension="vml" ContentType="application/vnd.openxmlformats-officedocument.vmlDrawing"/>' +
  [
    ['/xl/workbook.xml', `${TYPES}.sheet.main+xml`], ['/xl/styles.xml', `${TYPES}.styles+xml`],
    ...Array.from({ length: sheets }, (_, index) => [`/xl/worksheets/sheet${index + 1}.xml`, `${TYPES}.worksheet+xml`]),
    ...withNotes.map((number) => [`/xl/comments${number}.xml`, `${TYPES}.comments+xml`]),
    ['/docProps/core.xml', 'application/vnd.openxmlformats-package.core-properties+xml'],
    ['/docProps/app.xml', 'application/vnd.openxmlformats-officedocument.extended-properties+xml'],
  ].map(([part, type]) => `<Override PartName="${part}" ContentType="${type}"/>`).join('') +
  '</Types>'
