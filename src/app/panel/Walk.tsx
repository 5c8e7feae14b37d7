import { createMemo, createResource, For, Show, type JSX } from 'solid-js'
import type { Feed, Place } from '../../calc/walk.ts'
import { printAddress, quoteSheetName, type Area } from '../../workbook/address.ts'
import { foldCase, sheetByName } from '../../workbook/document.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import { cellView } from '../grid/cell-view.ts'
import { isCellError, type CellValue } from '../../calc/values.ts'
import { useSession, type Session } from '../state/session.ts'
import type { Trail, Visited } from '../state/trail.ts'
import { frameDrawn } from '../state/frame-drawn.ts'
import type { FormulaLines } from '../../review/derivation/formula-lines.ts'
import { whereWords } from '../../review/derivation/where.ts'
import './Walk.css'

/** The formula with its values, what feeds the active cell and what uses it, to follow from cell to cell and back. */
export function createWalk(focusHead: () => void) {
  const session = useSession()
  const here = (): Visited => ({ sheet: session.sheetName(), ...session.selection.active() })
  // What was clicked is gone once the panel is about another cell: without a new place the keyboard would start at the top of the page.
  const trail: Walked = {
    visited: session.trail.visited,
    follow(to) {
      session.trail.follow(to)
      focusHead()
    },
    back(index) {
      session.trail.back(index)
      focusHead()
    },
  }
  const asked = () => ({ ...here(), version: session.recalculation.version(), cell: session.activeCell() })
  let turn = 0
  const [answer] = createResource(asked, async ({ sheet, row, column, version, cell }) => {
    const mine = ++turn
    // First the grid: what a key has changed is drawn before this is asked, and of a row of keys only the last one asks.
    await frameDrawn()
    if (version === 0 || mine !== turn) return undefined
    const [feeds, users] = await Promise.all([
      session.recalculation.ask((service) => service.feeds(sheet, row, column)),
      session.recalculation.ask((service) => service.users(sheet, row, column)),
    ])
    return { sheet, row, column, cell, feeds, users }
  })
  /** The answer for the cell as it is now: one for the cell before would put its values into another formula. */
  const current = () => {
    const found = answer.latest
    const { sheet, row, column } = here()
    return found && found.sheet === sheet && found.row === row && found.column === column && found.cell === session.activeCell() ? found : undefined
  }
  return { trail, feeds: () => current()?.feeds, users: () => current()?.users }
}

type Walked = Omit<Trail, 'forget'>

export type Walk = ReturnType<typeof createWalk>

export function WayBack(props: { readonly trail: Walked }): JSX.Element {
  const session = useSession()
  return (
    <Show when={props.trail.visited().length > 0}>
      <nav class="walk-back" aria-label="The way back">
        <For each={props.trail.visited()}>
          {(at, index) => <button type="button" onClick={() => props.trail.back(index())}>{index() === props.trail.visited().length - 1 ? '← ' : ''}{addressFrom(session, at.sheet, { top: at.row, left: at.column, bottom: at.row, right: at.column })}</button>}
        </For>
      </nav>
    </Show>
  )
}

/** The formula with values put in, and what stands behind them: which branch was taken, what was converted. */
export function FormulaInWords(props: { readonly formula: string; readonly walk: Walk; readonly result: string }): JSX.Element {
  const session = useSession()
  const [writer] = createResource(loadWriter)
  const lines = createMemo(() => {
    const feeds = props.walk.feeds()
    return feeds && writer()?.walkedFormula(props.formula, feeds, session.document.workbook(), session.sheet(), session.selection.active())
  })
  /** Numbers put in; where they are the result itself, as in a link, the names of what they come from. */
  const before = ({ equalities, words }: FormulaLines) => {
    const numbers = equalities.filter((line) => line !== props.result)
    return numbers.length > 0 ? numbers : [words]
  }
  return (
    <Show when={lines()}>
      {(found) => (
        <>
          <p class="walk-words">{`${before(found()).join(' = ')} = `}<b>{props.result}</b></p>
          <For each={[...found().reasons, ...found().wheres.map((where) => `where ${whereWords(where)}`)].slice(0, MOST_REASONS)}>{(words) => <p class="walk-where">{words}</p>}</For>
        </>
      )}
    </Show>
  )
}

/** Loaded with the first formula that is looked at, once: the first screen works without, and what feeds the cell stands there meanwhile. */
const loadWriter = () => import('./walked-formula.ts').catch(() => undefined)

