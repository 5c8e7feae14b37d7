import { createSignal, onCleanup, type JSX } from 'solid-js'
import { Icon } from '../parts/Icon.tsx'
import './VerbList.css'

/** The verbs in a row; behind one button where the window is too narrow for them. */
export function VerbList(props: { readonly children: JSX.Element }): JSX.Element {
  const [isOpen, setOpen] = createSignal(false)
  let place: HTMLDivElement | undefined
  let button: HTMLButtonElement | undefined
  const isOutside = (target: EventTarget | null) => target instanceof Node && !place?.contains(target)
  const onPress = (event: PointerEvent) => isOutside(event.target) && setOpen(false)
  document.addEventListener('pointerdown', onPress)
  onCleanup(() => document.removeEventListener('pointerdown', onPress))

  /** Before the verb does it: whatever the verb opens leads the focus back to the button, which is still there then. */
  function onChoice({ target }: MouseEvent): void {
    if (!isOpen() || !(target instanceof Element) || target.closest('button:not([aria-haspopup])') === null) return
    button?.focus()
    setOpen(false)
  }

  return (
    <div
      ref={(element) => (place = element)} class="verb-list-place"
      onFocusOut={(event) => event.relatedTarget !== null && isOutside(event.relatedTarget) && setOpen(false)}
      onKeyDown={(event) => {
        if (event.key !== 'Escape' || event.defaultPrevented || !isOpen()) return
        event.preventDefault()
        button?.focus()
        setOpen(false)
      }}
    >
      <button ref={(element) => (button = element)} type="button" class="verb verb-more" aria-expanded={isOpen()} onClick={() => setOpen((before) => !before)}>More<Icon name="down" /></button>
      <div ref={(element) => element.addEventListener('click', onChoice, true)} class="verb-list" classList={{ open: isOpen() }}>{props.children}</div>
    </div>
  )
}
