import type { CellContent } from './document.ts'

/**
 * What typed text means. Numbers in common forms (-3.5, .5, 4., 1E-5, +4, a typographic minus), TRUE and FALSE in any
 * case, "=" for a formula, "'" for literal text, kept as typed; anything else is text as typed ("1,234", "5%", "31 °F").
 * What a number could not give back stays text: leading zeros, and whole numbers of more digits than a number holds.
 * Nothing, or blanks alone, is null.
 */
export function contentOf(typed: string): CellContent {
  if (typed.startsWith('=') || typed.startsWith("'")) return typed
  const trimmed = typed.trim()
  if (trimmed === '') return null
  if (/^true$/i.test(trimmed)) return true
  if (/^false$/i.test(trimmed)) return false
  return numberOf(trimmed) ?? typed
}

/** What the entry line shows for a content; committed unchanged, it gives the same content. */
export function entryOf(content: CellContent): string {
  if (content === null) return ''
  if (typeof content === 'boolean') return content ? 'TRUE' : 'FALSE'
  return typeof content === 'number' ? String(content) : textContent(content)
}

/** Content that means exactly this text: a "'" is put before what would be read as a number, a truth value or nothing. */
export function textContent(text: string): string {
  return contentOf(text) === text ? text : `'${text}`
}

/** Content that means exactly this text, even where the text itself begins with "=" or "'". */
export function literalContent(text: string): string | null {
  if (text === '') return null
  return text.startsWith('=') || text.startsWith("'") ? `'${text}` : textContent(text)
}

/** The text that a text content means; undefined for a formula, a number, a truth value or nothing. */
export function meantText(content: CellContent | undefined): string | undefined {
  if (typeof content !== 'string' || content.startsWith('=')) return undefined
  return content.startsWith("'") ? content.slice(1) : content
}

const NUMBER = /^[+\-\u2212]?(?:[0-9]+\.?[0-9]*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?$/

function numberOf(trimmed: string): number | undefined {
  if (!NUMBER.test(trimmed)) return undefined
  if (/^[+\-\u2212]?0[0-9]/.test(trimmed)) return undefined
  const value = Number(trimmed.replace('\u2212', '-'))
  if (!Number.isFinite(value)) return undefined
  const digits = trimmed.replace(/^[+\-\u2212]/, '')
  if (/^[0-9]{16,}$/.test(digits) && String(Math.abs(value)) !== digits) return undefined
  return value === 0 ? 0 : value
}
