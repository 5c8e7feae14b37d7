import { createSignal, createUniqueId, onMount, type JSX } from 'solid-js'
import { MAX_REVIEWER, MAX_TEXT } from '../../../workbook/limits.ts'
import { rememberReviewer, reviewerName } from '../../review/reviewer.ts'
import { useSession } from '../../state/session.ts'

interface Props {
  /** What is done, for those who hear it: "Accept Duty!C5". */
  readonly label: string
  /** The two buttons: "Accept", "Leave it open". */
  readonly verb: string
  readonly leave: string
  readonly noteLabel: string
  /** What is missing while there is no note; undefined where it may be left out. */
  readonly noteNeeded?: string
  /** Gives false where it is not accepted: the form stays. */
  readonly onDo: (by: string, note: string) => boolean
  /** Done or left. */
  readonly onEnd: () => void
}

/** Who does something to the review, and why; the name is remembered. */
export function ReviewerForm(props: Props): JSX.Element {
  const session = useSession()
  const hint = createUniqueId()
  const [by, setBy] = createSignal(reviewerName(session))
  const [note, setNote] = createSignal('')
  let noteField: HTMLTextAreaElement | undefined
  let nameField: HTMLInputElement | undefined
  const focusMissing = () => (by().trim() === '' ? nameField : noteField)?.focus()
  onMount(focusMissing)
  const missing = () => {
    const both = [by().trim() === '' ? 'your name' : [], note().trim() === '' ? (props.noteNeeded ?? []) : []].flat()
    return both.length === 0 ? undefined : `Still needed: ${both.join(' and ')}.`
  }
  return (
    <form class="reviewer-form" aria-label={props.label} onSubmit={(event) => {
      event.preventDefault()
      if (missing() !== undefined) return focusMissing()
      rememberReviewer(by().trim())
      if (props.onDo(by().trim(), note().trim())) props.onEnd()
    }} onKeyDown={(event) => {
      if (event.key !== 'Escape') return
      event.preventDefault()
      event.stopPropagation()
      props.onEnd()
    }}>
      <label>Name<input ref={(element) => (nameField = element)} type="text" autocomplete="off" maxLength={MAX_REVIEWER} value={by()} onInput={({ currentTarget }) => setBy(currentTarget.value)} /></label>
      <label>{props.noteLabel}<textarea ref={(element) => (noteField = element)} rows={3} maxLength={MAX_TEXT} value={note()} onInput={({ currentTarget }) => setNote(currentTarget.value)} /></label>
      <div class="review-verbs">
        <button type="submit" class="main-button" aria-disabled={missing() !== undefined} aria-describedby={hint}>{props.verb}</button>
        <button type="button" class="plain-button" onClick={() => props.onEnd()}>{props.leave}</button>
      </div>
      <p id={hint} class="review-hint">{missing() ?? 'It goes into the record of the workbook, with the time.'}</p>
    </form>
  )
}
