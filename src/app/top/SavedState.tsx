import { Show, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import { fileWords } from './file-words.ts'
import './SavedState.css'

/** Whether everything is kept in this browser, and how the workbook stands to its file: the browser may evict what it keeps. */
export function SavedState(): JSX.Element {
  const { keeping, document } = useSession()
  return (
    <div class="saved-state" classList={{ unsaved: document.unsaved() }}>
      <Show when={keeping.reading()} fallback={
        // Not spoken: it changes with every entry. What goes wrong is said in the status line.
        <p class="kept" classList={{ 'kept-problem': keeping.problem() !== undefined }} title={keeping.problem()} role="note" aria-label="Kept">{KEPT_WORDS[keeping.state()]}</p>
      }>
        <p class="kept" role="note" aria-label="Kept">Another tab writes, this one reads <button type="button" class="take-over" onClick={() => keeping.takeOver()}>Take over</button></p>
      </Show>
      <p class="file-state" role="status" aria-label="Saved state">{fileWords(document.fileState())}</p>
    </div>
  )
}

const KEPT_WORDS = {
  kept: 'Kept in this browser',
  keeping: 'Being kept',
  failed: 'Latest changes not kept',
  off: 'Not kept in this browser',
}
