import { createEffect, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import type { EntryPlace } from '../state/entry.ts'
import { ColouredFormula } from './ColouredFormula.tsx'
import './EntryField.css'

interface Props {
  readonly place: EntryPlace
  readonly label: string
  readonly describedBy?: string
  readonly onKeyDown: (event: KeyboardEvent) => void
}

/** The text of a cell while it is typed: an ordinary text field whose text is drawn in colours beneath it. */
export function EntryField(props: Props): JSX.Element {
  const { entry } = useSession()
  let field: HTMLTextAreaElement | undefined

  const here = () => entry.editing()?.place === props.place
  createEffect(() => {
    if (!here() || !field || globalThis.document.activeElement === field) return
    field.focus({ preventScroll: true })
    field.setSelectionRange(entry.caret(), entry.caret())
  })
  const noteCaret = (element: HTMLTextAreaElement) => entry.type(element.value, element.selectionStart)

  return (
    <div class="entry-field" classList={{ typing: here() }}>
      <pre class="entry-colours" aria-hidden="true"><ColouredFormula text={entry.text()} />{'\u200b'}</pre>
      <textarea
        ref={(element) => (field = element)}
        class="entry-text"
        rows={1}
        spellcheck={false}
        autocomplete="off"
        aria-label={props.label}
        aria-describedby={props.describedBy}
        value={entry.text()}
        onFocus={() => (entry.editing() ? entry.moveTo(props.place) : entry.begin(props.place))}
        onInput={(event) => noteCaret(event.currentTarget)}
        onSelect={(event) => entry.editing() && noteCaret(event.currentTarget)}
        onKeyDown={(event) => props.onKeyDown(event)}
      />
    </div>
  )
}
