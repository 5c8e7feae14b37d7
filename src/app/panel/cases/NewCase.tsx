import { createSignal, Show, type JSX } from 'solid-js'
import { freeName } from '../../../workbook/case-commands.ts'
import { casesOf, currentName } from '../../../workbook/cases.ts'
import { MAX_CASE_NAME } from '../../../workbook/limits.ts'
import { useSession } from '../../state/session.ts'
import { make } from './case-actions.ts'

/** Asks for the name of a new case, and what it begins with. */
export function NewCase(props: { readonly onEnd: () => void }): JSX.Element {
  const session = useSession()
  const workbook = session.document.workbook
  const current = () => casesOf(workbook()).current
  const [name, setName] = createSignal(freeName(workbook(), 'Case'))
  const [fromCurrent, setFromCurrent] = createSignal(true)
  return (
    <form class="case-new" onSubmit={(event) => {
      event.preventDefault()
      if (make(session, name().trim(), fromCurrent() ? current() : null)) props.onEnd()
    }} onKeyDown={(event) => {
      if (event.key !== 'Escape') return
      event.preventDefault()
      props.onEnd()
    }}>
      <label>Name<input value={name()} maxLength={MAX_CASE_NAME} autocomplete="off" ref={(element) => queueMicrotask(() => {
        element.focus()
        element.select()
      })} onInput={({ currentTarget }) => setName(currentTarget.value)} /></label>
      <Show when={current() !== null}>
        <fieldset>
          <legend>It begins with</legend>
          <label><input type="radio" name="case-from" checked={fromCurrent()} onChange={() => setFromCurrent(true)} />the current inputs ({currentName(workbook())})</label>
          <label><input type="radio" name="case-from" checked={!fromCurrent()} onChange={() => setFromCurrent(false)} />the base</label>
        </fieldset>
      </Show>
      <p class="cases-hint">It is current then: inputs that you change belong to it, and the base keeps its own.</p>
      <div class="cases-verbs">
        <button type="submit" class="main-button">Make the case</button>
        <button type="button" class="plain-button" onClick={() => props.onEnd()}>Cancel</button>
      </div>
    </form>
  )
}
