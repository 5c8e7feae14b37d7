import { functionByName } from '../../../functions/catalogue.ts'
import { argumentLabel } from '../../../functions/define.ts'
import type { Feed } from '../../calc/walk.ts'
import { calls } from '../../workbook/formula/calls.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'

/**
 * A formula as it is computed: each reference gives way to what it comes to, and the arguments of our own functions are named.
 * `FEED.FLOW(load 50 TR, drum 20 °F, liquid 95 °F, unit lb/min)`.
 */
export function formulaInWords(formula: string, feeds: readonly Feed[], say: (feed: Feed) => string): string {
  const tokens = tokenise(formula)
  const names = argumentNames(formula)
  let words = ''
  let read = 1
  for (const token of tokens) {
    // Inside of what a feed has said, or the "=" in front.
    if (token.start < read) continue
    const feed = feeds.find(({ start }) => start === token.start)
    if (token.kind === 'whitespace') continue
    const name = names.get(token.start)
    if (name !== undefined) words += `${name} `
    if (feed) {
      words += say(feed)
      read = feed.end
    } else if (name !== undefined && token.kind === 'string') words += token.text.slice(1, -1)
    else words += token.kind === 'separator' ? ', ' : token.kind === 'operator' ? operatorWords(token.text, words) : token.text
  }
  return words
}

/** Where an argument of a catalogue function begins, and what it is called. */
function argumentNames(formula: string): ReadonlyMap<number, string> {
  const tokens = tokenise(formula)
  const names = new Map<number, string>()
  for (const call of calls(tokens)) {
    const labels = Object.keys(functionByName(call.name)?.arguments ?? {})
    for (const [index, { start, end }] of call.arguments.entries()) {
      const key = labels[index]
      const first = tokens.find((token) => token.kind !== 'whitespace' && token.start >= start && token.end <= end)
      if (key !== undefined && first) names.set(first.start, argumentLabel(key))
    }
  }
  return names
}

const SIGNS: Readonly<Record<string, string>> = { '*': '×', '/': '÷', '-': '−', '<=': '≤', '>=': '≥', '<>': '≠' }

/** With room on both sides between two values; a sign before a value, a power and a percent stand close. */
function operatorWords(operator: string, before: string): string {
  const sign = SIGNS[operator] ?? operator
  const isBetween = operator !== '^' && operator !== '%' && /[^\s(,{×÷+−<>=≤≥≠&]\s*$/.test(before)
  return isBetween ? ` ${sign} ` : sign
}
