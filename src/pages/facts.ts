import { element, type Html } from './html.ts'

/** A line of the table of facts on a report's first page. */
export const fact = (name: string, text: string): Html =>
  element('tr', {}, element('th', { scope: 'row' }, name), element('td', { colspan: 3 }, text))

/** A name, and room to sign and to date. */
export const signature = (what: string, name: string): Html =>
  element('tr', { class: 'signature' }, element('th', { scope: 'row' }, what), element('td', { class: 'name' }, name), element('td', { class: 'line' }, element('small', {}, 'Signature')), element('td', { class: 'line' }, element('small', {}, 'Date')))
