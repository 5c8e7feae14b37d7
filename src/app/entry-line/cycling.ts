import type { Extent } from '../../workbook/formula/calls.ts'
import { referencesIn } from '../../workbook/formula/references.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'

/** A text that is being typed, and where the caret stands in it. */
export interface Typed {
  readonly text: string
  readonly caret: number
}

/**
 * The reference at the caret made absolute, then absolute in its row, in its column, and relative again:
 * C5, $C$5, C$5, $C5. Undefined where no reference is. Four times give back the text.
 */
export function cycleReference({ text, caret }: Typed): Typed | undefined {
  if (!text.startsWith('=')) return undefined
  const token = referencesIn(tokenise(text)).find(({ token: { start, end } }) => start <= caret && caret <= end)?.token
  if (!token || !standsAlone(text, token)) return undefined
  const cells = token.text.lastIndexOf('!') + 1
  const cycled = token.text.slice(0, cells) + token.text.slice(cells).split(':').map(cycleCorner).join(':')
  return { text: text.slice(0, token.start) + cycled + text.slice(token.end), caret: token.start + cycled.length }
}

/** Where two values stand side by side, a $ more or less would make others of them. */
const standsAlone = (text: string, { start, end }: Extent): boolean => APART.test(text[start - 1] ?? ' ') && APART.test(text[end] ?? ' ')
const APART = /[-+*/^&=<>%(){},;\s]/

function cycleCorner(corner: string): string {
  const [, first = '', letters = '', second = '', digits = ''] = /^(\$?)([A-Za-z]*)(\$?)([0-9]*)$/.exec(corner) ?? []
  if (letters === '' || digits === '') return `${first === '' ? '$' : ''}${letters}${digits}`
  const [column, row] = NEXT[`${first},${second}`] ?? ['', '']
  return `${column}${letters}${row}${digits}`
}

/** By what stands before the column and before the row. */
const NEXT: Readonly<Record<string, readonly [column: string, row: string]>> = {
  ',': ['$', '$'], '$,$': ['', '$'], ',$': ['$', ''], '$,': ['', ''],
}
