import { createSignal, Show, type JSX } from 'solid-js'
import { useSession } from '../../state/session.ts'
import { ReviewerForm } from '../review/ReviewerForm.tsx'
import { acceptAll } from './finding-actions.ts'
import type { FindingsState, Group } from './findings-state.ts'

/** So many can have been looked at; of more, one note for all would say nothing. */
const MOST = 100

/** Lets all findings of a kind stand that are shown, for one reason. */
export function AcceptAll(props: { readonly state: FindingsState; readonly group: Group | undefined }): JSX.Element {
  const session = useSession()
  const [accepting, setAccepting] = createSignal(false)
  let button: HTMLButtonElement | undefined
  const listed = () => props.group?.listed ?? []
  return (
    <Show when={listed().length > 1 && listed().length <= MOST}>
      <div class="review-doing">
        <Show when={!accepting()} fallback={
          <ReviewerForm
            label={`Accept all ${listed().length}: ${props.group?.heading ?? ''}`} verb={`Accept all ${listed().length}`} leave="Leave them open"
            noteLabel="Note: why all of these may stand" noteNeeded="a note that says why they may stand"
            onDo={(by, note) => acceptAll(session, listed().map(({ finding }) => finding), by, note)}
            onEnd={() => {
              setAccepting(false)
              button?.focus()
            }}
          />
        }>
          <div class="review-verbs">
            <button ref={(element) => (button = element)} type="button" class="plain-button" aria-disabled={props.state.store.isOld()} onClick={() => props.state.store.isOld() || setAccepting(true)}>Accept all {listed().length} with a note…</button>
          </div>
        </Show>
      </div>
    </Show>
  )
}
