import { createSignal, createUniqueId, For, onMount, Show, type JSX } from 'solid-js'
import { MAX_REVIEWER, MAX_TEXT } from '../../../workbook/limits.ts'
import { CHECK_METHODS, type CheckMethod } from '../../../workbook/review-record.ts'
import type { Said } from '../../review/checking.ts'
import { rememberReviewer, reviewerName } from '../../review/reviewer.ts'
import { useSession } from '../../state/session.ts'

interface Props {
  /** What is done, for those who hear it: "Check Duty!C5 again". */
  readonly label: string
  readonly verb: string
  /** Shown before the fields. */
  readonly children?: JSX.Element
  /** What there is to say beside the button. */
  readonly hint: string
  /** How it was checked before. */
  readonly method?: CheckMethod
  /** Gives false where it is not accepted: what was said stays. */
  readonly onDo: (said: Said) => Promise<boolean>
  /** Done, or left where that can be. */
  readonly onEnd: (isDone: boolean) => void
  readonly leave?: string
  /** Gets what puts the focus on the first thing to say. */
  readonly focus?: (take: () => void) => void
}

/** Who checks, how, and what is to be said of it; the name is remembered. */
export function CheckForm(props: Props): JSX.Element {
  const session = useSession()
  const hint = createUniqueId()
  const group = createUniqueId()
  const [by, setBy] = createSignal(reviewerName(session))
  const [method, setMethod] = createSignal<CheckMethod>(props.method ?? 'by hand')
  const [note, setNote] = createSignal('')
  const [busy, setBusy] = createSignal(false)
  let nameField: HTMLInputElement | undefined
  let noteField: HTMLTextAreaElement | undefined
  const focusFirst = () => (by().trim() === '' ? nameField : noteField)?.focus()
  onMount(() => {
    props.focus?.(focusFirst)
    if (props.leave !== undefined) focusFirst()
  })
  const missing = () => by().trim() === ''

  async function submit(): Promise<void> {
    if (busy()) return
    if (missing()) return focusFirst()
    rememberReviewer(by().trim())
    setBusy(true)
    const isDone = await props.onDo({ by: by().trim(), method: method(), note: note().trim() })
    setBusy(false)
    if (!isDone) return
    setNote('')
    props.onEnd(true)
  }

  return (
    <form class="reviewer-form check-form" aria-label={props.label} onSubmit={(event) => {
      event.preventDefault()
      void submit()
    }} onKeyDown={(event) => {
      if (event.key !== 'Escape' || props.leave === undefined) return
      event.preventDefault()
      event.stopPropagation()
      props.onEnd(false)
    }}>
      {props.children}
      <label>Name<input ref={(element) => (nameField = element)} type="text" autocomplete="off" maxLength={MAX_REVIEWER} value={by()} onInput={({ currentTarget }) => setBy(currentTarget.value)} /></label>
      <fieldset>
        <legend>How it was checked</legend>
        <For each={CHECK_METHODS}>{(one) => <label><input type="radio" name={group} checked={method() === one} onChange={() => setMethod(one)} />{one}</label>}</For>
      </fieldset>
      <label>Note (may be left out)<textarea ref={(element) => (noteField = element)} rows={2} maxLength={MAX_TEXT} value={note()} onInput={({ currentTarget }) => setNote(currentTarget.value)} /></label>
      <div class="review-verbs">
        <button type="submit" class="main-button" aria-disabled={missing() || busy()} aria-describedby={hint}>{props.verb}</button>
        <Show when={props.leave}>{(words) => <button type="button" class="plain-button" onClick={() => props.onEnd(false)}>{words()}</button>}</Show>
      </div>
      <p id={hint} class="review-hint">{missing() ? 'Still needed: your name.' : props.hint}</p>
    </form>
  )
}
