import { unknownUnit } from '../../functions/units/quantity.ts'
import { findUnit, type Unit } from '../../functions/units/units.ts'
import { contentOf } from '../workbook/entry.ts'
import { WorkbookProblem } from '../workbook/problem.ts'
import type { Spacing } from './spacing.ts'

/** What one may write for the numbers of an input. */
const ACCEPTED = 'FROM:TO:STEP ("10:100:10"), FROM:TO with a number of points ("10:100"), FROM:TO:log for equal ratios, or a list ("1,2,5"), each with a unit after it where it is another than the cell’s ("-40:20:10 °F")'

export interface RangeText {
  readonly spacing: Spacing
  readonly unit: Unit | undefined
}

/**
 * Reads the numbers to vary an input over, as typed.
 * @param points how many, where the text gives no step
 * @throws WorkbookProblem
 */
export function readRange(text: string, points: number): RangeText {
  const { body, unit } = withUnit(text, /^\s*((?:[-+−]?[\d.]+(?:[eE][-+]?\d+)?|log|\s*[:,]\s*)+)(.*)$/s)
  if (!body.includes(':')) return { spacing: { list: body.split(',').map((one) => numberOf(one, text)) }, unit }
  const [from = '', to = '', step, ...others] = body.split(':')
  if (others.length > 0 || body.includes(',')) throw refusal(text)
  const ends = { from: numberOf(from, text), to: numberOf(to, text) }
  if (step === undefined) return { spacing: { ...ends, points }, unit }
  if (step.trim().toLowerCase() === 'log') return { spacing: { ...ends, points, ratio: true }, unit }
  return { spacing: { ...ends, step: numberOf(step, text) }, unit }
}

/** Reads `10:200`, `10:200 kW`. @throws WorkbookProblem */
export function readBounds(text: string): { readonly from: number; readonly to: number; readonly unit?: Unit | undefined } {
  const { spacing, unit } = readRange(text, 2)
  if ('list' in spacing || 'step' in spacing) throw new WorkbookProblem(`"${text}" are no bounds; accepted: FROM:TO, such as "10:200" or "10:200 kW"`)
  return { from: spacing.from, to: spacing.to, ...(unit === undefined ? {} : { unit }) }
}

/** Reads `36`, `36 psig`. @throws WorkbookProblem */
export function readNumber(text: string): { readonly number: number; readonly unit?: Unit | undefined } {
  const { body, unit } = withUnit(text, /^\s*([-+−]?(?:\d+\.?\d*|\.\d+)(?:[eE][-+]?\d+)?)(.*)$/s)
  const number = contentOf(body.trim())
  if (typeof number !== 'number') throw new WorkbookProblem(`"${text}" is no number; accepted: a number, with a unit after it where it is another than the cell’s, such as "36 psig"`)
  return { number, ...(unit === undefined ? {} : { unit }) }
}

function withUnit(text: string, pattern: RegExp): { readonly body: string; readonly unit: Unit | undefined } {
  const [, body = text, rest = ''] = pattern.exec(text) ?? []
  const unitText = rest.trim()
  if (unitText === '') return { body, unit: undefined }
  const unit = findUnit(unitText)
  if (unit === undefined) throw new WorkbookProblem(`"${text}": ${unknownUnit(unitText).message}`)
  return { body, unit }
}

function numberOf(text: string, whole: string): number {
  const number = contentOf(text.trim())
  if (typeof number !== 'number') throw refusal(whole)
  return number
}

const refusal = (text: string): WorkbookProblem => new WorkbookProblem(`"${text}" does not say which numbers; accepted: ${ACCEPTED}`)
