import { batch, createEffect, createMemo, createSignal, onCleanup, type Accessor } from 'solid-js'
import { cellView } from '../grid/cell-view.ts'
import { createSlices } from '../../storage/next-task.ts'
import { isFormula, type Workbook } from '../../workbook/document.ts'
import { findIn, stretchesOf, type FindPlace, type FindQuery, type Found, type ShownText, type Stretch } from '../../workbook/find.ts'
import { plainValue } from '../../calc/cell-value.ts'
import type { Session } from './session.ts'

export interface Finding {
  readonly text: Accessor<string>
  setText(text: string): void
  readonly place: Accessor<FindPlace>
  setPlace(place: FindPlace): void
  readonly whole: Accessor<boolean>
  setWhole(whole: boolean): void
  readonly matchCase: Accessor<boolean>
  setMatchCase(matchCase: boolean): void
  /** Only on the sheet shown. */
  readonly here: Accessor<boolean>
  setHere(here: boolean): void
  readonly query: Accessor<FindQuery>
  /** While a long search is under way, and after a stop: what has been found so far. */
  readonly found: Accessor<readonly Found[]>
  readonly state: Accessor<'whole' | 'searching' | 'stopped'>
}

/** A search begins once typing has paused for this long. */
const PAUSE_MS = 120

/** What has been found is shown anew so often while more is looked for. */
const SHOWN_EACH_MS = 200

/** What is looked for and what is found; looked for again whenever the query or the workbook changes. */
export function createFinding(session: Pick<Session, 'document' | 'recalculation' | 'sheetName' | 'work'>): Finding {
  const [text, setText] = createSignal('')
  const [place, setPlace] = createSignal<FindPlace>('contents')
  const [whole, setWhole] = createSignal(false)
  const [matchCase, setMatchCase] = createSignal(false)
  const [here, setHere] = createSignal(false)
  const [found, setFound] = createSignal<readonly Found[]>([])
  const [state, setState] = createSignal<ReturnType<Finding['state']>>('whole')
  const query = createMemo((): FindQuery => ({ text: text(), place: place(), whole: whole(), matchCase: matchCase(), ...(here() ? { sheet: session.sheetName() } : {}) }))

  let search = 0
  createEffect(() => {
    const asked = query()
    const workbook = session.document.workbook()
    const turn = ++search
    const timer = setTimeout(() => void look(workbook, asked, turn), PAUSE_MS)
    onCleanup(() => clearTimeout(timer))
  })
  onCleanup(() => search++)

  /** Stretch by stretch, so that nobody waits for it; ends as soon as something else is looked for. */
  async function look(workbook: Workbook, asked: FindQuery, turn: number): Promise<void> {
    const all: Found[] = []
    let isStopped = false
    let shownAt = -Infinity
    const begun = performance.now()
    const show = (now: ReturnType<Finding['state']>): void => batch(() => {
      setState(now)
      setFound(all.slice())
    })
    const work = session.work.begin('Looking through the workbook', () => (isStopped = true))
    const slice = createSlices()
    for (const stretch of stretchesOf(workbook, asked)) {
      const shown = asked.place === 'values' ? await shownTexts(stretch) : undefined
      all.push(...findIn(stretch, asked, shown))
      work.report(stretch.share)
      await slice()
      if (isStopped || turn !== search) break
      const now = performance.now()
      // A short search shows its end only.
      if (now - begun < SHOWN_EACH_MS || now - shownAt < SHOWN_EACH_MS) continue
      show('searching')
      shownAt = now
    }
    work.end()
    if (turn === search) show(isStopped ? 'stopped' : 'whole')
  }

  async function shownTexts({ sheet, cells }: Stretch): Promise<ShownText> {
    const formulas = cells.filter(({ cell }) => isFormula(cell?.content))
    const [top, left] = [formulas[0]?.row ?? 0, Math.min(...formulas.map(({ column }) => column))]
    const area = { top, left, bottom: formulas.at(-1)?.row ?? 0, right: Math.max(...formulas.map(({ column }) => column)) }
    const read = formulas.length > 0 ? await session.recalculation.ask((service) => service.read(sheet.name, area)) : undefined
    return (_, row, column, cell) => cellView(cell, plainValue(cell) ?? read?.values[row - top]?.[column - left], undefined).text
  }

  return { text, setText, place, setPlace, whole, setWhole, matchCase, setMatchCase, here, setHere, query, found, state }
}

/** The one after, or before, a place in the order found; round from the last to the first. */
export function nextFound(found: readonly Found[], sheets: readonly string[], from: Pick<Found, 'sheet' | 'row' | 'column'>, way: 1 | -1): Found | undefined {
  const order = (one: Pick<Found, 'sheet' | 'row' | 'column'>, other: Pick<Found, 'sheet' | 'row' | 'column'>): number =>
    sheets.indexOf(one.sheet) - sheets.indexOf(other.sheet) || one.row - other.row || one.column - other.column
  return way === 1 ? (found.find((one) => order(one, from) > 0) ?? found[0]) : (found.findLast((one) => order(one, from) < 0) ?? found.at(-1))
}
