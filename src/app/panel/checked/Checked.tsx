import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { counted } from '../../parts/counted.ts'
import { checkMarksOf } from '../../review/check-marks.ts'
import { pageOf } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { Pages } from '../review/Pages.tsx'
import { MarkItem } from './MarkItem.tsx'
import { NewMark } from './NewMark.tsx'
import { RecordPart } from './RecordPart.tsx'
import '../review/review.css'
import './Checked.css'

/** What reviewers have checked: to mark what is selected, what has become of marks since, and the record of all that. */
export function Checked(): JSX.Element {
  const session = useSession()
  return <Show when={session.opened()} keyed>{(_times) => <Panel />}</Show>
}

function Panel(): JSX.Element {
  const session = useSession()
  const { states } = checkMarksOf(session)
  const [page, setPage] = createSignal(0)
  const [staleOnly, setStaleOnly] = createSignal(false)
  let heading: HTMLHeadingElement | undefined
  const stale = () => states().filter(({ isGood }) => !isGood).length
  const listed = createMemo(() => {
    const order = new Map(session.document.workbook().sheets.map(({ name }, index) => [name, index]))
    const rank = (sheet: string) => order.get(sheet) ?? order.size
    return states().filter(({ isGood }) => !isGood || !(staleOnly() && stale() > 0)).toSorted(({ mark: one }, { mark: other }) =>
      rank(one.sheet) - rank(other.sheet) || (one.area?.top ?? -1) - (other.area?.top ?? -1) || (one.area?.left ?? -1) - (other.area?.left ?? -1) || Number(one.id) - Number(other.id))
  })
  const shown = () => pageOf(listed(), page())
  const ids = createMemo(() => shown().items.map(({ mark }) => mark.id), [], { equals: (one, other) => one.join() === other.join() })
  const byId = (id: string) => states().find(({ mark }) => mark.id === id)
  const outcome = () => {
    if (states().length === 0) return 'Nothing is marked as checked yet.'
    return `${counted(states().length, 'mark')}${stale() === 0 ? ', all good' : stale() === states().length ? ', all stale' : `: ${states().length - stale()} good, ${stale()} stale`}.`
  }

  return (
    <div class="review-panel checked-panel">
      <h2 ref={(element) => (heading = element)} tabindex={-1}>Checked</h2>
      <p role="status">{outcome()}</p>
      <NewMark />
      <Show when={states().length > 0}>
        <section>
          <div class="check-list-head">
            <h3>Marks</h3>
            <Show when={stale() > 0}><label><input type="checkbox" checked={staleOnly()} onChange={({ currentTarget }) => setStaleOnly(currentTarget.checked)} />stale ones only</label></Show>
          </div>
          <ul class="review-list" aria-label="Marks">
            <For each={ids()}>{(id) => <Show when={byId(id)}>{(state) => <MarkItem state={state()} focusList={() => heading?.focus()} />}</Show>}</For>
          </ul>
          <Pages of="marks" page={shown()} setPage={setPage} />
          <p class="review-hint check-legend">
            <span class="check-legend-line"><i class="checked-line good" aria-hidden="true" />In the grid: a double line at the left edge of cells that are checked,</span>
            <span class="check-legend-line"><i class="checked-line stale" aria-hidden="true" />a broken one where the mark is stale.</span>
          </p>
        </section>
      </Show>
      <RecordPart />
    </div>
  )
}
