import { Show, type JSX } from 'solid-js'
import { grouped } from '../../parts/counted.ts'
import type { Page } from '../../review/walking.ts'

/** Leads through a list that is longer than what is shown of it; nothing where all is shown. */
export function Pages(props: { readonly of: string; readonly page: Page<unknown>; readonly setPage: (page: number) => void }): JSX.Element {
  const number = () => Math.floor(props.page.from / props.page.size)
  const last = () => props.page.from + props.page.items.length
  return (
    <Show when={props.page.count > props.page.size}>
      <div class="review-pages" role="group" aria-label={`Parts of the list: ${props.of}`}>
        <button type="button" class="plain-button" aria-disabled={number() === 0} onClick={() => number() > 0 && props.setPage(number() - 1)}>Earlier</button>
        <span>{grouped(props.page.from + 1)} to {grouped(last())} of {grouped(props.page.count)}</span>
        <button type="button" class="plain-button" aria-disabled={last() >= props.page.count} onClick={() => last() < props.page.count && props.setPage(number() + 1)}>Later</button>
      </div>
    </Show>
  )
}
