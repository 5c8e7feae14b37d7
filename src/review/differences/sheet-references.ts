import { parseReference, printReference, type Corner, type Reference } from '../../workbook/address.ts'
import { eachCell } from '../../workbook/cells.ts'
import { foldCase, isFormula, type Sheet } from '../../workbook/document.ts'
import { referenceExtents } from '../../workbook/formula/tokenise.ts'
import { textOf, type CellText } from './align-sheets.ts'
import type { Layout } from './layout.ts'
import { toCommon, type LineMap } from './line-map.ts'

/** What cells of either side say, references to other sheets among it: as places that both sides have, counted by themselves. */
export function referringTexts({ pairs }: Layout): { readonly before: (host: Sheet) => CellText; readonly now: (host: Sheet) => CellText } {
  const [before, now] = [new Map<string, Common>(), new Map<string, Common>()]
  for (const pair of pairs) {
    const [rows, columns] = [toCommon(pair.rows, false), toCommon(pair.columns, false)]
    // The same name from either side.
    const name = [pair.before, pair.now].map(foldCase).toSorted().join('/')
    before.set(foldCase(pair.before), { name, rows: rows.before, columns: columns.before })
    now.set(foldCase(pair.now), { name, rows: rows.now, columns: columns.now })
  }
  return { before: (host) => textWith(before, host.name), now: (host) => textWith(now, host.name) }
}

/** Whether any formula of a sheet names a sheet. */
export function refersToSheets(sheet: Sheet): boolean {
  let found = false
  eachCell(sheet, ({ content }) => { found ||= isFormula(content) && content.includes('!') })
  return found
}

interface Common {
  readonly name: string
  readonly rows: LineMap
  readonly columns: LineMap
}

function textWith(sheets: ReadonlyMap<string, Common>, host: string): CellText {
  return (cell) => {
    const { content } = cell
    if (!isFormula(content) || !content.includes('!')) return textOf(cell)
    const referred = referenceExtents(content).flatMap(({ start, end }) => {
      const reference = parseReference(content.slice(start, end))
      return reference === undefined || reference.sheet === null || foldCase(reference.sheet) === foldCase(host) ? [] : [printed(reference, sheets.get(foldCase(reference.sheet)))]
    })
    return `${textOf(cell)} ${referred.join(' ')}`
  }
}

/** Of what only one side has, no more than that it is there: which it is the other side cannot say. */
function printed(reference: Reference, common: Common | undefined): string {
  if (common === undefined) return printReference(reference)
  const corner = ({ row, column }: Corner): string => `${row === null ? '*' : (common.rows.line(row) ?? '?')}:${column === null ? '*' : (common.columns.line(column) ?? '?')}`
  return `${common.name}!${corner(reference.from)}${reference.to === null ? '' : `-${corner(reference.to)}`}`
}
