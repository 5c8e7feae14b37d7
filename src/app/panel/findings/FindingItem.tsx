import { createSignal, For, Show, type JSX } from 'solid-js'
import type { Finding } from '../../../review/finding.ts'
import { findingPlace } from '../../../review/finding-words.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import { sheetByName } from '../../../workbook/document.ts'
import { labelInRow } from '../../../workbook/words-beside.ts'
import { goToArea } from '../../review/go-to-area.ts'
import { useSession } from '../../state/session.ts'
import { ReviewerForm } from '../review/ReviewerForm.tsx'
import { accept, mend } from './finding-actions.ts'
import type { FindingsState, Listed } from './findings-state.ts'
import { SeverityMark } from './SeverityMark.tsx'

/** One finding: where and why; the current one also with its causes and with what can be done about it. */
export function FindingItem(props: { readonly listed: Listed; readonly state: FindingsState }): JSX.Element {
  const isCurrent = () => props.state.current() === props.listed.id
  const finding = () => props.listed.finding
  return (
    <li class="review-item" classList={{ current: isCurrent() }} data-walked={props.listed.id}>
      <button type="button" class="review-go" aria-current={isCurrent()} onClick={() => props.state.goTo(props.listed)}>
        <SeverityMark severity={finding().severity} />
        <span class="review-word">{finding().severity}</span> <span class="review-place">{findingPlace(finding())}</span> <span class="review-label">{finding().label}</span>
      </button>
      <p class="finding-reason">{finding().reason}</p>
      <Show when={isCurrent()}><Doing finding={finding()} state={props.state} /></Show>
    </li>
  )
}

/** More would be no list to go through. */
const MOST_CAUSES = 12

function Doing(props: { readonly finding: Finding; readonly state: FindingsState }): JSX.Element {
  const session = useSession()
  const [accepting, setAccepting] = createSignal(false)
  let button: HTMLButtonElement | undefined
  const causes = () => props.finding.causes ?? []
  return (
    <div class="review-doing">
      <Show when={causes().length > 0}>
        <ul class="finding-causes" aria-label="Cells that have to do with it">
          <For each={causes().slice(0, MOST_CAUSES)}>{(cause) => <li><Cause place={cause} /></li>}</For>
        </ul>
        <Show when={causes().length > MOST_CAUSES}><p class="review-hint">and {causes().length - MOST_CAUSES} more</p></Show>
      </Show>
      <Show when={!accepting()} fallback={
        <ReviewerForm
          label={`Accept ${findingPlace(props.finding)}`} verb="Accept" leave="Leave it open"
          noteLabel="Note: why it may stand" noteNeeded="a note that says why it may stand"
          onDo={(by, note) => accept(session, props.finding, by, note)}
          onEnd={() => {
            setAccepting(false)
            button?.focus()
          }}
        />
      }>
        <div class="review-verbs">
          <Show when={props.finding.mend}>
            {(way) => <button type="button" class="plain-button" aria-disabled={props.state.store.isOld()} onClick={() => props.state.store.isOld() || mend(session, props.finding, way())}>{way().words}</button>}
          </Show>
          <button ref={(element) => (button = element)} type="button" class="plain-button" aria-disabled={props.state.store.isOld()} onClick={() => props.state.store.isOld() || setAccepting(true)}>Accept with a note…</button>
        </div>
      </Show>
    </div>
  )
}

function Cause(props: { readonly place: CellPlace }): JSX.Element {
  const session = useSession()
  const label = () => {
    const sheet = sheetByName(session.document.workbook(), props.place.sheet)
    return sheet && labelInRow(sheet, props.place)
  }
  const { row, column } = props.place
  return (
    <button type="button" onClick={() => goToArea(session, props.place.sheet, { top: row, bottom: row, left: column, right: column })}>
      <span class="review-place">{printCellPlace(props.place)}</span> <span class="review-label">{label()}</span>
    </button>
  )
}
