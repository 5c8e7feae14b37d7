import { For, Show, type JSX } from 'solid-js'
import { countWords, SEVERITIES } from '../../../review/finding-words.ts'
import { pageOf } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { FollowingState } from '../review/FollowingState.tsx'
import { Pages } from '../review/Pages.tsx'
import { walkInPanel } from '../review/walk-in-panel.ts'
import { WalkBar } from '../review/WalkBar.tsx'
import { AcceptAll } from './AcceptAll.tsx'
import { AcceptedList } from './AcceptedList.tsx'
import { FindingItem } from './FindingItem.tsx'
import { createFindingsState, type FindingsState, type Group } from './findings-state.ts'
import { SeverityMark } from './SeverityMark.tsx'
import '../review/review.css'
import './Findings.css'

/** What there is to look at before one signs: looked for while the panel is open, and again after each change. */
export function Findings(): JSX.Element {
  const session = useSession()
  return <Show when={session.opened()} keyed>{(_times) => <Panel />}</Show>
}

function Panel(): JSX.Element {
  const state = keptState(useSession(), 'Findings', createFindingsState)
  const walking = walkInPanel(state, state.store.found)

  const outcome = () => {
    const found = state.store.found()
    if (!found) return undefined
    const open = countWords(found.findings.filter(({ accepted }) => accepted === undefined))
    const accepted = state.accepted().length
    return `${open === '' ? 'Nothing is open' : `Open: ${open}`}${accepted === 0 ? '' : `; ${accepted} accepted`}`
  }

  return (
    <div {...walking.panel} class="review-panel findings-panel">
      <h2 tabindex={-1}>Findings</h2>
      <FollowingState following={state.following} doing="Looking for findings" doingAgain="looking again" again="Look again" outcome={outcome()} isOld={state.store.isOld()} />
      <Show when={state.store.found()}>
        {(found) => (
          <>
            <Show when={found().findings.some(({ accepted }) => accepted === undefined)}>
              <Filters state={state} />
              <div onKeyDown={walking.onKeyDown}>
                <WalkBar what="finding" at={state.at()} count={state.walk().length} goTo={walking.walkTo} />
                <Show when={state.walk().length > 0} fallback={<p class="panel-empty">None of these severities.</p>}>
                  <For each={state.groups().map(({ kind }) => kind)}>{(kind) => <GroupList state={state} group={state.groups().find((one) => one.kind === kind)} />}</For>
                </Show>
              </div>
            </Show>
            <AcceptedList state={state} />
            <details class="findings-looked-for" open={found().findings.length === 0}>
              <summary>What was looked for</summary>
              <p>{found().template === undefined ? 'The workbook is like no template: what a template has in place of its cells is not known.' : `Laid beside the template “${found().template}”.`}</p>
              <dl><For each={found().lookedFor}>{({ heading, about }) => <><dt>{heading}</dt><dd>{about}</dd></>}</For></dl>
            </details>
          </>
        )}
      </Show>
    </div>
  )
}

function Filters(props: { readonly state: FindingsState }): JSX.Element {
  return (
    <div class="findings-filters">
      <div role="group" aria-label="Severities shown">
        <For each={SEVERITIES}>
          {(severity) => (
            <button type="button" class="findings-severity" aria-pressed={!props.state.hidden().has(severity)} onClick={() => props.state.toggle(severity)}>
              <SeverityMark severity={severity} />{props.state.count(severity)} {props.state.count(severity) === 1 ? severity : `${severity}s`}
            </button>
          )}
        </For>
      </div>
      <Show when={props.state.sheets().length > 1}>
        <select aria-label="Sheet whose findings are shown" onChange={({ currentTarget }) => props.state.setSheet(currentTarget.value || undefined)}>
          <option value="" selected={props.state.sheet() === undefined}>all sheets</option>
          <For each={props.state.sheets()}>{({ name, count }) => <option value={name} selected={props.state.sheet() === name}>{name} ({count})</option>}</For>
        </select>
      </Show>
    </div>
  )
}

function GroupList(props: { readonly state: FindingsState; readonly group: Group | undefined }): JSX.Element {
  const kind = () => props.group?.kind ?? ''
  const page = () => pageOf(props.group?.listed ?? [], props.state.page(kind()))
  return (
    <details class="findings-group" open={!props.state.isClosed(kind())} onToggle={({ currentTarget }) => props.state.setClosed(kind(), !currentTarget.open)}>
      <summary><h3>{props.group?.heading}</h3> <span class="review-count">{props.group?.listed.length}</span></summary>
      <details class="findings-about"><summary>Why one looks for it</summary><p>{props.group?.about}</p></details>
      <ul class="review-list" aria-label={props.group?.heading}>
        <For each={page().items.map(({ id }) => id)}>
          {(id) => <Show when={props.state.byId(id)}>{(finding) => <FindingItem listed={{ id, finding: finding() }} state={props.state} />}</Show>}
        </For>
      </ul>
      <Pages of={props.group?.heading ?? ''} page={page()} setPage={(to) => props.state.setPage(kind(), to)} />
      <AcceptAll state={props.state} group={props.group} />
    </details>
  )
}
