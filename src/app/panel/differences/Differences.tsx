import { For, Show, type JSX } from 'solid-js'
import { kindCounts } from '../../../review/differences/counts.ts'
import { DIFFERENCES_FILE } from '../../files/file-access.ts'
import { saveMade } from '../../files/file-actions.ts'
import { counted } from '../../parts/counted.ts'
import { pageOf } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { FollowingState } from '../review/FollowingState.tsx'
import { Pages } from '../review/Pages.tsx'
import { walkInPanel } from '../review/walk-in-panel.ts'
import { WalkBar } from '../review/WalkBar.tsx'
import { BeforeChoice } from './BeforeChoice.tsx'
import { DifferenceItem } from './DifferenceItem.tsx'
import { createDifferencesState, keyOf, type Compared, type DifferencesState, type Part } from './differences-state.ts'
import { Effects } from './Effects.tsx'
import '../review/review.css'
import './Differences.css'

/** How the open workbook differs from another one: compared while the panel is open, and again after each change. */
export function DifferencesPanel(): JSX.Element {
  const session = useSession()
  return <Show when={session.opened()} keyed>{(_times) => <Panel />}</Show>
}

function Panel(): JSX.Element {
  const session = useSession()
  const state = keptState(session, 'Differences', createDifferencesState)
  const walking = walkInPanel(state, state.compared)

  return (
    <div {...walking.panel} class="review-panel differences-panel">
      <h2 tabindex={-1}>Differences</h2>
      <BeforeChoice state={state} />
      <Show when={state.choice() !== 'file' || state.file()} fallback={<p class="panel-empty">Choose a workbook file, or a spreadsheet file that Lowside exported.</p>}>
        <FollowingState following={state.following} doing="Comparing" doingAgain="comparing again" again="Compare again" outcome={outcomeOf(state.compared(), state.parts())} isOld={state.isOld()} />
      </Show>
      <Show when={state.compared()}>
        {(compared) => (
          <>
            <Effects state={state} compared={compared()} save={() => void saveMade(session, DIFFERENCES_FILE, 'Writing the report of differences', 'Saved the report of differences', () => state.report(new Date()))} />
            <Show when={compared().differences.length > 0}>
              <div onKeyDown={walking.onKeyDown}>
                <WalkBar what="difference" at={state.at()} count={state.walk().length} goTo={walking.walkTo} />
                <For each={state.parts().map(({ name }) => name)}>{(name) => <PartList state={state} part={state.parts().find((one) => one.name === name)} />}</For>
              </div>
            </Show>
          </>
        )}
      </Show>
    </div>
  )
}

function outcomeOf(compared: Compared | undefined, parts: readonly Part[]): string | undefined {
  if (!compared) return undefined
  const sheets = parts.filter(({ sheet }) => sheet !== undefined).length
  if (compared.differences.length === 0) return `No difference from ${compared.words}`
  return `${counted(compared.differences.length, 'difference')} from ${compared.words}${sheets === 0 ? '' : `, on ${counted(sheets, 'sheet')}`}`
}

function PartList(props: { readonly state: DifferencesState; readonly part: Part | undefined }): JSX.Element {
  const session = useSession()
  const key = () => props.part?.sheet ?? ''
  const all = () => props.part?.differences ?? []
  const page = () => pageOf(all(), props.state.page(key()))
  const name = () => props.part?.name ?? ''
  const canTake = () => !props.state.isOld() && all().some(({ accept }) => 'words' in accept)
  return (
    <details class="difference-part" open={!props.state.isClosed(key())} onToggle={({ currentTarget }) => props.state.setClosed(key(), !currentTarget.open)}>
      <summary><h3>{name()}</h3> <span class="review-count">{all().length}: {kindWords(all())}</span></summary>
      <ul class="review-list" aria-label={`Differences: ${name()}`}>
        <For each={page().items.map(keyOf)}>
          {(one) => <Show when={page().items.find((item) => keyOf(item) === one)}>{(difference) => <DifferenceItem difference={difference()} state={props.state} />}</Show>}
        </For>
      </ul>
      <Pages of={name()} page={page()} setPage={(to) => props.state.setPage(key(), to)} />
      <Show when={all().length > 1}>
        <div class="review-verbs">
          <button type="button" class="plain-button" aria-disabled={!canTake()} onClick={() => canTake() && session.settle() && void props.state.takeBack(all(), `Take back all ${all().length} of ${name()}`)}>Take all {all().length} back</button>
        </div>
      </Show>
    </details>
  )
}

/** "input (3), rows inserted" */
const kindWords = (differences: Part['differences']): string => kindCounts(differences).map(({ kind, count }) => (count === 1 ? kind : `${kind} (${count})`)).join(', ')
