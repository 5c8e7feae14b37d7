import { valueText } from '../../calc/cell-value.ts'
import type { Area } from '../../workbook/address.ts'
import { cellCount, lineUp } from '../../workbook/areas.ts'
import { sheetByName } from '../../workbook/document.ts'
import { blockOf, moveCells, type Block } from '../../workbook/move-cells.ts'
import type { Part } from '../state/long-change.ts'
import { selectionWords } from '../state/on-selection.ts'
import type { Session } from '../state/session.ts'
import type { GridContext } from './grid-context.ts'
import { cellsOf, pasteCells, pasteText, type Copied } from './clipboard.ts'
import { printTabular } from './tabular-text.ts'

/** Cells of a copy at most: beyond, the text takes the browser more than a moment. */
const MOST_CELLS = 500_000

/** Copy, cut and paste of what is selected, while the grid has the focus. */
export function copyHandlers(session: Session, { layout }: Pick<GridContext, 'layout'>) {
  let copied: Copied | undefined

  const refuse = (text: string): void => session.setNotice({ tone: 'problem', text })

  function copy(event: ClipboardEvent): boolean {
    if (event.target !== event.currentTarget || !event.clipboardData) return false
    event.preventDefault()
    const areas = session.usedAreas()
    const from = cellCount(areas) > MOST_CELLS ? undefined : lineUp(areas)
    if (!from) {
      refuse(cellCount(areas) > MOST_CELLS
        ? `Too many cells to copy at once; accepted: up to ${MOST_CELLS.toLocaleString('en')}`
        : `${selectionWords(session)} do not line up as one block; accepted: ranges that have the same rows or the same columns`)
      return false
    }
    const cells = cellsOf(session.document.workbook(), session.sheet().name, from)
    const text = printTabular(from.rows.map((row) => from.columns.map((column) => valueText(session.value(row, column)))))
    copied = { text, from, cells }
    session.cutting.end()
    session.setNotice(undefined)
    event.clipboardData.setData('text/plain', text)
    return true
  }

  /** What was cut goes to its new place: the formulas that refer to it follow. */
  function move({ area, ...block }: Block, { top, left }: Area): void {
    const sheet = session.sheet().name
    session.act('Move', (workbook) => moveCells(workbook, { area, ...block }, sheet, { row: top, column: left }))
    if (session.notice()) return
    session.cutting.end()
    session.selection.select({ top, left, bottom: top + area.bottom - area.top, right: left + area.right - area.left })
  }

  function paste(place: Area, text: string, own: Copied | undefined): void {
    const sheet = session.sheet().name
    const asked = session.selection.areas()
    let filled = place
    session.actInParts({
      label: 'Paste',
      make: (workbook) => noting(own ? pasteCells(sheet, place, own) : pasteText(workbook, sheet, { row: place.top, column: place.left }, text), (area) => (filled = area)),
      prepare(workbook) {
        const next = sheetByName(workbook, sheet)
        if (next && sheet === session.sheetName()) layout.prepare(next)
      },
      done() {
        // Whoever has gone on meanwhile stays where they are.
        if (session.selection.areas() === asked && !session.entry.editing()) session.selection.select(filled)
      },
    })
  }

  return {
    onCopy: (event: ClipboardEvent) => void copy(event),
    onCut(event: ClipboardEvent) {
      if (session.selection.areas().length > 1) {
        event.preventDefault()
        return refuse('A cut takes one range: its cells move together. Select one range, or copy')
      }
      if (!copy(event)) return
      session.cutting.take(blockOf(session.document.workbook(), session.sheet().name, session.usedSelection()))
      session.setNotice({ tone: 'done', text: `${selectionWords(session)} moves to where you paste it; Escape ends the cut` })
    },
    onPaste(event: ClipboardEvent) {
      const text = event.clipboardData?.getData('text/plain') ?? ''
      if (event.target !== event.currentTarget || text === '') return
      event.preventDefault()
      // What is cut may be what another paste is about to fill.
      session.document.longChange.finish()
      if (session.selection.areas().length > 1) return refuse('A paste goes to one place; select one range')
      // The same text as was copied here means the cells themselves, with roles and formulas.
      const own = copied?.text.replaceAll('\r\n', '\n') === text.replaceAll('\r\n', '\n') ? copied : undefined
      const cut = own && session.cutting.block()
      if (cut) move(cut, session.usedSelection())
      else paste(session.usedSelection(), text, own)
    },
  }
}

/** Passes parts on, and tells of the rectangle that they fill. */
function* noting(parts: Iterable<Part>, filled: (area: Area) => void): Generator<Part> {
  let [top, left, bottom, right] = [Infinity, Infinity, 0, 0]
  for (const part of parts) {
    for (const edit of part.edits) {
      for (const { row, column } of edit.kind === 'cells' ? edit.cells : []) {
        top = Math.min(top, row)
        left = Math.min(left, column)
        bottom = Math.max(bottom, row)
        right = Math.max(right, column)
      }
    }
    yield part
  }
  if (bottom >= top) filled({ top, left, bottom, right })
}
