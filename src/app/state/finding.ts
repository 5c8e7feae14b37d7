import { createEffect, createMemo, createSignal, onCleanup, type Accessor } from 'solid-js'
import { cellView } from '../grid/cell-view.ts'
import { find, type FindPlace, type FindQuery, type Found, type ShownText } from '../../workbook/find.ts'
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
  /** Undefined while the first search is under way. */
  readonly found: Accessor<readonly Found[] | undefined>
}

/** A search begins once typing has paused for this long. */
const PAUSE_MS = 120

/** What is looked for and what is found; looked for again whenever the query or the workbook changes. */
export function createFinding(session: Pick<Session, 'document' | 'recalculation' | 'sheetName'>): Finding {
  const [text, setText] = createSignal('')
  const [place, setPlace] = createSignal<FindPlace>('contents')
  const [whole, setWhole] = createSignal(false)
  const [matchCase, setMatchCase] = createSignal(false)
  const [here, setHere] = createSignal(false)
  const [found, setFound] = createSignal<readonly Found[] | undefined>([])
  const query = createMemo((): FindQuery => ({ text: text(), place: place(), whole: whole(), matchCase: matchCase(), ...(here() ? { sheet: session.sheetName() } : {}) }))

  let search = 0
  createEffect(() => {
    const asked = query()
    const workbook = session.document.workbook()
    const turn = ++search
    const timer = setTimeout(async () => {
      const shown = asked.place === 'values' && asked.text !== '' ? await shownTexts() : undefined
      if (turn === search) setFound(find(workbook, asked, shown))
    }, PAUSE_MS)
    onCleanup(() => clearTimeout(timer))
  })
  onCleanup(() => search++)

  async function shownTexts(): Promise<ShownText> {
    const values = await session.recalculation.ask((service) => service.allValues())
    return (sheet, row, column, cell) => cellView(cell, plainValue(cell) ?? values?.get(sheet.name)?.[row]?.[column], undefined).text
  }

  return { text, setText, place, setPlace, whole, setWhole, matchCase, setMatchCase, here, setHere, query, found }
}

/** The one after, or before, a place in the order found; round from the last to the first. */
export function nextFound(found: readonly Found[], sheets: readonly string[], from: Pick<Found, 'sheet' | 'row' | 'column'>, way: 1 | -1): Found | undefined {
  const order = (one: Pick<Found, 'sheet' | 'row' | 'column'>, other: Pick<Found, 'sheet' | 'row' | 'column'>): number =>
    sheets.indexOf(one.sheet) - sheets.indexOf(other.sheet) || one.row - other.row || one.column - other.column
  return way === 1 ? (found.find((one) => order(one, from) > 0) ?? found[0]) : (found.findLast((one) => order(one, from) < 0) ?? found.at(-1))
}
