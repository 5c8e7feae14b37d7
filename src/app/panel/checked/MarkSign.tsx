import type { JSX } from 'solid-js'

/** A shape of its own for a good mark, and for a stale one, before its word: the double line of the grid with a tick; the broken one with an open ring. */
export const MarkSign = (props: { readonly isGood: boolean }): JSX.Element => (
  <svg class="mark-sign" classList={{ stale: !props.isGood }} viewBox="0 0 14 14" aria-hidden="true"><path d={props.isGood ? GOOD : STALE} /></svg>
)

const GOOD = 'M1 1h1.2v12H1ZM3.3 1h1.2v12H3.3ZM6.2 7.7 7.3 6.6 8.9 8.3 12.3 3.2 13.6 4.1 9.1 10.8Z'
const STALE = 'M1 1h2.6v3H1ZM1 5.5h2.6v3H1ZM1 10h2.6v3H1ZM9.8 3.4a3.6 3.6 0 1 1 0 7.2 3.6 3.6 0 0 1 0-7.2ZM9.8 4.9a2.1 2.1 0 1 0 0 4.2 2.1 2.1 0 0 0 0-4.2Z'
