import { createSignal, createUniqueId, For, onCleanup, Show, type JSX } from 'solid-js'
import { Icon } from './Icon.tsx'
import './Menu.css'

export interface MenuItem {
  readonly words: string
  readonly detail?: string
  readonly choose: () => void
}

/** A verb with several ways to do it. */
export function Menu(props: { readonly words: string; readonly items: readonly MenuItem[] }): JSX.Element {
  const id = createUniqueId()
  const [isOpen, setOpen] = createSignal(false)
  let place: HTMLDivElement | undefined
  let button: HTMLButtonElement | undefined

  const items = () => [...(place?.querySelectorAll<HTMLElement>('[role=menuitem]') ?? [])]
  const focusItem = (index: number) => items().at(index % Math.max(1, items().length))?.focus()
  const close = (backToButton: boolean) => {
    setOpen(false)
    if (backToButton) button?.focus()
  }
  const openAt = (index: number) => {
    setOpen(true)
    focusItem(index)
  }
  const onOutside = (event: PointerEvent) => {
    if (event.target instanceof Node && !place?.contains(event.target)) setOpen(false)
  }
  document.addEventListener('pointerdown', onOutside)
  onCleanup(() => document.removeEventListener('pointerdown', onOutside))

  function onKeyDown(event: KeyboardEvent): void {
    const at = items().findIndex((item) => item === document.activeElement)
    const go = KEYS[event.key]?.(at)
    if (event.key === 'Escape' && isOpen()) close(true)
    else if (go !== undefined) openAt(go)
    else return
    event.preventDefault()
  }

  return (
    <div ref={(element) => (place = element)} class="menu-place" onKeyDown={onKeyDown} onFocusOut={(event) => {
      if (event.relatedTarget instanceof Node && !place?.contains(event.relatedTarget)) setOpen(false)
    }}>
      <button ref={(element) => (button = element)} type="button" class="verb" aria-haspopup="menu" aria-expanded={isOpen()} aria-controls={id} onClick={() => (isOpen() ? close(false) : openAt(0))}>
        {props.words}<Icon name="down" />
      </button>
      <Show when={isOpen()}>
        <div id={id} class="menu" role="menu" aria-label={props.words}>
          <For each={props.items}>
            {(item) => (
              <button type="button" role="menuitem" tabindex={-1} onClick={() => {
                close(true)
                item.choose()
              }}>
                {item.words}<Show when={item.detail}><small>{item.detail}</small></Show>
              </button>
            )}
          </For>
        </div>
      </Show>
    </div>
  )
}

/** Which item a key goes to, counted from the end where negative. */
const KEYS: Readonly<Record<string, (at: number) => number>> = {
  ArrowDown: (at) => at + 1,
  ArrowUp: (at) => (at <= 0 ? -1 : at - 1),
  Home: () => 0,
  End: () => -1,
}
