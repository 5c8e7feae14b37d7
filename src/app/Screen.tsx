import { createEffect, onCleanup, onMount, type JSX } from 'solid-js'
import { EntryLine } from './entry-line/EntryLine.tsx'
import { saveWorkbook } from './files/file-actions.ts'
import { Grid } from './grid/Grid.tsx'
import { SidePanel } from './panel/SidePanel.tsx'
import { SheetList } from './sheets/SheetList.tsx'
import { StatusLine } from './StatusLine.tsx'
import { useSession } from './state/session.ts'
import { TopLine } from './top/TopLine.tsx'
import './Screen.css'

/** The parts of the screen and where they stand. */
export function Screen(): JSX.Element {
  const session = useSession()
  let grid: HTMLElement | undefined
  let screen: HTMLDivElement | undefined
  const focusGrid = () => grid?.focus({ preventScroll: true })

  const warnBeforeLeaving = (event: BeforeUnloadEvent) => {
    const isKept = session.keeping.reading() || session.keeping.state() === 'kept'
    if ((!isKept && session.document.unsaved()) || session.entry.editing() || session.document.longChange.isUnderWay()) event.preventDefault()
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && !event.defaultPrevented && !session.entry.editing()) session.stop()
    if (event.key === 'F6') goOn(event)
    if ((event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey && event.key.toLowerCase() === 'f') {
      event.preventDefault()
      session.setPanel('Find')
      screen?.querySelector<HTMLInputElement>('.find-text')?.select()
    }
    if ((event.ctrlKey || event.metaKey) && event.key.toLowerCase() === 's') {
      event.preventDefault()
      void saveWorkbook(session)
    }
  }
  const goOn = (event: KeyboardEvent) => {
    // A dialog keeps its keys.
    if (screen === undefined || document.querySelector('dialog:modal') !== null) return
    event.preventDefault()
    focusNextPart(screen, event.shiftKey ? -1 : 1)
  }
  /** Tab goes past the last part of the page, and what had the focus may be gone: from nowhere F6 leads back. */
  const onKeyOfPage = (event: KeyboardEvent) => {
    const isOfNothing = event.target === document.body || event.target === document.documentElement
    if (event.key === 'F6' && isOfNothing) goOn(event)
  }
  createEffect(() => {
    document.title = `${session.document.workbook().title} – Lowside`
  })
  onMount(() => {
    window.addEventListener('beforeunload', warnBeforeLeaving)
    document.addEventListener('keydown', onKeyOfPage)
    // Enlarged, or in a small window, the grid comes first; the panel's names stay in reach.
    if (innerWidth <= NARROW_PX) session.setPanel(undefined)
    focusGrid()
    onCleanup(() => {
      window.removeEventListener('beforeunload', warnBeforeLeaving)
      document.removeEventListener('keydown', onKeyOfPage)
    })
  })

  return (
    <div ref={(element) => (screen = element)} class="screen" classList={{ 'values-stale': session.recalculation.stopped() }} onKeyDown={onKeyDown}>
      <TopLine />
      <EntryLine focusGrid={focusGrid} />
      <SheetList focusGrid={focusGrid} />
      <main class="middle"><Grid ref={(element) => (grid = element)} /></main>
      <SidePanel />
      <StatusLine />
    </div>
  )
}

/** Too narrow for the grid and a panel to begin with, in px. */
const NARROW_PX = 760

/** In the order of the page; within each part, where the focus goes first. */
const PARTS = ['.title-field', '.entry-line textarea', '.sheet-list [aria-current]', '.grid', '.side-names button']

function focusNextPart(screen: HTMLElement, way: 1 | -1): void {
  const parts = PARTS.flatMap((part) => screen.querySelector<HTMLElement>(part) ?? [])
  const at = parts.findIndex((part) => part.closest('header, section, nav, main, aside')?.contains(document.activeElement))
  // From nowhere on to the first, or back to the last.
  parts.at(at < 0 && way === -1 ? -1 : (at + way) % parts.length)?.focus()
}