/** The whole derivation has the others. */
const MOST_REASONS = 6

export function FedBy(props: { readonly walk: Walk }): JSX.Element {
  const session = useSession()
  return (
    <Show when={props.walk.feeds()?.length}>
      <section>
        <h3 id="fed-by">Fed by</h3>
        <ul class="walk-list" aria-labelledby="fed-by">
          <For each={distinct(props.walk.feeds() ?? [])}>
            {(feed) => <Step label={feedLabel(session, feed)} address={addressFrom(session, feed.sheet, feed.area)} value={feed.value === undefined ? '' : feedWords(session, feed)} onClick={() => props.walk.trail.follow({ sheet: feed.sheet, row: feed.area.top, column: feed.area.left })} />}
          </For>
        </ul>
      </section>
    </Show>
  )
}

export function UsedBy(props: { readonly walk: Walk }): JSX.Element {
  const session = useSession()
  return (
    <Show when={props.walk.users()}>
      {(users) => (
        <section>
          <h3 id="used-by">Used by</h3>
          <Show when={users().count > 0} fallback={<p class="panel-empty">No other cell.</p>}>
            <ul class="walk-list" aria-labelledby="used-by">
              <For each={users().places}>
                {(place) => <Step label={place.label} address={addressFrom(session, place.sheet, areaOfPlace(place))} value={placeWords(session, place)} onClick={() => props.walk.trail.follow(place)} />}
              </For>
            </ul>
            <Show when={users().count > users().places.length}><p class="panel-empty">and {(users().count - users().places.length).toLocaleString('en')} more</p></Show>
          </Show>
        </section>
      )}
    </Show>
  )
}

function Step(props: { readonly label: string | undefined; readonly address: string; readonly value: string; readonly onClick: () => void }): JSX.Element {
  return (
    <li>
      <button type="button" onClick={() => props.onClick()}>
        <span class="walk-label">{props.label ?? 'no label'}</span> <span class="walk-address">{props.address}</span> <span class="walk-value">{props.value}</span>
      </button>
    </li>
  )
}

/** A unit cell stands in the row of what has the unit: its label there is not its own. */
function feedLabel(session: Session, { sheet, area: { top, left, bottom, right }, label }: Feed): string | undefined {
  const role = sheetByName(session.document.workbook(), sheet)?.rows[top]?.[left]?.role
  if (role !== 'unit' || top !== bottom || left !== right) return label
  const own = foldCase(sheet) === foldCase(session.sheetName()) ? unitOfValue(session.sheet(), session.selection.active()) : undefined
  if (own?.row === top && own.column === left) return 'its unit'
  return label === undefined ? 'a unit' : `unit of ${label}`
}

/** Each once, in the order of writing. */
function distinct(feeds: readonly Feed[]): Feed[] {
  const bySource = new Map(feeds.map((feed) => [`${feed.sheet}!${Object.values(feed.area).join()}`, feed] as const))
  return [...bySource.values()]
}

const areaOfPlace = ({ row, column }: Place): Area => ({ top: row, left: column, bottom: row, right: column })

/** An address as it reads from the sheet shown. */
function addressFrom(session: Session, sheet: string, { top, left, bottom, right }: Area): string {
  const from = printAddress(top, left)
  const to = printAddress(bottom, right)
  return `${foldCase(sheet) === foldCase(session.sheetName()) ? '' : `${quoteSheetName(sheet)}!`}${from === to ? from : `${from}:${to}`}`
}

function feedWords(session: Session, feed: Feed): string {
  if (feed.value === undefined) return addressFrom(session, feed.sheet, feed.area)
  return withUnit(shownValue(session, feed.sheet, feed.area.top, feed.area.left, feed.value), feed.unit)
}

const placeWords = (session: Session, { sheet, row, column, value, unit }: Place): string => withUnit(shownValue(session, sheet, row, column, value), unit)

const withUnit = (value: string, unit: string | undefined): string => (unit === undefined ? value : `${value} ${unit}`)

/** As the cell itself shows it; an empty one in a word. */
function shownValue(session: Session, sheet: string, row: number, column: number, value: CellValue): string {
  const cell = sheetByName(session.document.workbook(), sheet)?.rows[row]?.[column]
  if (isCellError(value)) return value.error
  return value === null ? 'empty' : cellView(cell, value, undefined).text
}
