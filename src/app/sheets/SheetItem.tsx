import { createSignal, Show, type JSX } from 'solid-js'
import { ContextMenu, type ContextItem } from '../parts/ContextMenu.tsx'
import { counted } from '../parts/counted.ts'
import { checkMarksOf } from '../review/check-marks.ts'
import { findingsOf } from '../review/findings-store.ts'
import { useSession } from '../state/session.ts'
import { duplicate, move, remove, rename } from './sheet-actions.ts'
import { stateWords } from '../../calc/state-words.ts'
import { shareWords } from '../../workbook/review/checked-share.ts'

interface Props {
  readonly name: string
  readonly focusGrid: () => void
  /** After a change of the list: the focus goes to the sheet of that name. */
  readonly focusSheet: (name: string) => void
}

/** One sheet of the list: its state, a menu of what can be done with it, and its name to write over. */
export function SheetItem(props: Props): JSX.Element {
  const session = useSession()
  const [menuAt, setMenuAt] = createSignal<{ readonly x: number; readonly y: number } | undefined>(undefined)
  const [renaming, setRenaming] = createSignal(false)
  let item: HTMLLIElement | undefined
  let name: HTMLButtonElement | undefined

  const state = () => stateWords(session.sheetStates().get(props.name))
  const sheets = () => session.document.workbook().sheets
  const index = () => sheets().findIndex((sheet) => sheet.name === props.name)
  const openMenu = () => {
    const { left, bottom } = item?.getBoundingClientRect() ?? { left: 0, bottom: 0 }
    if (session.settle()) setMenuAt({ x: left + 20, y: bottom - 4 })
  }
  const moveBy = (by: 1 | -1) => {
    const moved = props.name
    move(session, moved, by)
    props.focusSheet(moved)
  }
  const items = (): ContextItem[] => [
    { words: 'Rename', keys: 'F2', choose: () => setRenaming(true) },
    { words: 'Move up', keys: 'Alt + Page Up', cannot: index() <= 0, choose: () => moveBy(-1) },
    { words: 'Move down', keys: 'Alt + Page Down', cannot: index() >= sheets().length - 1, choose: () => moveBy(1) },
    { words: 'Duplicate', choose: () => {
      duplicate(session, props.name)
      props.focusSheet(session.sheetName())
    } },
    { words: 'Remove', apart: true, cannot: sheets().length === 1, choose: () => {
      remove(session, props.name)
      props.focusSheet(session.sheetName())
    } },
  ]

  function onKeyDown(event: KeyboardEvent): void {
    const moves: Readonly<Record<string, 1 | -1>> = { PageUp: -1, PageDown: 1 }
    const by = event.altKey ? moves[event.key] : undefined
    if (event.key === 'F2') setRenaming(true)
    else if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) openMenu()
    else if (by !== undefined && sheets()[index() + by]) moveBy(by)
    else return
    event.preventDefault()
  }

  return (
    <li ref={(element) => (item = element)} class="sheet-item" onContextMenu={(event) => {
      event.preventDefault()
      if (event.button !== 2) openMenu()
      else if (session.settle()) setMenuAt({ x: event.clientX, y: event.clientY })
    }}>
      <Show when={!renaming()} fallback={<NameField name={props.name} onEnd={(to) => {
        const isDone = to === undefined || rename(session, props.name, to)
        if (!isDone) return false
        setRenaming(false)
        // The grid of the sheet under its new name takes the focus first.
        const named = to ?? props.name
        requestAnimationFrame(() => props.focusSheet(named))
        return true
      }} />}>
        <button ref={(element) => (name = element)} type="button" class={`sheet ${state().kind}`} data-sheet={props.name} aria-current={session.sheet().name === props.name ? 'page' : undefined} aria-haspopup="menu" onKeyDown={onKeyDown} onMouseDown={(event) => {
          // The formula that is pointed from keeps the focus.
          if (session.pointing.fits()) event.preventDefault()
        }} onDblClick={() => session.entry.editing() || setRenaming(true)} onClick={(event) => {
          if (session.pointing.fits()) return session.pointing.show(props.name)
          session.show(props.name)
          // The second press of a double one renames.
          if (event.detail < 2) props.focusGrid()
        }}>
          <span class="sheet-mark" aria-hidden="true" />
          <span class="sheet-name">{props.name}</span>
          <span class="sheet-state">{state().words}<OpenFindings name={props.name} before={state().words === '' ? '' : ', '} /></span>
          <Checked name={props.name} />
        </button>
        <button type="button" class="sheet-more" tabindex={-1} aria-label={`Sheet ${props.name}: rename, move, duplicate, remove`} aria-haspopup="menu" aria-expanded={menuAt() !== undefined} onClick={openMenu}>
          <span aria-hidden="true">⋯</span>
        </button>
      </Show>
      <Show when={menuAt()}>
        {(at) => <ContextMenu label={`Sheet ${props.name}`} items={items()} at={at()} onClose={() => {
          setMenuAt(undefined)
          name?.focus()
        }} />}
      </Show>
    </li>
  )
}

/** How much of a sheet good marks cover, on a line of its own. */
function Checked(props: { readonly name: string }): JSX.Element {
  const { shares } = checkMarksOf(useSession())
  const share = () => shares().get(props.name)
  return (
    <Show when={share()}>
      {(one) => <Show when={shareWords(one())}>{(words) => <span class="sheet-checked" classList={{ stale: one().staleMarks > 0 }}>{words()}</span>}</Show>}
    </Show>
  )
}

/** How many findings are open on a sheet, once they have been looked for; fainter where the workbook has changed since. */
function OpenFindings(props: { readonly name: string; readonly before: string }): JSX.Element {
  const findings = findingsOf(useSession())
  return (
    <Show when={findings.openOn(props.name)}>
      {(count) => <>{props.before}<span class="sheet-findings" classList={{ old: findings.isOld() }}>{counted(count(), 'finding')}<Show when={findings.isOld()}><span class="unseen"> before the last change</span></Show></span></>}
    </Show>
  )
}

/** @param props.onEnd undefined: the name stays; false keeps the field open */
function NameField(props: { readonly name: string; readonly onEnd: (name: string | undefined) => boolean }): JSX.Element {
  let isOver = false
  const end = (to: string | undefined) => {
    if (isOver) return true
    // Leaving the page, the field loses the focus, which must not end it once more.
    isOver = true
    isOver = props.onEnd(to)
    return isOver
  }
  return (
    <input
      class="sheet-name-field"
      aria-label={`New name of sheet ${props.name}`}
      value={props.name}
      maxLength={31}
      ref={(element) => queueMicrotask(() => {
        element.focus()
        element.select()
      })}
      onKeyDown={(event) => {
        event.stopPropagation()
        if (event.key === 'Enter') end(event.currentTarget.value.trim())
        else if (event.key === 'Escape') end(undefined)
      }}
      onBlur={(event) => {
        // A name that is not accepted is given up with the field.
        if (!end(event.currentTarget.value.trim())) end(undefined)
      }}
    />
  )
}
