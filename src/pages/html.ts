/** Markup that is safe to insert: made by `element`, or for drawings by `sceneText`, which escape every text and value they are given. */
export interface Html {
  readonly markup: string
}

export type Child = Html | string | undefined | readonly Child[]
type Attributes = Readonly<Record<string, string | number | undefined>>

/** An element; attributes that are undefined are left off, and so are children. */
export function element(tag: string, attributes: Attributes, ...children: readonly Child[]): Html {
  const written = Object.entries(attributes).map(([name, value]) => (value === undefined ? '' : ` ${name}="${escaped(String(value))}"`))
  const start = `<${tag}${written.join('')}>`
  return { markup: VOID.has(tag) ? start : `${start}${markupOf(children)}</${tag}>` }
}

/** Elements that have no end and hold nothing. */
const VOID: ReadonlySet<string> = new Set(['col'])

function markupOf(child: Child): string {
  if (child === undefined) return ''
  if (typeof child === 'string') return escaped(child)
  return isList(child) ? child.map(markupOf).join('') : child.markup
}

const isList = (child: Html | readonly Child[]): child is readonly Child[] => Array.isArray(child)

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' }
const escaped = (text: string): string => text.replace(/[&<>"']/g, (character) => ENTITIES[character] ?? '')
