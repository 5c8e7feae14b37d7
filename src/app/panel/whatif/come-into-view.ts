import { createEffect, on } from 'solid-js'
import type { Running } from '../../whatif/running.ts'

/** What was just asked for comes into view by itself, once it is there; what stands from before does not, nor what is in sight already. */
export function comeIntoView(element: HTMLElement, state: Pick<Running, 'running'>): void {
  createEffect(on(state.running, (running, before) => {
    if (before !== true || running) return
    if (element.getBoundingClientRect().top > window.innerHeight / 2) element.scrollIntoView({ block: 'start' })
  }))
}
