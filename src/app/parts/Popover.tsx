import { onCleanup, onMount, type JSX } from 'solid-js'
import './Popover.css'

interface Props {
  readonly label: string
  readonly class?: string
  readonly left?: number
  readonly top?: number
  /** Asked to close: by Escape, which leads the focus back to where it was, by a press elsewhere or as the focus goes elsewhere. */
  readonly onClose: (byEscape: boolean) => void
  readonly children: JSX.Element
}

/** A small sheet of paper over the screen, which takes the focus and goes as soon as one turns to something else. */
export function Popover(props: Props): JSX.Element {
  let paper: HTMLDivElement | undefined
  const before = document.activeElement
  const onPress = (event: PointerEvent) => {
    if (event.target instanceof Element && !paper?.contains(event.target) && !event.target.closest('[aria-expanded=true]')) props.onClose(false)
  }
  onMount(() => {
    const first = paper?.querySelector<HTMLElement>('[aria-checked=true][role=menuitemradio]') ?? paper?.querySelector<HTMLElement>('[role=menuitemradio], input, textarea, button')
    first?.focus()
    first?.scrollIntoView?.({ block: 'nearest' })
    document.addEventListener('pointerdown', onPress, true)
    onCleanup(() => document.removeEventListener('pointerdown', onPress, true))
  })
  return (
    <div
      ref={(element) => (paper = element)}
      class={`popover ${props.class ?? ''}`}
      role="dialog"
      aria-label={props.label}
      style={{ left: props.left === undefined ? undefined : `${props.left}px`, top: props.top === undefined ? undefined : `${props.top}px` }}
      onKeyDown={(event) => {
        if (event.key !== 'Escape') return
        event.preventDefault()
        event.stopPropagation()
        props.onClose(true)
        if (before instanceof HTMLElement) before.focus({ preventScroll: true })
      }}
      onFocusOut={(event) => {
        if (event.relatedTarget instanceof Node && !paper?.contains(event.relatedTarget)) props.onClose(false)
      }}
    >
      {props.children}
    </div>
  )
}
