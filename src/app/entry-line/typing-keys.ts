import type { Editing } from '../state/entry.ts'
import type { Session } from '../state/session.ts'

/** What ends typing, and where the selection goes then; all other keys belong to the text field. */
export function typingKey(session: Session, event: KeyboardEvent, focusGrid: () => void): void {
  const editing = session.entry.editing()
  if (!editing || event.isComposing) return
  if (event.key === 'Escape') {
    event.preventDefault()
    session.entry.cancel()
    session.setNotice(undefined)
    focusGrid()
    return
  }
  const step = stepAfter(event, editing, session.entry.text())
  if (!step) return
  event.preventDefault()
  const field = event.currentTarget
  // Moving the focus lays the page out: before anything has changed, that costs nothing.
  focusGrid()
  if (session.settle()) session.selection.step(step[0], step[1])
  else if (field instanceof HTMLElement) field.focus({ preventScroll: true })
}

type Step = readonly [rows: number, columns: number]

function stepAfter({ key, shiftKey, ctrlKey, altKey, metaKey }: KeyboardEvent, { typedOver }: Editing, text: string): Step | undefined {
  // With Ctrl or Alt, Enter is a line break in a text.
  if (ctrlKey || altKey || metaKey) return undefined
  const back = shiftKey ? -1 : 1
  if (key === 'Enter') return [back, 0]
  if (key === 'Tab') return [0, back]
  return typedOver && !text.startsWith('=') ? ARROWS[key] : undefined
}

const ARROWS: Readonly<Record<string, Step>> = { ArrowUp: [-1, 0], ArrowDown: [1, 0], ArrowLeft: [0, -1], ArrowRight: [0, 1] }
