import type { JSX } from 'solid-js'

/** A shape of its own for a good mark, and for a stale one, before its word: a full square with a tick in it; the outline of one, struck through. */
export const MarkSign = (props: { readonly isGood: boolean }): JSX.Element => (
  <svg class="mark-sign" classList={{ stale: !props.isGood }} viewBox="0 0 14 14" aria-hidden="true"><path d={props.isGood ? GOOD : STALE} /></svg>
)

const GOOD = 'M1 1h12v12H1ZM3 7.2 6 10.4 11.2 4.6 10.1 3.6 6 8.2 4.1 6.2Z'
const STALE = 'M1 1h12v12H1ZM2.4 2.4v9.2h9.2V2.4ZM3.6 9.4 9.4 3.6 10.4 4.6 4.6 10.4Z'
