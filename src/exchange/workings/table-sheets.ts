import { workingsTables } from '../../../functions/workings/all-tables.ts'
import { unitsTable, type WorkingsTable } from '../../../functions/workings/tables.ts'
import { columnLetters, quoteSheetName } from '../../workbook/address.ts'

/** A sheet of tables that workings look things up in. */
export interface TableSheet {
  readonly name: string
  readonly rows: readonly (readonly TableCell[])[]
}

export interface TableCell {
  readonly content: number | string
  readonly kind: 'title' | 'source' | 'header' | 'data'
}

/** The sheets of tables that formulas with these marks need, and the address of each block by its mark. */
export function tableSheets(marks: ReadonlySet<string>, sheetName: (wanted: string) => string): { readonly sheets: readonly TableSheet[]; readonly addresses: ReadonlyMap<string, string> } {
  const used = workingsTables.filter(({ name, blocks }) => Object.keys(blocks).some((block) => marks.has(`${name}.${block}`)))
  const addresses = new Map<string, string>()
  const sheets = [
    { wanted: 'Units', tables: used.filter((table) => table === unitsTable) },
    { wanted: 'Coefficients', tables: used.filter((table) => table !== unitsTable) },
  ].flatMap(({ wanted, tables }) => (tables.length === 0 ? [] : [tableSheet(sheetName(wanted), tables, addresses)]))
  return { sheets, addresses }
}

/** Tables one below the other, the blocks of each side by side under their names. */
function tableSheet(name: string, tables: readonly WorkingsTable[], addresses: Map<string, string>): TableSheet {
  const rows: TableCell[][] = []
  for (const { name: table, title, source, blocks } of tables) {
    if (rows.length > 0) rows.push([])
    rows.push([{ content: title, kind: 'title' }], [{ content: source, kind: 'source' }])
    const header: TableCell[] = []
    const top = rows.push(header)
    let left = 0
    for (const [block, values] of Object.entries(blocks)) {
      header[left] = { content: block, kind: 'header' }
      const width = Math.max(...values.map(({ length }) => length))
      addresses.set(`${table}.${block}`, `${quoteSheetName(name)}!$${columnLetters(left)}$${top + 1}:$${columnLetters(left + width - 1)}$${top + values.length}`)
      for (const [index, line] of values.entries()) {
        const row = (rows[top + index] ??= [])
        for (const [column, content] of line.entries()) row[left + column] = { content, kind: 'data' }
      }
      left += width
    }
  }
  return { name, rows }
}
