import { batch, createEffect, createMemo, createSignal, on, onCleanup, type Accessor } from 'solid-js'
import type { Difference, Effect } from '../../../review/differences/difference.ts'
import { printCellPlace, type CellPlace } from '../../../workbook/cell-place.ts'
import type { Workbook } from '../../../workbook/document.ts'
import { fileSource, templateSource, workbookSource, type BeforeSource } from '../../review/before-source.ts'
import { createDifferencesThread } from '../../review/differences-thread.ts'
import { createFollowing, type Following } from '../../review/following.ts'
import { goToArea } from '../../review/go-to-area.ts'
import { createReviewThread } from '../../review/review-thread.ts'
import { PAGE } from '../../review/walking.ts'
import { templates } from '../../files/library.ts'
import type { ThreadWork } from '../../state/in-sight.ts'
import { WorkStopped } from '../../state/long-work.ts'
import type { Session } from '../../state/session.ts'
import { placeTyped } from '../../whatif/cells.ts'

/** What the open workbook is compared with. */
export type Choice = 'saved' | 'template' | 'file'

export interface Compared {
  readonly differences: readonly Difference[]
  readonly effects: readonly Effect[]
  readonly resultsCompared: number
  /** The case, or the base, that the results are of in both. */
  readonly resultsOf: string
  /** What it was compared with, after "with". */
  readonly words: string
  readonly of: Workbook
}

/** The differences of a sheet, or of the workbook as a whole. */
export interface Part {
  readonly name: string
  /** Undefined of the workbook as a whole. */
  readonly sheet: string | undefined
  readonly differences: readonly Difference[]
}

export interface DifferencesState {
  readonly following: Following
  readonly choice: Accessor<Choice>
  choose(choice: Choice): void
  /** The title of the template compared with; undefined for the one that the workbook is most like. */
  readonly template: Accessor<string | undefined>
  setTemplate(title: string | undefined): void
  readonly file: Accessor<File | undefined>
  setFile(file: File): void
  readonly compared: Accessor<Compared | undefined>
  readonly isOld: Accessor<boolean>
  readonly parts: Accessor<readonly Part[]>
  /** The parts in one list to walk through. */
  readonly walk: Accessor<readonly Difference[]>
  readonly current: Accessor<string | undefined>
  readonly at: Accessor<number>
  goTo(difference: Difference): void
  page(part: string): number
  setPage(part: string, page: number): void
  isClosed(part: string): boolean
  setClosed(part: string, isClosed: boolean): void
  /** The cells whose effect is told, as addresses; where there is none, all results and checks that come to something else. */
  readonly chosen: Accessor<readonly string[]>
  addChosen(address: string): void
  removeChosen(address: string): void
  /** Lets the open workbook take the side of the other one, as one step. */
  takeBack(differences: readonly Difference[], label: string): Promise<void>
  report(date: Date): ThreadWork<string>
}

/** Stays the same while the difference does, though others come and go. */
export const keyOf = ({ kind, sheet, now, before, label, subject }: Difference): string =>
  [kind, sheet, now && printCellPlace(now), before && printCellPlace(before), label, JSON.stringify(subject)].join('|')

/** No name of a sheet: they are not empty. */
const WORKBOOK = ''

