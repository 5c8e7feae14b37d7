import { columnLetters } from '../../src/workbook/address.ts'
import { readZip } from '../unit/read-zip.ts'
import { elements, strictXml, type XmlElement } from '../unit/strict-xml.ts'
import { fileInput, type FileInput } from './recalculated.ts'

/** A sheet of an OpenDocument file, read from its XML by nothing of what wrote it. */
export interface OpenSheet {
  readonly table: XmlElement
  /** By address. */
  readonly cells: ReadonlyMap<string, XmlElement>
}

export const openSheets = (bytes: Uint8Array): ReadonlyMap<string, OpenSheet> => sheetsOf(spreadsheetOf(bytes))

function spreadsheetOf(bytes: Uint8Array): XmlElement {
  const content = strictXml(readZip(bytes).get('content.xml') ?? '')
  return elements(elements(content).find(({ name }) => name === 'office:body') ?? content)[0] ?? content
}

function sheetsOf(spreadsheet: XmlElement): ReadonlyMap<string, OpenSheet> {
  return new Map(elements(spreadsheet).filter(({ name }) => name === 'table:table').map((table) => [table.attributes.get('table:name') ?? '', { table, cells: cellsOf(table) }]))
}

/** The file as input of an engine: constants as the spreadsheet library reads them; formulas and names, which it reads in part only, from the XML. */
export function openInput(bytes: Uint8Array): FileInput {
  const { sheets } = fileInput(bytes)
  const spreadsheet = spreadsheetOf(bytes)
  const open = sheetsOf(spreadsheet)
  return {
    names: namesOf(spreadsheet),
    sheets: new Map([...sheets].map(([name, rows]) => [name, rows.map((row, at) => Array.from(row ?? [], (cell, column) => {
      const formula = open.get(name)?.cells.get(`${columnLetters(column)}${at + 1}`)?.attributes.get('table:formula')
      return formula === undefined || cell === undefined ? cell : { ...cell, f: fromOpenFormula(formula) }
    }))])),
  }
}

/** What each name stands for, in A1 form. */
function namesOf(spreadsheet: XmlElement): ReadonlyMap<string, string> {
  const list = elements(spreadsheet).find(({ name }) => name === 'table:named-expressions')
  return new Map((list === undefined ? [] : elements(list)).map(({ attributes }) => {
    const area = attributes.get('table:cell-range-address')
    const text = area === undefined ? attributes.get('table:expression') ?? '' : `of:=[${area.replace(/(:)\$(?:'(?:[^']|'')*'|[^.':]+)\./, '$1.')}]`
    return [attributes.get('table:name') ?? '', fromOpenFormula(text)]
  }))
}

/** A formula in A1 form with "," between arguments (OpenDocument 1.3, part 4, 5). */
export function fromOpenFormula(formula: string): string {
  if (!formula.startsWith('of:=')) throw new Error(`${formula} is not in OpenFormula`)
  let braces = 0
  return formula.slice(4).replace(/"(?:[^"]|"")*"|\[(?:\$?('(?:[^']|'')*'|[^.'\]]+))?\.([^\]]+)\]|COM\.MICROSOFT\.|[{}|;]/g, (text, sheet: string | undefined, cells: string | undefined) => {
    if (cells !== undefined) return (sheet === undefined ? '' : `${sheet}!`) + cells.replace(':.', ':')
    if (text === '{') braces++
    if (text === '}') braces--
    if (text === ';') return ','
    if (text === '|' && braces > 0) return ';'
    return text.startsWith('COM.') ? '' : text
  })
}

const repeated = ({ attributes }: XmlElement, what: string): number => Number(attributes.get(`table:number-${what}-repeated`) ?? 1)

function cellsOf(table: XmlElement): ReadonlyMap<string, XmlElement> {
  const cells = new Map<string, XmlElement>()
  const rows = elements(table).flatMap((child) => (child.name === 'table:table-header-rows' ? elements(child) : [child])).filter(({ name }) => name === 'table:table-row')
  let row = 0
  for (const element of rows) {
    let column = 0
    for (const cell of elements(element)) {
      if (cell.attributes.size > 0 && repeated(cell, 'columns') === 1) cells.set(`${columnLetters(column)}${row + 1}`, cell)
      column += repeated(cell, 'columns')
    }
    row += repeated(element, 'rows')
  }
  return cells
}
