import { buildZip, type PartToBuild } from './build-zip.ts'

const MAIN = 'http://schemas.openxmlformats.org/spreadsheetml/2006/main'
const OFFICE = 'http://schemas.openxmlformats.org/officeDocument/2006/relationships'
const PACKAGE = 'http://schemas.openxmlformats.org/package/2006/relationships'

export interface XlsxToBuild {
  /** What stands inside each worksheet element, by the sheet's name. */
  readonly sheets: readonly (readonly [name: string, inside: string])[]
  readonly styles?: string
  readonly texts?: string
  /** What else stands inside the workbook element. */
  readonly book?: string
  readonly more?: readonly PartToBuild[]
  readonly notes?: string
}

/** The parts of the smallest package that is a spreadsheet (ECMA-376, part 1, 12). */
export function xlsxParts({ sheets, styles, texts, book = '', more = [], notes }: XlsxToBuild): PartToBuild[] {
  const links = [
    ...sheets.map((_, index) => `<Relationship Id="rId${index + 1}" Type="${OFFICE}/worksheet" Target="worksheets/sheet${index + 1}.xml"/>`),
    ...(styles === undefined ? [] : [`<Relationship Id="rStyles" Type="${OFFICE}/styles" Target="styles.xml"/>`]),
    ...(texts === undefined ? [] : [`<Relationship Id="rTexts" Type="${OFFICE}/sharedStrings" Target="/xl/sharedStrings.xml"/>`]),
  ]
  return [
    { name: '[Content_Types].xml', data: '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>' },
    { name: '_rels/.rels', data: `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${OFFICE}/officeDocument" Target="xl/workbook.xml"/></Relationships>` },
    { name: 'xl/workbook.xml', data: `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets>${sheets.map(([name], index) => `<sheet name="${name}" sheetId="${index + 1}" r:id="rId${index + 1}"/>`).join('')}</sheets>${book}</workbook>` },
    { name: 'xl/_rels/workbook.xml.rels', data: `<Relationships xmlns="${PACKAGE}">${links.join('')}</Relationships>` },
    ...sheets.map(([, inside], index) => ({ name: `xl/worksheets/sheet${index + 1}.xml`, data: `<worksheet xmlns="${MAIN}">${inside}</worksheet>` })),
    ...(styles === undefined ? [] : [{ name: 'xl/styles.xml', data: `<styleSheet xmlns="${MAIN}">${styles}</styleSheet>` }]),
    ...(texts === undefined ? [] : [{ name: 'xl/sharedStrings.xml', data: `<sst xmlns="${MAIN}">${texts}</sst>` }]),
    ...(notes === undefined ? [] : [
      { name: 'xl/worksheets/_rels/sheet1.xml.rels', data: `<Relationships xmlns="${PACKAGE}"><Relationship Id="rId1" Type="${OFFICE}/comments" Target="../comments1.xml"/></Relationships>` },
      { name: 'xl/comments1.xml', data: `<comments xmlns="${MAIN}"><authors/><commentList>${notes}</commentList></comments>` },
    ]),
    ...more,
  ]
}

export const buildXlsx = (workbook: XlsxToBuild): Uint8Array => buildZip(xlsxParts(workbook))

export const rowsXml = (inside: string): string => `<sheetData>${inside}</sheetData>`
