import { batch, createEffect, createMemo, createSignal, on, onCleanup, type Accessor } from 'solid-js'
import type { Finding, Severity } from '../../../review/finding.ts'
import { SEVERITIES } from '../../../review/finding-words.ts'
import type { LookedFor } from '../../../review/messages.ts'
import { createFollowing, type Following } from '../../review/following.ts'
import { findingsOf, type FindingsStore } from '../../review/findings-store.ts'
import { goToArea } from '../../review/go-to-area.ts'
import { createReviewThread } from '../../review/review-thread.ts'
import { PAGE } from '../../review/walking.ts'
import type { Session } from '../../state/session.ts'

/** A finding as it stands in the list. */
export interface Listed {
  /** Stays the same for as long as the finding does. */
  readonly id: string
  readonly finding: Finding
}

/** The findings of one kind that are shown. */
export interface Group extends LookedFor {
  readonly listed: readonly Listed[]
}

export interface FindingsState {
  readonly store: FindingsStore
  readonly following: Following
  /** What is shown with the filters as they are, those accepted left out. */
  readonly groups: Accessor<readonly Group[]>
  readonly accepted: Accessor<readonly Listed[]>
  /** The same as the groups, in one list to walk through. */
  readonly walk: Accessor<readonly Listed[]>
  byId(id: string): Finding | undefined
  readonly hidden: Accessor<ReadonlySet<Severity>>
  toggle(severity: Severity): void
  /** The sheet whose findings are shown; undefined for those of all. */
  readonly sheet: Accessor<string | undefined>
  setSheet(sheet: string | undefined): void
  /** How many are open of each severity, on the sheets shown. */
  count(severity: Severity): number
  /** Sheets with open findings, in the order of the workbook. */
  readonly sheets: Accessor<readonly { readonly name: string; readonly count: number }[]>
  readonly current: Accessor<string | undefined>
  /** The position of the current one in the walk; −1 where it is not among them. */
  readonly at: Accessor<number>
  /** Makes one the current one, its part of the list shown, and goes to its cells. */
  goTo(listed: Listed): void
  page(kind: string): number
  setPage(kind: string, page: number): void
  isClosed(kind: string): boolean
  setClosed(kind: string, isClosed: boolean): void
}

export function createFindingsState(session: Session): FindingsState {
  const store = findingsOf(session)
  const thread = createReviewThread(session)
  onCleanup(thread.end)
  const following = createFollowing(session, (workbook) => {
    const findings: Finding[] = []
    return thread.ask('Looking for findings', { kind: 'findings' }, (news) => {
      if (news.kind === 'findings part') findings.push(...news.findings)
      else if (news.kind === 'found') store.setFound({ findings, lookedFor: news.lookedFor, template: news.template, of: workbook })
      else if (news.kind === 'share') following.setShare(news.share)
      return news.kind === 'share' ? news.share : undefined
    })
  })

  const [hidden, setHidden] = createSignal<ReadonlySet<Severity>>(new Set())
  const [wantedSheet, setSheet] = createSignal<string | undefined>(undefined)
  const [current, setCurrent] = createSignal<string | undefined>(undefined)
  const [pages, setPages] = createSignal<ReadonlyMap<string, number>>(new Map())
  const [closed, setClosed] = createSignal<ReadonlySet<string>>(new Set())

  const all = createMemo(() => withIds(store.found()?.findings ?? []))
  const known = createMemo(() => new Map(all().map(({ id, finding }) => [id, finding] as const)))
  const open = createMemo(() => all().filter(({ finding }) => finding.accepted === undefined))
  const sheets = createMemo(() => {
    const counts = new Map<string, number>()
    for (const { finding } of open()) counts.set(finding.sheet, (counts.get(finding.sheet) ?? 0) + 1)
    return [...counts].map(([name, count]) => ({ name, count }))
  })
  // A sheet that has none any more would leave an empty list and no choice that says why.
  const sheet = createMemo(() => (sheets().some(({ name }) => name === wantedSheet()) ? wantedSheet() : undefined))
  const onSheets = createMemo(() => open().filter(({ finding }) => sheet() === undefined || finding.sheet === sheet()))
  const counts = createMemo(() => new Map(SEVERITIES.map((severity) => [severity, onSheets().filter(({ finding }) => finding.severity === severity).length] as const)))
  const groups = createMemo((): readonly Group[] => {
    const shown = new Map<string, Listed[]>()
    for (const one of onSheets()) {
      if (hidden().has(one.finding.severity)) continue
      const same = shown.get(one.finding.kind)
      if (same) same.push(one)
      else shown.set(one.finding.kind, [one])
    }
    return (store.found()?.lookedFor ?? []).flatMap((kind) => {
      const listed = shown.get(kind.kind)
      return listed === undefined ? [] : [{ ...kind, listed }]
    })
  })
  const walk = createMemo(() => groups().flatMap(({ listed }) => listed))
  const at = createMemo(() => walk().findIndex(({ id }) => id === current()))

  // What was mended or accepted is gone: the one that stands in its place is the current one then.
  createEffect(on([walk, at], ([listed, index], before) => {
    const [, was] = before ?? [[], -1]
    if (index === -1 && was !== -1 && current() !== undefined) setCurrent(listed[Math.min(was, listed.length - 1)]?.id)
  }))

  return {
    store, following, groups, walk, hidden, sheet, setSheet: (name) => void setSheet(name), sheets, current, at,
    accepted: createMemo(() => all().filter(({ finding }) => finding.accepted !== undefined)),
    byId: (id) => known().get(id),
    toggle: (severity) => void setHidden((before) => toggled(before, severity)),
    count: (severity) => counts().get(severity) ?? 0,
    goTo({ id, finding }) {
      const group = groups().find(({ kind }) => kind === finding.kind)
      const index = group?.listed.findIndex((one) => one.id === id) ?? -1
      batch(() => {
        setCurrent(id)
        if (index >= 0) setPages((before) => new Map(before).set(finding.kind, Math.floor(index / PAGE)))
        setClosed((before) => new Set([...before].filter((kind) => kind !== finding.kind)))
        goToArea(session, finding.sheet, finding.area)
      })
    },
    page: (kind) => pages().get(kind) ?? 0,
    setPage: (kind, page) => void setPages((before) => new Map(before).set(kind, page)),
    isClosed: (kind) => closed().has(kind),
    setClosed: (kind, isClosed) => void setClosed((before) => (before.has(kind) === isClosed ? before : toggled(before, kind))),
  }
}

function toggled<T>(before: ReadonlySet<T>, one: T): ReadonlySet<T> {
  const after = new Set(before)
  if (!after.delete(one)) after.add(one)
  return after
}

/** Two alike are told apart by their order. */
function withIds(findings: readonly Finding[]): readonly Listed[] {
  const seen = new Map<string, number>()
  return findings.map((finding) => {
    const { kind, sheet, area: { top, left, bottom, right }, key } = finding
    const id = [kind, sheet, top, left, bottom, right, key].join('|')
    const times = seen.get(id) ?? 0
    seen.set(id, times + 1)
    return { id: times === 0 ? id : `${id}|${times}`, finding }
  })
}
