import { descendants, type XmlElement } from './xml-tree.ts'

interface Kind {
  /** The children that it may have, in their order; "*" after a name where there may be several. */
  readonly children: string
  readonly attributes: string
}

/**
 * What elements may hold, and in which order, for those that an exported file has: the sequences of the schema of ECMA-376, part 1, annex A.2,
 * by the clause that describes each (from memory of the standard).
 */
const KINDS: Readonly<Record<string, Kind>> = {
  // 18.2.27, 18.2.30, 18.2.1, 18.2.20, 18.2.19, 18.2.6, 18.2.5, 18.2.2
  workbook: {
    children: 'fileVersion fileSharing workbookPr workbookProtection bookViews sheets functionGroups externalReferences definedNames calcPr oleSize customWorkbookViews pivotCaches webPublishing fileRecoveryPr* webPublishObjects extLst',
    attributes: 'xmlns xmlns:r conformance',
  },
  workbookPr: { children: '', attributes: 'date1904 defaultThemeVersion codeName' },
  workbookProtection: { children: '', attributes: 'lockStructure lockWindows' },
  bookViews: { children: 'workbookView*', attributes: '' },
  workbookView: { children: '', attributes: 'visibility activeTab firstSheet tabRatio showSheetTabs xWindow yWindow windowWidth windowHeight' },
  sheets: { children: 'sheet*', attributes: '' },
  sheet: { children: '', attributes: 'name sheetId state r:id' },
  definedNames: { children: 'definedName*', attributes: '' },
  definedName: { children: '', attributes: 'name localSheetId hidden comment' },
  calcPr: { children: '', attributes: 'calcId calcMode fullCalcOnLoad iterate' },
  // 18.3.1.99
  worksheet: {
    children: 'sheetPr dimension sheetViews sheetFormatPr cols* sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate customSheetViews mergeCells phoneticPr conditionalFormatting* dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks customProperties cellWatches ignoredErrors drawing legacyDrawing legacyDrawingHF drawingHF picture oleObjects controls webPublishItems tableParts extLst',
    attributes: 'xmlns xmlns:r',
  },
  // 18.3.1.82, 18.3.1.65, 18.3.1.88, 18.3.1.87, 18.3.1.66, 18.3.1.78, 18.3.1.81
  sheetPr: { children: 'tabColor outlinePr pageSetUpPr', attributes: 'filterMode published' },
  pageSetUpPr: { children: '', attributes: 'autoPageBreaks fitToPage' },
  dimension: { children: '', attributes: 'ref' },
  sheetViews: { children: 'sheetView*', attributes: '' },
  sheetView: { children: 'pane selection*', attributes: 'showGridLines showRowColHeaders showZeros tabSelected view topLeftCell zoomScale workbookViewId' },
  pane: { children: '', attributes: 'xSplit ySplit topLeftCell activePane state' },
  selection: { children: '', attributes: 'pane activeCell sqref' },
  sheetFormatPr: { children: '', attributes: 'baseColWidth defaultColWidth defaultRowHeight customHeight' },
  // 18.3.1.17, 18.3.1.13, 18.3.1.80, 18.3.1.73, 18.3.1.4, 18.3.1.40, 18.3.1.96, 18.3.1.53
  cols: { children: 'col*', attributes: '' },
  col: { children: '', attributes: 'min max width style hidden customWidth' },
  sheetData: { children: 'row*', attributes: '' },
  row: { children: 'c*', attributes: 'r spans s customFormat ht hidden customHeight' },
  c: { children: 'f v is', attributes: 'r s t' },
  f: { children: '', attributes: 't ref si xml:space' },
  v: { children: '', attributes: 'xml:space' },
  is: { children: 't r*', attributes: '' },
  t: { children: '', attributes: 'xml:space' },
  mergeCells: { children: 'mergeCell*', attributes: 'count' },
  mergeCell: { children: '', attributes: 'ref' },
  // 18.3.1.18, 18.3.1.10, 18.3.1.43
  conditionalFormatting: { children: 'cfRule*', attributes: 'sqref' },
  cfRule: { children: 'formula*', attributes: 'type dxfId priority operator stopIfTrue text' },
  formula: { children: '', attributes: '' },
  // 18.3.1.62, 18.3.1.63, 18.3.1.46, 18.3.1.47
  printOptions: { children: '', attributes: 'horizontalCentered gridLines headings' },
  pageMargins: { children: '', attributes: 'left right top bottom header footer' },
  pageSetup: { children: '', attributes: 'paperSize orientation fitToWidth fitToHeight scale firstPageNumber' },
  headerFooter: { children: 'oddHeader oddFooter evenHeader evenFooter firstHeader firstFooter', attributes: 'differentFirst' },
  oddHeader: { children: '', attributes: 'xml:space' },
  oddFooter: { children: '', attributes: 'xml:space' },
  legacyDrawing: { children: '', attributes: 'r:id' },
  // 18.8.39 and its parts 18.8.31, 18.8.30, 18.8.23, 18.8.22, 18.8.21, 18.8.20, 18.8.32, 18.8.5, 18.8.4, 18.8.9, 18.8.10, 18.8.45, 18.8.1, 18.8.33, 18.8.8, 18.8.7, 18.8.15, 18.8.14
  styleSheet: { children: 'numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst', attributes: 'xmlns' },
  numFmts: { children: 'numFmt*', attributes: 'count' },
  numFmt: { children: '', attributes: 'numFmtId formatCode' },
  fonts: { children: 'font*', attributes: 'count' },
  font: { children: 'b i strike condense extend outline shadow u vertAlign sz color name family charset scheme', attributes: '' },
  fills: { children: 'fill*', attributes: 'count' },
  fill: { children: 'patternFill gradientFill', attributes: '' },
  patternFill: { children: 'fgColor bgColor', attributes: 'patternType' },
  borders: { children: 'border*', attributes: 'count' },
  border: { children: 'start end left right top bottom diagonal vertical horizontal', attributes: '' },
  cellStyleXfs: { children: 'xf*', attributes: 'count' },
  cellXfs: { children: 'xf*', attributes: 'count' },
  xf: { children: 'alignment protection extLst', attributes: 'numFmtId fontId fillId borderId xfId quotePrefix applyNumberFormat applyFont applyFill applyBorder applyAlignment applyProtection' },
  alignment: { children: '', attributes: 'horizontal vertical wrapText indent shrinkToFit' },
  protection: { children: '', attributes: 'locked hidden' },
  cellStyles: { children: 'cellStyle*', attributes: 'count' },
  cellStyle: { children: '', attributes: 'name xfId builtinId' },
  dxfs: { children: 'dxf*', attributes: 'count' },
  dxf: { children: 'font numFmt fill alignment border protection', attributes: '' },
  // 18.7.6, 18.7.2, 18.7.1, 18.7.4, 18.7.3, 18.7.7, 18.4.4
  comments: { children: 'authors commentList', attributes: 'xmlns' },
  authors: { children: 'author*', attributes: '' },
  author: { children: '', attributes: '' },
  commentList: { children: 'comment*', attributes: '' },
  comment: { children: 'text', attributes: 'ref authorId' },
  text: { children: 't r*', attributes: '' },
  r: { children: 'rPr t', attributes: '' },
  // Part 2, 9.3 and 10.1.2
  Relationships: { children: 'Relationship*', attributes: 'xmlns' },
  Relationship: { children: '', attributes: 'Id Type Target TargetMode' },
  Types: { children: 'Default* Override*', attributes: 'xmlns' },
  Default: { children: '', attributes: 'Extension ContentType' },
  Override: { children: '', attributes: 'PartName ContentType' },
}

