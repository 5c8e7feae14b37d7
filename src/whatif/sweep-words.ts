import { formatNumber } from '../workbook/number-format.ts'
import type { Watched } from './probe.ts'
import { printPlace } from './place.ts'
import type { SweepBegun } from './messages.ts'
import type { SweepLimit, SweepPoint } from './sweep.ts'

/** The limits of a sweep in sentences, the check that fails first before all others. */
export function sweepWords({ axes, watched }: Pick<SweepBegun, 'axes' | 'watched'>, points: readonly SweepPoint[], limits: readonly SweepLimit[]): string[] {
  const checks = watched.flatMap(({ isCheck }, at) => (isCheck ? [at] : []))
  if (checks.length === 0) return []
  return axes.length === 1 ? alongOne({ axes, watched }, checks, points, limits) : overTwo({ axes, watched }, checks, points, limits)
}

/** The name of a watched cell, with its place. */
export const calledCell = (cell: Watched): string => (cell.label === undefined ? printPlace(cell) : `${cell.label} (${printPlace(cell)})`)

/** `House suction: High, °F` */
export const axisTitle = ({ input, unitText }: SweepBegun['axes'][number]): string => withUnitText(input.label ?? printPlace(input), unitText)

export const withUnitText = (name: string, unitText: string | undefined): string => (unitText === undefined || unitText === '-' ? name : `${name}, ${unitText}`)

function alongOne({ axes, watched }: Pick<SweepBegun, 'axes' | 'watched'>, checks: readonly number[], points: readonly SweepPoint[], limits: readonly SweepLimit[]): string[] {
  const [axis] = axes
  if (axis === undefined) return []
  const direction = Math.sign((axis.numbers.at(-1) ?? 0) - (axis.numbers[0] ?? 0)) || 1
  const ordered = limits.toSorted((one, other) => (one.first - other.first) * direction)
  const failing = ordered.filter(({ from }) => from === 'met')
  const firstOf = new Map(failing.toReversed().map((limit) => [limit.watched, limit]))
  const turns = ordered.filter((limit) => limit.from !== 'met' || firstOf.get(limit.watched) !== limit)
  const failures = [...firstOf.values()].toSorted((one, other) => (one.first - other.first) * direction)
  const turned = new Set(limits.map((limit) => limit.watched))
  const quiet = checks.filter((at) => !turned.has(at))
  const never = quiet.filter((at) => points.some(({ readings }) => readings[at]?.value !== true))
  const always = quiet.length - never.length
  return [
    ...failures.map((limit, at) => `${at === 0 && failures.length > 1 ? 'First to fail: ' : ''}${turnWords(limit, watched, axis.unitText)}.`),
    ...turns.map((limit) => `${turnWords(limit, watched, axis.unitText)}.`),
    ...never.map((at) => (watched[at] === undefined ? '' : `${calledCell(watched[at])} is not met at any point.`)),
    ...(always === 0 ? [] : [always === 1 ? (failures.length + turns.length + never.length === 0 ? 'The check is met at every point.' : '1 check is met at every point.') : `${always} checks are met at every point.`]),
  ]
}

function turnWords(limit: SweepLimit, watched: readonly Watched[], unitText: string | undefined): string {
  const cell = watched[limit.watched]
  return `${cell === undefined ? '' : calledCell(cell)} turns from ${verdictWords(limit.from)} to ${verdictWords(limit.to)} at ${quantity(limit.first, unitText)}`
}

/** Each check with the stretch of the first input along which it turns, whatever the second is; those that turn come first. */
function overTwo({ axes, watched }: Pick<SweepBegun, 'axes' | 'watched'>, checks: readonly number[], points: readonly SweepPoint[], limits: readonly SweepLimit[]): string[] {
  const [along, across] = axes
  if (along === undefined || across === undefined) return []
  const turning: string[] = []
  const still: string[] = []
  const always: string[] = []
  for (const at of checks) {
    const cell = watched[at]
    if (cell === undefined) continue
    const own = limits.filter((limit) => limit.watched === at)
    const met = points.filter(({ readings }) => readings[at]?.value === true).length
    if (own.length > 0) {
      const places = own.map(({ first }) => first)
      const rows = new Set(own.map(({ row }) => row)).size
      turning.push(`${calledCell(cell)} turns at ${nameOf(along)} from ${quantity(Math.min(...places), along.unitText)} to ${quantity(Math.max(...places), along.unitText)}, at ${rows} of ${across.numbers.length} values of ${nameOf(across)}.`)
    } else if (met === points.length) always.push(calledCell(cell))
    else still.push(met === 0 ? `${calledCell(cell)} is not met at any point.` : `${calledCell(cell)} is met at ${met} of ${points.length} points; it turns with ${nameOf(across)}.`)
  }
  return [...turning, ...still, ...(always.length === 0 ? [] : [always.length === 1 ? `${always[0]} is met at every point.` : `${always.length} checks are met at every point.`])]
}

const nameOf = ({ input }: SweepBegun['axes'][number]): string => input.label ?? printPlace(input)

const quantity = (number: number, unitText: string | undefined): string => `${formatNumber(number)}${unitText === undefined || unitText === '-' ? '' : ` ${unitText}`}`

const verdictWords = (verdict: SweepLimit['from']): string => (verdict === 'none' ? 'no verdict' : verdict)
