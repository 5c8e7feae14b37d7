import { bodies } from './bodies.ts'
import { element, type Html } from './html.ts'

/** A table under a heading that does not stand alone at the end of a page. */
export const listing = (heading: string, name: string, header: readonly string[], rows: readonly Html[]): Html => element(
  'table', { class: `listing ${name}` },
  element('caption', {}, element('h2', {}, heading)),
  element('thead', {}, element('tr', {}, header.map((text) => element('th', { scope: 'col' }, text)))),
  bodies(rows),
)