/** Sides of a border, and colours, wherever they stand. */
const ANYWHERE: Readonly<Record<string, Kind>> = Object.fromEntries([
  ...['left', 'right', 'top', 'bottom', 'diagonal'].map((side) => [side, { children: 'color', attributes: 'style' }] as const),
  ...['color', 'fgColor', 'bgColor', 'tabColor'].map((name) => [name, { children: '', attributes: 'rgb indexed theme tint auto' }] as const),
  ...['b', 'i', 'sz', 'name', 'family', 'u'].map((name) => [name, { children: '', attributes: 'val' }] as const),
])

/** Elements and attributes of a part that its schema does not have there, or has in another order. */
export function orderProblems(root: XmlElement): readonly string[] {
  const problems: string[] = []
  for (const element of descendants(root)) {
    const kind = KINDS[element.name] ?? ANYWHERE[element.name]
    if (kind === undefined) {
      problems.push(`<${element.name}> is not known`)
      continue
    }
    const allowed = kind.attributes.split(' ')
    for (const name of element.attributes.keys()) if (!allowed.includes(name)) problems.push(`<${element.name}> has an attribute ${name}`)
    const order = kind.children.split(' ')
    let at = 0
    for (const { name } of element.children) {
      const place = order.findIndex((one, index) => index >= at && one.replace('*', '') === name)
      if (place < 0) problems.push(`<${name}> does not belong there in <${element.name}>`)
      else at = order[place]?.endsWith('*') ? place : place + 1
    }
  }
  return [...new Set(problems)]
}
