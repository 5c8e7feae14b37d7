import { WorkbookProblem } from '../workbook/problem.ts'

/** Points of a sweep along one input, and of both together. */
export const MOST_POINTS = 100_000

/** Where an input is looked at: by a step, by how many points, in equal steps or equal ratios, or one by one. */
export type Spacing =
  | { readonly from: number; readonly to: number; readonly step: number }
  | { readonly from: number; readonly to: number; readonly points: number; readonly ratio?: boolean }
  | { readonly list: readonly number[] }

/**
 * The numbers, both ends included. By a step each is the nearest double to what one would write by hand (0.3, not 0.30000000000000004), and
 * the last is the last that does not go beyond `to`. A range may run downwards; the sign of the step does not matter.
 * @throws WorkbookProblem
 */
export function spaced(spacing: Spacing): number[] {
  if ('list' in spacing) return listed(spacing.list)
  const { from, to } = spacing
  refuseNoNumber([from, to])
  if ('step' in spacing) return stepped(from, to, spacing.step)
  return spacing.ratio === true ? inRatios(from, to, spacing.points) : inSteps(from, to, spacing.points)
}

function listed(list: readonly number[]): number[] {
  refuseNoNumber(list)
  if (list.length === 0) throw new WorkbookProblem('there is no value to vary over; accepted: one or more numbers')
  refuseTooMany(list.length)
  return [...list]
}

function stepped(from: number, to: number, step: number): number[] {
  if (!Number.isFinite(step) || step === 0) throw new WorkbookProblem(`a step of ${step} leads nowhere; accepted: a number other than 0`)
  const size = Math.abs(step) * (to < from ? -1 : 1)
  const count = Math.floor(((to - from) / size) * (1 + 1e-12) + 1e-9) + 1
  refuseTooMany(count)
  const decimals = Math.max(decimalsOf(from), decimalsOf(step))
  return Array.from({ length: count }, (_, at) => asWritten(from + at * size, decimals))
}

function inSteps(from: number, to: number, points: number): number[] {
  refusePoints(points)
  if (points === 1) return [from]
  return Array.from({ length: points }, (_, at) => (at === points - 1 ? to : clean(from + (at / (points - 1)) * (to - from), Math.max(Math.abs(from), Math.abs(to)))))
}

function inRatios(from: number, to: number, points: number): number[] {
  refusePoints(points)
  if (!(from * to > 0)) throw new WorkbookProblem(`from ${from} to ${to} there are no equal ratios; accepted: two numbers above 0, or two below`)
  if (points === 1) return [from]
  return Array.from({ length: points }, (_, at) => (at === points - 1 ? to : clean(from * (to / from) ** (at / (points - 1)), 0)))
}

/** Rounding errors of the arithmetic taken off: 15 digits, and no 1e-17 where 0 is meant. */
const clean = (value: number, scale: number): number => (Math.abs(value) < 1e-15 * scale ? 0 : Number(value.toPrecision(15)) + 0)

const asWritten = (value: number, decimals: number): number => (decimals > MOST_DECIMALS ? clean(value, 0) : Number(value.toFixed(decimals)) + 0)
const MOST_DECIMALS = 15

/** How many decimal places it takes to write a number. */
function decimalsOf(value: number): number {
  const [digits = '', power = '0'] = String(value).split('e')
  return Math.max(0, (digits.split('.')[1] ?? '').length - Number(power))
}

function refuseNoNumber(values: readonly number[]): void {
  const odd = values.find((value) => !Number.isFinite(value))
  if (odd !== undefined) throw new WorkbookProblem(`${odd} is no number to vary over; accepted: finite numbers`)
}

function refusePoints(points: number): void {
  if (!Number.isInteger(points) || points < 1) throw new WorkbookProblem(`${points} points; accepted: a whole number from 1 to ${MOST_POINTS}`)
  refuseTooMany(points)
}

function refuseTooMany(count: number): void {
  if (count > MOST_POINTS) throw new WorkbookProblem(`${count} points along one input; accepted: up to ${MOST_POINTS}: take a larger step`)
}
