import { createEffect, createMemo, on, onCleanup, onMount, type JSX } from 'solid-js'
import { unreadableAt } from '../../workbook/formula/unreadable.ts'
import type { EntryPlace } from '../state/entry.ts'
import { useSession } from '../state/session.ts'
import { ColouredFormula } from './ColouredFormula.tsx'
import { replaceText } from './replace-text.ts'
import { HINT_ID, LIST_ID, optionId, TypingHelp } from './TypingHelp.tsx'
import './EntryField.css'

interface Props {
  readonly place: EntryPlace
  readonly label: string
  readonly onKeyDown: (event: KeyboardEvent) => void
}

/** The text of a cell while it is typed: an ordinary text field whose text is drawn in colours beneath it, and what helps while typing. */
export function EntryField(props: Props): JSX.Element {
  const { entry, completing } = useSession()
  let field: HTMLTextAreaElement | undefined
  let isReplacing = false

  const here = createMemo(() => entry.editing()?.place === props.place)
  const list = () => (here() ? completing.completion() : undefined)
  const problem = createMemo(() => {
    const text = entry.text()
    const found = text.startsWith('=') ? unreadableAt(text) : undefined
    // What is not there yet is no fault while one types at the end.
    return found?.unfinished && entry.editing() && entry.isFresh() && entry.caret() === text.length ? undefined : found
  })

  createEffect(() => {
    const text = entry.text()
    if (!field || field.value === text) return
    isReplacing = true
    if (here() && globalThis.document.activeElement === field) replaceText(field, text)
    else field.value = text
    isReplacing = false
  })
  createEffect(on(entry.placed, ({ caret }) => here() && field?.setSelectionRange(caret, caret), { defer: true }))
  createEffect(() => {
    if (!here() || !field || globalThis.document.activeElement === field) return
    field.focus({ preventScroll: true })
    field.setSelectionRange(entry.caret(), entry.caret())
  })

  const note = () => {
    if (field && !isReplacing && here()) entry.type(field.value, field.selectionStart)
  }
  const onCaret = () => globalThis.document.activeElement === field && note()
  onMount(() => {
    globalThis.document.addEventListener('selectionchange', onCaret)
    onCleanup(() => globalThis.document.removeEventListener('selectionchange', onCaret))
  })

  return (
    <>
      <div class="entry-field" classList={{ typing: here() }}>
        <pre class="entry-colours" aria-hidden="true"><ColouredFormula text={entry.text()} problem={problem()} />{'\u200b'}</pre>
        <textarea
          ref={(element) => (field = element)}
          class="entry-text"
          rows={1}
          spellcheck={false}
          autocomplete="off"
          aria-label={props.label}
          aria-describedby={here() ? HINT_ID : undefined}
          aria-invalid={problem() !== undefined}
          aria-autocomplete="list"
          aria-controls={list() ? LIST_ID : undefined}
          aria-activedescendant={list() && completing.chosen() !== undefined ? optionId(completing.chosen() ?? 0) : undefined}
          onFocus={() => (entry.editing() ? entry.moveTo(props.place) : entry.begin(props.place))}
          onInput={note}
          onKeyDown={(event) => props.onKeyDown(event)}
        />
      </div>
      {here() && <TypingHelp problem={problem()} />}
    </>
  )
}
