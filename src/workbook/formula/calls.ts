import type { Token } from './tokenise.ts'

/** A stretch of the formula's text, `end` not included. */
export interface Extent {
  readonly start: number
  readonly end: number
}

export interface Call extends Extent {
  /** As typed. */
  readonly name: string
  /** One for each place between "(", the commas and ")", blanks included; none for `F()`. */
  readonly arguments: readonly Extent[]
  /** How many calls it stands in. */
  readonly depth: number
  /** False while its ")" is missing. */
  readonly closed: boolean
}

/** The function calls of a formula in the order of their names; commas in texts, parentheses and braces are not counted. */
export function calls(tokens: readonly Token[]): Call[] {
  const found: (Call | undefined)[] = []
  const open: Frame[] = []

  for (const [index, token] of tokens.entries()) {
    const frame = open.at(-1)
    if (token.kind === 'open') {
      const before = tokens[index - 1]
      if (before?.kind === 'function') {
        const slot = found.push(undefined) - 1
        const depth = open.filter(({ call }) => call).length
        open.push({ closer: 'close', call: { slot, depth, name: before.text, start: before.start, arguments: [], argumentStart: token.end } })
      } else open.push({ closer: 'close' })
    } else if (token.kind === 'openBrace') open.push({ closer: 'closeBrace' })
    else if (token.kind === 'separator' && frame?.call) endArgument(frame.call, token)
    else if (token.kind === 'close' || token.kind === 'closeBrace') closeDownTo(token.kind, token)
  }
  const end = tokens.at(-1)?.end ?? 0
  while (open.length > 0) finish(open.pop(), { start: end, end }, false)
  return found.filter((call) => call !== undefined)

  /** A stray closer closes nothing; one that skips others closes those too, as far as they go. */
  function closeDownTo(closer: Frame['closer'], token: Extent): void {
    const target = open.findLastIndex((frame) => frame.closer === closer)
    if (target < 0) return
    while (open.length > target + 1) finish(open.pop(), { start: token.start, end: token.start }, false)
    finish(open.pop(), token, true)
  }

  function finish(frame: Frame | undefined, token: Extent, closed: boolean): void {
    if (!frame?.call) return
    const { slot, name, start, depth, argumentStart, arguments: extents } = frame.call
    const blank = tokens.every((other) => other.kind === 'whitespace' || other.start < argumentStart || other.end > token.start)
    if (extents.length > 0 || !blank || !closed) endArgument(frame.call, token)
    found[slot] = { name, start, end: token.end, arguments: extents, depth, closed }
  }
}

interface Frame {
  readonly closer: 'close' | 'closeBrace'
  readonly call?: {
    readonly slot: number
    readonly depth: number
    readonly name: string
    readonly start: number
    readonly arguments: Extent[]
    argumentStart: number
  }
}

function endArgument(call: NonNullable<Frame['call']>, at: Extent): void {
  call.arguments.push({ start: call.argumentStart, end: at.start })
  call.argumentStart = at.end
}
