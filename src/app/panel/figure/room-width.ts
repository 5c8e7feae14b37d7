import { createSignal, onCleanup, onMount, type Accessor } from 'solid-js'

/** How wide an element is, in whole px, from when it stands on the page; 0 before. */
export function createRoomWidth(): { readonly width: Accessor<number>; readonly measured: (element: HTMLElement) => void } {
  const [width, setWidth] = createSignal(0)
  let measured: HTMLElement | undefined
  onMount(() => {
    if (!measured) return
    const observer = new ResizeObserver(([entry]) => entry && setWidth(Math.floor(entry.contentRect.width)))
    observer.observe(measured)
    onCleanup(() => observer.disconnect())
  })
  return { width, measured: (element) => (measured = element) }
}
