import { createEffect, For, on, onCleanup, onMount, Show, type JSX } from 'solid-js'
import { countWords, SEVERITIES } from '../../../review/finding-words.ts'
import { pageOf, walkedTo } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { FollowingState } from '../review/FollowingState.tsx'
import { Pages } from '../review/Pages.tsx'
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
  onMount(() => state.following.setLookedAt(true))
  onCleanup(() => state.following.setLookedAt(false))
  let panel: HTMLDivElement | undefined
  /** Whether the focus was in here when last seen: what has it may be gone from the list by then. */
  let hasFocus = false
  const focusCurrent = () => {
    const current = state.current()
    const place = current === undefined ? undefined : panel?.querySelector<HTMLElement>(`[data-finding="${CSS.escape(current)}"] .finding-go`)
    const to = place ?? panel?.querySelector<HTMLElement>('h2')
    to?.focus()
    place?.scrollIntoView({ block: 'nearest' })
  }
  const walkTo = (at: number) => {
    const to = state.walk()[at]
    if (to) state.goTo(to)
  }
  createEffect(on(state.store.found, () => queueMicrotask(() => {
    if (hasFocus && document.activeElement === document.body) focusCurrent()
  }), { defer: true }))

  const outcome = () => {
    const found = state.store.found()
    if (!found) return undefined
    const open = countWords(found.findings.filter(({ accepted }) => accepted === undefined))
    const accepted = state.accepted().length
    return `${open === '' ? 'Nothing is open' : `Open: ${open}`}${accepted === 0 ? '' : `; ${accepted} accepted`}`
  }

  return (
    <div ref={(element) => (panel = element)} class="review-panel findings-panel" onFocusIn={() => (hasFocus = true)} onFocusOut={({ relatedTarget }) => {
      if (relatedTarget instanceof Node && !panel?.contains(relatedTarget)) hasFocus = false
    }}>
      <h2 tabindex={-1}>Findings</h2>
      <FollowingState following={state.following} doing="Looking for findings" doingAgain="looking again" again="Look again" outcome={outcome()} isOld={state.store.isOld()} />
      <Show when={state.store.found()}>
        {(found) => (
          <>
            <Show when={found().findings.some(({ accepted }) => accepted === undefined)}>
              <Filters state={state} />
              <div onKeyDown={(event) => {
                const to = walkedTo(event.key, state.at(), state.walk().length)
                if (to === undefined || !isWalkable(event.target)) return
                event.preventDefault()
                walkTo(to)
                queueMicrotask(focusCurrent)
              }}>
                <WalkBar what="finding" at={state.at()} count={state.walk().length} goTo={walkTo} />
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

/** Fields keep their keys. */
const isWalkable = (target: EventTarget | null): boolean => target instanceof Element && target.closest('input, textarea, select, summary') === null

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
