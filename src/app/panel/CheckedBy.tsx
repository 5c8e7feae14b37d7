import { For, Show, type JSX } from 'solid-js'
import { reviewPlace } from '../../workbook/review/review-words.ts'
import type { MarkState } from '../../workbook/review/mark-states.ts'
import { checkMarksOf } from '../review/check-marks.ts'
import { useSession } from '../state/session.ts'

/** Who has checked the active cell, or what it feeds, when and how. */
export function CheckedBy(): JSX.Element {
  const session = useSession()
  const marks = checkMarksOf(session)
  const at = session.selection.active
  const own = () => marks.at(at().row, at().column)
  const over = () => marks.over(at().row, at().column)
  return (
    <Show when={own().length + over().length > 0}>
      <section class="checked-by">
        <h3>Checked</h3>
        <For each={own()}>{(state) => <p>Checked by {whoWords(state)}{state.isGood ? '.' : '; it has changed since, the mark is stale.'}</p>}</For>
        <For each={over().slice(0, MOST)}>{(state) => <p>It feeds {reviewPlace(state.mark)}, checked by {whoWords(state)}{state.isGood ? '.' : '; that mark is stale.'}</p>}</For>
        <Show when={over().length > MOST}><p>and {over().length - MOST} more marks</p></Show>
        <button type="button" class="plain-button" onClick={() => session.setPanel('Checked')}>All marks</button>
      </section>
    </Show>
  )
}

/** More would bury the cell that one asks about. */
const MOST = 4

const whoWords = ({ mark: { by, at, method, note } }: MarkState): string => `${by} on ${at.slice(0, 10)}, ${method}${note === '' ? '' : ` (“${note}”)`}`
