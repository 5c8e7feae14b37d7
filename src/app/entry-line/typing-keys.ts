import { batch } from 'solid-js'
import type { Editing } from '../state/entry.ts'
import type { Session } from '../state/session.ts'
import { cycleReference } from './cycling.ts'

/** What keys do while a text is typed, beside what they do in any text field. */
export function typingKey(session: Session, event: KeyboardEvent, focusGrid: () => void): void {
  const editing = session.entry.editing()
  if (!editing || event.isComposing) return
  if (listKey(session, event) || textKey(session, event)) return event.preventDefault()
  if (event.key === 'Escape') {
    event.preventDefault()
    session.entry.cancel()
    session.setNotice(undefined)
    session.show(editing.sheet)
    focusGrid()
    return
  }
  // On the way through the controls of the page nothing is entered.
  if (event.key === 'Tab' && editing.place === 'line' && session.entry.isAsBefore()) return session.entry.cancel()
  const isForAll = event.key === 'Enter' && event.altKey && event.shiftKey
  const step = isForAll ? STAY : stepAfter(event, editing, session.entry.text())
  if (!step) return
  event.preventDefault()
  const field = event.currentTarget
  // Moving the focus lays the page out: before anything has changed, that costs nothing.
  focusGrid()
  // One change of the screen: what follows from the entry is not drawn once for the cell that is left and again for the next.
  const isEntered = batch(() => {
    if (!(isForAll ? session.settleInSelection() : session.settle())) return false
    session.show(editing.sheet)
    if (step !== STAY) session.selection.step(step[0], step[1])
    return true
  })
  if (!isEntered && field instanceof HTMLElement) field.focus({ preventScroll: true })
}

/** Keys of the list of suggestions, while it is open. */
function listKey({ completing }: Session, { key, shiftKey, ctrlKey, altKey, metaKey }: KeyboardEvent): boolean {
  if (!completing.completion() || shiftKey || ctrlKey || altKey || metaKey) return false
  const chosen = completing.chosen()
  if (key === 'ArrowDown' || key === 'ArrowUp') completing.move(key === 'ArrowDown' ? 1 : -1)
  else if (key === 'Escape') completing.dismiss()
  else if ((key === 'Enter' || key === 'Tab') && chosen !== undefined) completing.take(chosen)
  else return false
  return true
}

/** Keys that change the text: line break, absolute and relative, references by pointing. */
function textKey({ entry, pointing }: Session, { key, shiftKey, ctrlKey, altKey, metaKey, currentTarget }: KeyboardEvent): boolean {
  if (key === 'Enter' && ctrlKey) {
    const { selectionStart: start, selectionEnd: end } = currentTarget as HTMLTextAreaElement // the field that the handler is set on
    entry.put(`${entry.text().slice(0, start)}\n${entry.text().slice(end)}`, start + 1)
    return true
  }
  if (ctrlKey || altKey || metaKey) return false
  if (key === 'F8') {
    const cycled = cycleReference({ text: entry.text(), caret: entry.caret() })
    if (cycled) entry.put(cycled.text, cycled.caret)
    return true
  }
  const arrow = ARROWS[key]
  if (!arrow || !pointing.fitsKeys()) return false
  pointing.step(arrow[0], arrow[1], shiftKey)
  return true
}

type Step = readonly [rows: number, columns: number]
const STAY: Step = [0, 0]

/** How far the selection goes on where a key enters the text. */
function stepAfter({ key, shiftKey, ctrlKey, altKey, metaKey }: KeyboardEvent, { typedOver }: Editing, text: string): Step | undefined {
  if (ctrlKey || altKey || metaKey) return undefined
  const back = shiftKey ? -1 : 1
  if (key === 'Enter') return [back, 0]
  if (key === 'Tab') return [0, back]
  return typedOver && !text.startsWith('=') ? ARROWS[key] : undefined
}

const ARROWS: Readonly<Record<string, Step>> = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }
