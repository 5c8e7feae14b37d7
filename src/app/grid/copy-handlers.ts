import type { Area } from '../../workbook/address.ts'
import { cellCount, lineUp } from '../../workbook/areas.ts'
import { blockOf, moveCells, type Block } from '../../workbook/move-cells.ts'
import type { Part } from '../state/long-change.ts'
import { selectionWords } from '../state/on-selection.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'
import { cellsOf, pasteCells, pasteText, type Copied } from './clipboard.ts'
import { isAllKnown, knownText, readText, type ToCopy } from './copied-text.ts'

/** Cells of a copy at most: beyond, the text takes the browser more than a moment. */
const MOST_CELLS = 500_000

/** Copy, cut and paste of what is selected, while the grid has the focus. */
export function copyHandlers(session: Session) {
  let copied: Copied | undefined
  /** What is on its way to the clipboard, its values being read. */
  let underWay: ToCopy | undefined
  /** A text that the browser did not take when it came, and the version of the workbook that it is of. */
  let ready: { readonly text: string; readonly of: string; readonly version: number } | undefined

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
    const sheet = session.sheet().name
    const wanted: ToCopy = { sheet, from, cells: cellsOf(session.document.workbook(), sheet, from) }
    const { stopped, version } = session.recalculation
    session.cutting.end()
    session.setNotice(undefined)
    const kept = ready?.of === placeOf(wanted) && ready.version === version() ? ready.text : undefined
    const isKnown = kept !== undefined || isAllKnown(session, wanted)
    if (!isKnown && !stopped()) {
      void copyLater(wanted)
      return true
    }
    const text = kept ?? knownText(session, wanted)
    underWay = ready = undefined
    copied = { ...wanted, text }
    event.clipboardData.setData('text/plain', text)
    if (!isKnown) session.setNotice({ tone: 'done', text: 'Copied with the values known: for other programs some may be missing or out of date until you recalculate' })
    return true
  }

  /** The event does not wait: a text whose values are still to be read goes to the clipboard by itself. */
  async function copyLater(wanted: ToCopy): Promise<void> {
    underWay = wanted
    copied = { ...wanted, text: '' }
    const version = session.recalculation.version()
    const reading = readText(session, wanted)
    const isMine = (): boolean => underWay === wanted
    try {
      await putOnClipboard(reading)
      if (isMine()) copied = { ...wanted, text: await reading }
    } catch {
      const read = await reading.then((text) => ({ text, of: placeOf(wanted), version }), (problem: unknown) => ({ problem }))
      if (!isMine()) return
      copied = undefined
      session.cutting.end()
      if ('text' in read) {
        ready = read
        refuse('The browser does not take a copy whose values were still to be read. They are read now: copy again')
      } else if (read.problem instanceof WorkStopped) session.setNotice({ tone: 'done', text: 'Stopped: nothing was copied' })
      else refuse(read.problem instanceof Error ? read.problem.message : String(read.problem))
    } finally {
      if (isMine()) underWay = undefined
    }
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
      const own = underWay || copied?.text.replaceAll('\r\n', '\n') === text.replaceAll('\r\n', '\n') ? copied : undefined
      const cut = own && session.cutting.block()
      if (cut) move(cut, session.usedSelection())
      else paste(session.usedSelection(), text, own)
    },
  }
}

/** Begins at once, as a browser allows only while a key or a click is being answered. */
async function putOnClipboard(text: Promise<string>): Promise<void> {
  const blob = text.then((known) => new Blob([known], { type: 'text/plain' }))
  // Also where the clipboard refuses before it looks at it.
  blob.catch(() => undefined)
  await navigator.clipboard.write([new ClipboardItem({ 'text/plain': blob })])
}

const placeOf = ({ sheet, from }: ToCopy): string => JSON.stringify([sheet, from])

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