export function createDifferencesState(session: Session): DifferencesState {
  const thread = createDifferencesThread(session)
  const matching = createReviewThread(session)
  onCleanup(() => thread.end())
  onCleanup(matching.end)
  const [choice, setChoice] = createSignal<Choice>('saved')
  const [template, setTemplate] = createSignal<string | undefined>(undefined)
  const [file, setFile] = createSignal<File | undefined>(undefined)
  const [compared, setCompared] = createSignal<Compared | undefined>(undefined)
  const [chosen, setChosen] = createSignal<readonly string[]>([])
  const [current, setCurrent] = createSignal<string | undefined>(undefined)
  const [pages, setPages] = createSignal<ReadonlyMap<string, number>>(new Map())
  const [closed, setClosed] = createSignal<ReadonlySet<string>>(new Set())

  const saved = createMemo(() => {
    const { workbook, at } = session.document.asSaved()
    return workbookSource(workbook, at === undefined ? 'the workbook as it was opened' : `the workbook as it was saved at ${at.toLocaleTimeString([], { hour: '2-digit', minute: '2-digit' })}`)
  })
  const chosenTemplate = createMemo(() => {
    const own = templates.find(({ title }) => title === template())
    return own && templateSource(own)
  })
  const chosenFile = createMemo(() => {
    const given = file()
    return given && fileSource(given)
  })
  /** The template that the workbook was found to be like, read only once for it. */
  let likeliest: BeforeSource | undefined

  const following = createFollowing(session, (workbook) => {
    let running: ThreadWork<void> | undefined
    let isStopped = false
    return { result: run(), stop: () => {
      isStopped = true
      running?.stop()
    } }

    async function run(): Promise<void> {
      const source = await sourceOf()
      if (isStopped) throw new WorkStopped('It was stopped.')
      if (source === undefined) return
      const differences: Difference[] = []
      running = thread.compare(source, placesOf(chosen()), (news) => {
        if (news.kind === 'share') following.setShare(news.share)
        else if (news.kind === 'differences part') differences.push(...news.differences)
        else if (news.kind === 'compared') setCompared({ differences, effects: news.effects, resultsCompared: news.resultsCompared, resultsOf: news.resultsOf, words: source.words, of: workbook })
      })
      await running.result
    }
    async function sourceOf(): Promise<BeforeSource | undefined> {
      if (choice() === 'saved') return saved()
      if (choice() === 'file') return chosenFile()
      const given = chosenTemplate() ?? likeliest
      if (given) return given
      running = matching.ask('Looking for its template', { kind: 'template' }, (news) => {
        const own = news.kind === 'template' ? templates.find(({ title }) => title === news.title) : undefined
        if (own) likeliest = templateSource(own)
      })
      await running.result
      matching.end()
      if (likeliest === undefined && !isStopped) throw new Error('The workbook is like no template. Choose one of the list to compare it all the same.')
      return likeliest
    }
  })

  function placesOf(addresses: readonly string[]): readonly CellPlace[] {
    return addresses.flatMap((text) => {
      const place = placeTyped(session.document.workbook(), text, session.sheetName())
      return typeof place === 'string' ? [] : [place]
    })
  }
  /** With something else: what was found before belongs to another comparison. */
  createEffect(on([choice, chosenTemplate, chosenFile, saved], ([now], before) => {
    const isOther = before === undefined || now !== before[0] || (now === 'saved' ? saved() !== before[3] : now === 'file' ? chosenFile() !== before[2] : chosenTemplate() !== before[1])
    if (before === undefined || !isOther) return
    setCompared(undefined)
    following.again()
  }))

  const isOld = () => compared() !== undefined && compared()?.of !== session.document.workbook()
  const parts = createMemo((): readonly Part[] => {
    const bySheet = new Map<string, Difference[]>()
    for (const one of compared()?.differences ?? []) {
      const same = bySheet.get(one.sheet ?? WORKBOOK)
      if (same) same.push(one)
      else bySheet.set(one.sheet ?? WORKBOOK, [one])
    }
    return [...bySheet].map(([sheet, differences]) => ({ name: sheet === WORKBOOK ? 'The workbook as a whole' : sheet, sheet: sheet === WORKBOOK ? undefined : sheet, differences }))
  })
  const walk = createMemo(() => parts().flatMap(({ differences }) => differences))
  const at = createMemo(() => walk().findIndex((one) => keyOf(one) === current()))

  // What was taken back is gone: the one that stands in its place is the current one then.
  createEffect(on([walk, at], ([listed, index], before) => {
    const [, was] = before ?? [[], -1]
    const next = listed[Math.min(was, listed.length - 1)]
    if (index === -1 && was !== -1 && current() !== undefined) setCurrent(next && keyOf(next))
  }))

  return {
    following, choice, choose: (to) => void setChoice(to), template, setTemplate: (title) => void setTemplate(title), file, compared, isOld, parts, walk, current, at, chosen,
    setFile: (given) => batch(() => {
      setFile(given)
      setChoice('file')
    }),
    goTo(difference) {
      const part = difference.sheet ?? WORKBOOK
      const index = parts().find(({ sheet }) => sheet === difference.sheet)?.differences.indexOf(difference) ?? -1
      batch(() => {
        setCurrent(keyOf(difference))
        if (index >= 0) setPages((pagesBefore) => new Map(pagesBefore).set(part, Math.floor(index / PAGE)))
        setClosed((before) => new Set([...before].filter((one) => one !== part)))
        const place = difference.now
        if (place) goToArea(session, place.sheet, { top: place.row, bottom: place.row, left: place.column, right: place.column })
        else if (difference.sheet !== undefined && session.document.workbook().sheets.some(({ name }) => name === difference.sheet)) session.show(difference.sheet)
      })
    },
    page: (part) => pages().get(part) ?? 0,
    setPage: (part, page) => void setPages((before) => new Map(before).set(part, page)),
    isClosed: (part) => closed().has(part),
    setClosed: (part, isClosed) => void setClosed((before) => {
      const others = [...before].filter((one) => one !== part)
      return new Set(isClosed ? [...others, part] : others)
    }),
    addChosen(address) {
      setChosen((before) => (before.includes(address) ? before : [...before, address]))
      following.again()
    },
    removeChosen(address) {
      setChosen((before) => before.filter((one) => one !== address))
      following.again()
    },
    async takeBack(differences, label) {
      const of = compared()?.of
      if (isOld() || !session.settle()) return
      try {
        const edits = await thread.edits(differences.map(({ id }) => id))
        if (session.document.workbook() !== of) return session.setNotice({ tone: 'problem', text: 'The workbook has changed meanwhile; it is compared again first' })
        session.act(label, () => edits)
        if (session.notice()?.tone !== 'problem') session.setNotice({ tone: 'done', text: `${label}; Undo brings it back as it was` })
      } catch (fault) {
        session.setNotice({ tone: 'problem', text: fault instanceof Error ? fault.message : String(fault) })
      }
    },
    report: (date) => thread.report({ date, beforeWords: compared()?.words ?? '', nowWords: session.document.workbook().title }),
  }
}
