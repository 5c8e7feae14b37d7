import type { FileCell, FileSheet } from '../package/file-sheet.ts'
import type { Look } from '../package/looks.ts'
import type { TableCell, TableSheet } from './table-sheets.ts'

const LOOK: Readonly<Record<TableCell['kind'], Look>> = { title: 'title', source: 'note', header: 'header', data: 'table' }

/** A sheet of tables as a file has it. */
export function tableFileSheet({ name, rows }: TableSheet): FileSheet {
  const columns = Math.max(...rows.map(({ length }) => length))
  return {
    name, widthsPx: Array.from({ length: columns }, () => 130), frozen: [0, 0],
    rows: rows.map((cells, row) => ({ row, cells: Array.from(cells, (cell): FileCell | undefined => cell && { value: cell.content, style: { look: LOOK[cell.kind] } }) })),
  }
}
