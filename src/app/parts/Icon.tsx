import type { JSX } from 'solid-js'

/** Own drawings on a field of 16 by 16; the words stand beside them or in the control's name. */
const PATHS = {
  undo: 'M6 3 2.5 6.5 6 10M3 6.5h6.5a3.5 3.5 0 0 1 0 7H6',
  redo: 'M10 3l3.5 3.5L10 10M13 6.5H6.5a3.5 3.5 0 0 0 0 7H10',
  close: 'M4 4l8 8M12 4l-8 8',
  down: 'M4 6.5 8 10.5 12 6.5',
} as const

export type IconName = keyof typeof PATHS

export const Icon = (props: { readonly name: IconName }): JSX.Element => (
  <svg class="icon" viewBox="0 0 16 16" aria-hidden="true"><path d={PATHS[props.name]} /></svg>
)
