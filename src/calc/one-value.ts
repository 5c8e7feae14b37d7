import { catalogue } from '../../functions/catalogue.ts'
import { calls } from '../workbook/formula/calls.ts'
import type { Token, TokenKind } from '../workbook/formula/tokenise.ts'

/** Called around a formula that may come to a block of values, so that its cell shows one value or says why there is none. */
export const ONE_VALUE = 'ONE.VALUE'

/** Functions that come to one value whatever blocks they are given. */
const TO_ONE = new Set([
  ...catalogue.map(({ name }) => name),
  'SUM', 'SUMPRODUCT', 'SUMSQ', 'COUNT', 'COUNTA', 'COUNTBLANK', 'AVERAGE', 'MAX', 'MIN', 'MEDIAN', 'PRODUCT', 'AND', 'OR', 'ROWS', 'COLUMNS',
])
/** Functions that may come to a block without being given one. */
const FROM_NOTHING = new Set(['SEQUENCE', 'ARRAYFORMULA', 'TRANSPOSE', 'MMULT', 'FILTER'])
const BLOCKS: ReadonlySet<TokenKind> = new Set<TokenKind>(['range', 'wholeColumns', 'wholeRows', 'openBrace', 'name'])

/**
 * Whether a formula may come to more than one value: something in it may be a block that no function brings down to one. The engine
 * would let it run on over its neighbours, and loses track of such blocks as cells around them change.
 */
export function mayBeBlock(tokens: readonly Token[]): boolean {
  const safe = calls(tokens).filter(({ name }) => TO_ONE.has(name.toUpperCase()))
  return tokens.some(
    ({ kind, text, start }) =>
      (BLOCKS.has(kind) || (kind === 'function' && FROM_NOTHING.has(text.toUpperCase()))) && !safe.some((call) => call.start < start && start < call.end),
  )
}
