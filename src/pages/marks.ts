import { element, type Html } from './html.ts'

/** `checked` and `stale` are of check marks. */
export type MarkKind = 'met' | 'not-met' | 'error' | 'checked' | 'stale'

/** Own drawings on a field of 16 by 16, the same as on the screen: they differ in shape, so that no colour is needed. */
const SHAPES: Readonly<Record<MarkKind, Html>> = {
  'met': element(
    'g', { 'fill': 'none', 'stroke': 'currentColor', 'stroke-width': 1.5, 'stroke-linecap': 'round', 'stroke-linejoin': 'round' },
    element('circle', { cx: 8, cy: 8, r: 6.75 }), element('path', { d: 'M5 8.3l2.1 2.1L11.2 6' }),
  ),
  'not-met': element('path', {
    'fill': 'currentColor', 'fill-rule': 'evenodd',
    'd': 'M8 .5a7.5 7.5 0 1 1 0 15 7.5 7.5 0 0 1 0-15zM5.7 4.6 4.6 5.7 6.9 8l-2.3 2.3 1.1 1.1L8 9.1l2.3 2.3 1.1-1.1L9.1 8l2.3-2.3-1.1-1.1L8 6.9z',
  }),
  'checked': element('path', { 'fill': 'currentColor', 'd': 'M1 1h1.5v14H1zM3.8 1h1.5v14H3.8zM7 8.8l1.3-1.3 1.9 2 3.6-5.9 1.5 1-4.9 7.9z' }),
  'stale': element('path', { 'fill': 'currentColor', 'fill-rule': 'evenodd', 'd': 'M1 1h3v3.5H1zM1 6.3h3v3.5H1zM1 11.5h3V15H1zM11 3.8a4.2 4.2 0 1 1 0 8.4 4.2 4.2 0 0 1 0-8.4zm0 1.7a2.5 2.5 0 1 0 0 5 2.5 2.5 0 0 0 0-5z' }),
  'error': element('path', { 'fill': 'currentColor', 'fill-rule': 'evenodd', 'd': 'M8 .8 15.6 15H.4zM7.2 5.6v4.6h1.6V5.6zm0 5.8V13h1.6v-1.6z' }),
}

export const mark = (kind: MarkKind): Html => element('svg', { class: 'mark', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, SHAPES[kind])
