import { findUnit, units, type Unit } from '../../functions/units/units.ts'
import { formatNumber } from '../../functions/units/format.ts'
import type { Check } from './values.ts'
import { tokenise, type Token } from '../workbook/formula/tokenise.ts'

const COMPARISONS = ['<=', '>=', '<', '>', '=', '<>'] as const
export type Comparison = (typeof COMPARISONS)[number]

/** A check's formula as its two sides, where it is one comparison at the outermost level. */
export interface Sides {
  readonly left: string
  readonly comparison: Comparison
  readonly right: string
}

export function sidesOf(formula: string): Sides | undefined {
  let depth = 0
  const found: Token[] = []
  for (const token of tokenise(formula)) {
    if (token.kind === 'open' || token.kind === 'openBrace') depth++
    if (token.kind === 'close' || token.kind === 'closeBrace') depth--
    if (depth === 0 && token.kind === 'operator' && isComparison(token.text)) found.push(token)
  }
  const [only] = found
  if (only === undefined || found.length > 1) return undefined
  return { left: `=${formula.slice(1, only.start)}`, comparison: only.text as Comparison, right: `=${formula.slice(only.end)}` }
}

const isComparison = (text: string): text is Comparison => (COMPARISONS as readonly string[]).includes(text)

/** +1 where a larger left side meets the check, −1 where a smaller one does; equality has no margin. */
const TOWARDS: Readonly<Record<Comparison, 1 | -1 | 0>> = { '>': 1, '>=': 1, '<': -1, '<=': -1, '=': 0, '<>': 0 }

/**
 * A check in words with its margin, in the unit that stands beside the compared cell; a share of the right side is added
 * where zero means nothing of the thing (not for temperatures and gauge pressures).
 */
export function describeCheck(met: boolean, left: number, comparison: Comparison, right: number, unitText: string | undefined): Check {
  const towards = TOWARDS[comparison]
  if (towards === 0) return plainCheck(met)
  const reach = towards * (left - right)
  // The engine takes numbers that differ in their last digits for equal.
  const difference = met === reach >= 0 ? reach : 0
  const unit = unitText === undefined ? undefined : findUnit(unitText)
  const proportional = unit !== undefined && isProportional(unit) && right !== 0
  const share = proportional ? difference / Math.abs(right) : undefined
  const size = `${formatNumber(Number(Math.abs(difference).toPrecision(3)))} ${differenceUnit(unit) ?? unitText ?? ''}`.trimEnd()
  // "17 % (21 %)" would puzzle, and a share above 200 % says less than the size.
  const inShare = share === undefined || unit?.code === '%' || Math.abs(share) > MOST_SHOWN ? '' : ` (${formatNumber(Number((Math.abs(share) * 100).toPrecision(2)))} %)`
  const words = difference === 0 ? `${met ? 'met' : 'not met'}, exactly at the limit` : met ? `met, ${size}${inShare} to spare` : `not met by ${size}${inShare}`
  return share === undefined ? { met, words } : { met, words, margin: share }
}

const MOST_SHOWN = 2

/** Whether zero means nothing of the thing, so that one number can be a share of another: not for temperatures and gauge pressures. */
export const isProportional = ({ gauge, dimension }: Unit): boolean => !gauge && dimension !== 'temperature'

/** A difference of two temperatures is no temperature, one of two gauge or absolute pressures a plain pressure. */
export function differenceUnit(unit: Unit | undefined): string | undefined {
  if (unit === undefined) return undefined
  if (unit.code === '-') return ''
  if (unit.dimension === 'temperature') return `Δ${unit.code}`
  if (unit.dimension !== 'pressure') return unit.code
  return units.find(({ dimension, gauge, factor }) => dimension === 'pressure' && !gauge && factor === Math.abs(unit.factor))?.code
}

export const plainCheck = (met: boolean): Check => ({ met, words: met ? 'met' : 'not met' })
