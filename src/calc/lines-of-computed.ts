import { isReferenceKind, type Token } from '../workbook/formula/tokenise.ts'

/**
 * ROWS and COLUMNS of a reference look at where it stands and not at what stands there, so they wait for nothing, not even for themselves. Of a defined name,
 * or of what a function gives, there is no size before it is computed, and the engine ends in the attempt: those go by functions that wait.
 */
export const LINES_OF_COMPUTED = { ROWS: 'ROWS.COMPUTED', COLUMNS: 'COLUMNS.COMPUTED' } as const

/** The function that counts in place of the one that the token names; undefined where it names none of the two, or is given a plain reference. */
export function countsLinesOfComputed(tokens: readonly Token[], index: number): string | undefined {
  const token = tokens[index]
  if (token?.kind !== 'function') return undefined
  const name = token.text.toUpperCase()
  if (name !== 'ROWS' && name !== 'COLUMNS') return undefined
  const given: Token[] = []
  let depth = 0
  for (const one of tokens.slice(index + 1)) {
    if (one.kind === 'open') depth++
    else if (one.kind === 'close') depth--
    else if (one.kind !== 'whitespace') given.push(one)
    if (depth === 0) break
  }
  const [only] = given
  return only === undefined || (given.length === 1 && isReferenceKind(only.kind)) ? undefined : LINES_OF_COMPUTED[name]
}
