import { For, onCleanup, onMount, Show, type JSX } from 'solid-js'
import './ContextMenu.css'

export interface ContextItem {
  readonly words: string
  readonly keys?: string
  readonly cannot?: boolean
  /** Begins another group. */
  readonly apart?: boolean
  readonly choose: () => void
}

interface Props {
  readonly label: string
  readonly items: readonly ContextItem[]
  /** Where it was asked for, in px from the window's upper left. */
  readonly at: { readonly x: number; readonly y: number }
  /** Without a choice, or before the chosen one is done; where the focus goes is the caller's matter. */
  readonly onClose: () => void
}

/** What can be done with the thing that was pressed, as a menu beside it. */
export function ContextMenu(props: Props): JSX.Element {
  let menu: HTMLDivElement | undefined
  const items = () => [...(menu?.querySelectorAll<HTMLElement>('[role=menuitem]:not([aria-disabled=true])') ?? [])]
  const focusItem = (index: number) => items().at(index % Math.max(1, items().length))?.focus()
  const onPress = (event: PointerEvent) => {
    if (event.target instanceof Node && !menu?.contains(event.target)) props.onClose()
  }
  onMount(() => {
    if (menu) keepInWindow(menu, props.at)
    focusItem(0)
    document.addEventListener('pointerdown', onPress, true)
    onCleanup(() => document.removeEventListener('pointerdown', onPress, true))
  })

  function onKeyDown(event: KeyboardEvent): void {
    const at = items().findIndex((item) => item === document.activeElement)
    const go = KEYS[event.key]?.(at)
    event.stopPropagation()
    if (event.key === 'Escape' || event.key === 'Tab') props.onClose()
    else if (go !== undefined) focusItem(go)
    else return
    event.preventDefault()
  }

  return (
    <div ref={(element) => (menu = element)} class="context-menu" role="menu" aria-label={props.label} onKeyDown={onKeyDown} onContextMenu={(event) => event.preventDefault()}>
      <For each={props.items}>
        {(item) => (
          <>
            <Show when={item.apart}><div role="separator" /></Show>
            <button type="button" role="menuitem" tabindex={-1} aria-disabled={item.cannot} onClick={() => {
              if (item.cannot) return
              props.onClose()
              item.choose()
            }}>
              <span>{item.words}</span><Show when={item.keys}><kbd>{item.keys}</kbd></Show>
            </button>
          </>
        )}
      </For>
    </div>
  )
}

function keepInWindow(menu: HTMLElement, { x, y }: Props['at']): void {
  const { width, height } = menu.getBoundingClientRect()
  menu.style.left = `${Math.max(4, Math.min(x, innerWidth - width - 4))}px`
  menu.style.top = `${Math.max(4, Math.min(y, innerHeight - height - 4))}px`
}

/** Which item a key goes to, counted from the end where negative. */
const KEYS: Readonly<Record<string, (at: number) => number>> = {
  ArrowDown: (at) => at + 1,
  ArrowUp: (at) => (at <= 0 ? -1 : at - 1),
  Home: () => 0,
  End: () => -1,
}
