import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { findingPlace } from '../../../review/finding-words.ts'
import type { AcceptedFinding } from '../../../workbook/review-record.ts'
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
  const gone = createMemo(() => acceptedOfNothing(props.state))
  return (
    <Show when={props.state.accepted().length + gone().length > 0}>
      <details class="findings-accepted">
        <summary><h3>Accepted</h3> <span class="review-count">{props.state.accepted().length}</span></summary>
        <ul class="review-list" aria-label="Accepted findings">
          <For each={shown().items}>
            {({ finding }) => (
              <li class="review-item">
                <button type="button" class="review-go" onClick={() => goToArea(session, finding.sheet, finding.area)}>
                  <span class="review-word">{finding.severity}</span> <span class="review-place">{findingPlace(finding)}</span> <span class="review-label">{finding.label}</span>
                </button>
                <p class="finding-reason">{finding.reason}</p>
                <Show when={finding.accepted}>{(accepted) => <Acceptance accepted={accepted()} state={props.state} verb="Open again" leave="Leave it accepted" />}</Show>
              </li>
            )}
          </For>
        </ul>
        <Pages of="accepted" page={shown()} setPage={setPage} />
        <Show when={gone().length > 0}>
          <h4>Accepted before, and not found any more</h4>
          <ul class="review-list" aria-label="Accepted before, and not found any more">
            <For each={gone()}>
              {(accepted) => (
                <li class="review-item">
                  <button type="button" class="review-go" onClick={() => goToArea(session, accepted.sheet, accepted.area)}>
                    <span class="review-place">{findingPlace(accepted)}</span> <span class="review-label">{headingOf(props.state, accepted.kind)}</span>
                  </button>
                  <Acceptance accepted={accepted} state={props.state} verb="Withdraw it" leave="Leave it" />
                </li>
              )}
            </For>
          </ul>
        </Show>
      </details>
    </Show>
  )
}

function Acceptance(props: { readonly accepted: AcceptedFinding; readonly state: FindingsState; readonly verb: string; readonly leave: string }): JSX.Element {
  const session = useSession()
  const [opening, setOpening] = createSignal(false)
  let button: HTMLButtonElement | undefined
  return (
    <>
      <p class="review-note">{props.accepted.note}<small>{acceptedWords(props.accepted)}</small></p>
      <div class="review-doing">
        <Show when={!opening()} fallback={
          <ReviewerForm
            label={`${props.verb}: ${findingPlace(props.accepted)}`} verb={props.verb} leave={props.leave} noteLabel="Why, for the record (may be left out)"
            onDo={(by, why) => openAgain(session, props.accepted, by, why)}
            onEnd={() => {
              setOpening(false)
              button?.focus()
            }}
          />
        }>
          <div class="review-verbs">
            <button ref={(element) => (button = element)} type="button" class="plain-button" aria-disabled={props.state.store.isOld()} onClick={() => props.state.store.isOld() || setOpening(true)}>{props.verb}…</button>
          </div>
        </Show>
      </div>
    </>
  )
}

/** What reviewers have accepted that stands for no finding now: what it was about has been mended, or has become something else. */
function acceptedOfNothing({ accepted, store }: FindingsState): readonly AcceptedFinding[] {
  const standing = new Set(accepted().map(({ finding }) => JSON.stringify(finding.accepted)))
  return (store.found()?.of.review?.accepted ?? []).filter((one) => one.by !== undefined && !standing.has(JSON.stringify(one)))
}

const headingOf = ({ store }: FindingsState, kind: string): string => store.found()?.lookedFor.find((one) => one.kind === kind)?.heading ?? kind

/** `J. Weir, 2026-11-27`; what came accepted has neither name nor day. */
const acceptedWords = ({ by, at }: AcceptedFinding): string => (by === undefined ? 'came accepted with the template' : [by, at?.slice(0, 10)].filter(Boolean).join(', '))
