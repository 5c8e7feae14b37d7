import { blockOf, moveCells, type Block } from '../../workbook/move-cells.ts'
import { valueText } from '../state/cell-value.ts'
import type { Session } from '../state/session.ts'
import { areaEdits, cellsOf, pasteCells, pastedSize, pasteText, sizeOf, type Copied } from './clipboard.ts'
import { parseTabular, printTabular } from './tabular-text.ts'

/** Cells of a copy at most: beyond, the text takes the browser more than a moment. */
const MOST_CELLS = 500_000

/** Copy, cut and paste of the selected rectangle, while the grid has the focus. */
export function copyHandlers(session: Session) {
  let copied: Copied | undefined
  /** What was cut and not yet put anywhere: its next paste moves it, and references to it follow. */
  let taken: Block | undefined

  function copy(event: ClipboardEvent): boolean {
    const area = session.usedSelection()
    if (event.target !== event.currentTarget || !event.clipboardData) return false
    event.preventDefault()
    if ((area.bottom - area.top + 1) * (area.right - area.left + 1) > MOST_CELLS) {
      session.setNotice({ tone: 'problem', text: `Too many cells to copy at once; accepted: up to ${MOST_CELLS.toLocaleString('en')}` })
      return false
    }
    const cells = cellsOf(session.document.workbook(), session.sheet().name, area)
    const text = printTabular(cells.map((line, row) => line.map((_, column) => valueText(session.value(area.top + row, area.left + column)))))
    copied = { text, from: area, cells }
    taken = undefined
    event.clipboardData.setData('text/plain', text)
    return true
  }

  return {
    onCopy: (event: ClipboardEvent) => void copy(event),
    onCut(event: ClipboardEvent) {
      if (!copy(event)) return
      taken = blockOf(session.document.workbook(), session.sheet().name, session.usedSelection())
      session.act('Cut', (workbook) => areaEdits(workbook, session.sheet().name, session.usedSelection()))
    },
    onPaste(event: ClipboardEvent) {
      const text = event.clipboardData?.getData('text/plain') ?? ''
      if (event.target !== event.currentTarget || text === '') return
      event.preventDefault()
      const place = session.usedSelection()
      const { top: row, left: column } = place
      const sheet = session.sheet().name
      // The same text as was copied here means the cells themselves, with roles and formulas.
      const own = copied?.text.replaceAll('\r\n', '\n') === text.replaceAll('\r\n', '\n') ? copied : undefined
      const table = own ? [] : parseTabular(text)
      const moved = own && taken
      taken = undefined
      session.act('Paste', (workbook) => {
        if (moved) return moveCells(workbook, moved, sheet, { row, column })
        return own ? pasteCells(sheet, place, own) : pasteText(workbook, sheet, { row, column }, table)
      })
      const { height, width } = moved ? sizeOf(moved.cells) : own ? pastedSize(place, own.cells) : sizeOf(table)
      session.selection.select({ top: row, left: column, bottom: row + height - 1, right: column + width - 1 })
    },
  }
}
