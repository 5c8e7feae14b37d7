import { createEffect, on, onCleanup, onMount, type Accessor } from 'solid-js'
import type { Following } from '../../review/following.ts'
import { walkedTo } from '../../review/walking.ts'

/** What a panel walks through, as its state has it. */
interface Walked<T> {
  readonly following: Following
  readonly walk: Accessor<readonly T[]>
  /** What the item with `data-walked` of the same text shows. */
  readonly current: Accessor<string | undefined>
  readonly at: Accessor<number>
  goTo(one: T): void
}

/**
 * A panel with a list that one walks through, by keys too: the focus goes along in the panel, while the grid shows the cells. Where what had the focus is gone after
 * a new look, it comes to what stands in its place, or to the heading.
 * @param renewed what changes with each new look
 */
export function walkInPanel<T>(state: Walked<T>, renewed: Accessor<unknown>) {
  onMount(() => state.following.setLookedAt(true))
  onCleanup(() => state.following.setLookedAt(false))
  let panel: HTMLDivElement | undefined
  /** Whether the focus was in here when last seen: what has it may be gone from the list by then. */
  let hasFocus = false
  const focusCurrent = () => {
    const current = state.current()
    const place = current === undefined ? undefined : panel?.querySelector<HTMLElement>(`[data-walked="${CSS.escape(current)}"] .review-go`)
    const to = place ?? panel?.querySelector<HTMLElement>('h2')
    to?.focus()
    place?.scrollIntoView({ block: 'nearest' })
  }
  createEffect(on(renewed, () => queueMicrotask(() => {
    if (hasFocus && document.activeElement === document.body) focusCurrent()
  }), { defer: true }))
  const walkTo = (at: number) => {
    const to = state.walk()[at]
    if (to) state.goTo(to)
  }
  return {
    panel: {
      ref: (element: HTMLDivElement) => void (panel = element),
      onFocusIn: () => void (hasFocus = true),
      onFocusOut({ relatedTarget }: FocusEvent) {
        if (relatedTarget instanceof Node && !panel?.contains(relatedTarget)) hasFocus = false
      },
    },
    onKeyDown(event: KeyboardEvent) {
      const to = walkedTo(event.key, state.at(), state.walk().length)
      if (to === undefined || !isWalkable(event.target)) return
      event.preventDefault()
      walkTo(to)
      queueMicrotask(focusCurrent)
    },
    walkTo,
  }
}

/** Fields keep their keys. */
const isWalkable = (target: EventTarget | null): boolean => target instanceof Element && target.closest('input, textarea, select, summary') === null
