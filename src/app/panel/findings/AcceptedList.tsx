import { createSignal, For, Show, type JSX } from 'solid-js'
import type { Finding } from '../../../review/finding.ts'
import { findingPlace } from '../../../review/finding-words.ts'
import { goToArea } from '../../review/go-to-area.ts'
import { pageOf } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { Pages } from '../review/Pages.tsx'
import { ReviewerForm } from '../review/ReviewerForm.tsx'
import { openAgain } from './finding-actions.ts'
import type { FindingsState } from './findings-state.ts'

/** What someone has looked at and let stand: with the note, who and when. */
export function AcceptedList(props: { readonly state: FindingsState }): JSX.Element {
  const session = useSession()
  const [page, setPage] = createSignal(0)
  const shown = () => pageOf(props.state.accepted(), page())
  return (
    <Show when={props.state.accepted().length > 0}>
      <details class="findings-accepted">
        <summary><h3>Accepted</h3> <span class="review-count">{props.state.accepted().length}</span></summary>
        <ul class="review-list" aria-label="Accepted findings">
          <For each={shown().items}>
            {({ finding }) => (
              <li class="finding">
                <button type="button" class="finding-go" onClick={() => goToArea(session, finding.sheet, finding.area)}>
                  <span class="finding-severity">{finding.severity}</span> <span class="finding-place">{findingPlace(finding)}</span> <span class="finding-label">{finding.label}</span>
                </button>
                <p class="finding-reason">{finding.reason}</p>
                <p class="finding-note">{finding.accepted?.note}<small>{acceptedWords(finding.accepted)}</small></p>
                <OpenAgain finding={finding} state={props.state} />
              </li>
            )}
          </For>
        </ul>
        <Pages of="accepted" page={shown()} setPage={setPage} />
      </details>
    </Show>
  )
}

function OpenAgain(props: { readonly finding: Finding; readonly state: FindingsState }): JSX.Element {
  const session = useSession()
  const [opening, setOpening] = createSignal(false)
  let button: HTMLButtonElement | undefined
  return (
    <div class="finding-doing">
      <Show when={!opening()} fallback={
        <ReviewerForm
          label={`Open ${findingPlace(props.finding)} again`} verb="Open again" leave="Leave it accepted" noteLabel="Why, for the record (may be left out)"
          onDo={(by, why) => openAgain(session, props.finding, by, why)}
          onEnd={() => {
            setOpening(false)
            button?.focus()
          }}
        />
      }>
        <div class="review-verbs">
          <button ref={(element) => (button = element)} type="button" class="plain-button" aria-disabled={props.state.store.isOld()} onClick={() => props.state.store.isOld() || setOpening(true)}>Open again…</button>
        </div>
      </Show>
    </div>
  )
}

/** `J. Weir, 2026-11-27`; what came accepted has neither name nor day. */
function acceptedWords(accepted: { readonly by?: string; readonly at?: string } | undefined): string {
  return accepted?.by === undefined ? 'came accepted with the template' : [accepted.by, accepted.at?.slice(0, 10)].filter(Boolean).join(', ')
}
