import { withUnit } from './quantity-words.ts'
import { calledCell } from './place.ts'
import type { Watched } from './probe.ts'
import { printCellPlace } from '../workbook/cell-place.ts'
import type { SweepBegun } from './messages.ts'
import type { SweepLimit, SweepPoint } from './sweep.ts'

/** The limits of a sweep in sentences, the check that fails first before all others. */
export function sweepWords({ axes, watched }: Pick<SweepBegun, 'axes' | 'watched'>, points: readonly SweepPoint[], limits: readonly SweepLimit[]): string[] {
  const checks = watched.flatMap(({ isCheck }, at) => (isCheck ? [at] : []))
  if (checks.length === 0) return []
  return axes.length === 1 ? alongOne({ axes, watched }, checks, points, limits) : overTwo({ axes, watched }, checks, points, limits)
}

/** `House suction: High, °F` */
export const axisTitle = ({ input, unitText }: SweepBegun['axes'][number]): string => withUnitText(input.label ?? printCellPlace(input), unitText)

export const withUnitText = (name: string, unitText: string | undefined): string => (unitText === undefined || unitText === '-' ? name : `${name}, ${unitText}`)

function alongOne({ axes, watched }: Pick<SweepBegun, 'axes' | 'watched'>, checks: readonly number[], points: readonly SweepPoint[], limits: readonly SweepLimit[]): string[] {
  const [axis] = axes
  if (axis === undefined) return []
  const failures = failuresInOrder(axis, limits)
  const turns = inOrder(axis, limits).filter((limit) => !failures.includes(limit))
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

/** Where each check first fails along one input, in the direction of the sweep: the first to fail before all others. */
export function failuresInOrder(axis: Pick<SweepBegun['axes'][number], 'numbers'>, limits: readonly SweepLimit[]): readonly SweepLimit[] {
  const failed = new Set<number>()
  return inOrder(axis, limits).filter(({ watched, from }) => from === 'met' && !failed.has(watched) && failed.add(watched))
}

function inOrder({ numbers }: Pick<SweepBegun['axes'][number], 'numbers'>, limits: readonly SweepLimit[]): readonly SweepLimit[] {
  const direction = Math.sign((numbers.at(-1) ?? 0) - (numbers[0] ?? 0)) || 1
  return limits.toSorted((one, other) => (one.first - other.first) * direction)
}

function turnWords(limit: SweepLimit, watched: readonly Watched[], unitText: string | undefined): string {
  const cell = watched[limit.watched]
  return `${cell === undefined ? '' : calledCell(cell)} turns from ${verdictWords(limit.from)} to ${verdictWords(limit.to)} at ${withUnit(limit.first, unitText)}`
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
      turning.push(`${calledCell(cell)} turns at ${nameOf(along)} from ${withUnit(Math.min(...places), along.unitText)} to ${withUnit(Math.max(...places), along.unitText)}, at ${rows} of ${across.numbers.length} values of ${nameOf(across)}.`)
    } else if (met === points.length) always.push(calledCell(cell))
    else still.push(met === 0 ? `${calledCell(cell)} is not met at any point.` : `${calledCell(cell)} is met at ${met} of ${points.length} points; it turns with ${nameOf(across)}.`)
  }
  return [...turning, ...still, ...(always.length === 0 ? [] : [always.length === 1 ? `${always[0]} is met at every point.` : `${always.length} checks are met at every point.`])]
}

const nameOf = ({ input }: SweepBegun['axes'][number]): string => input.label ?? printCellPlace(input)

const verdictWords = (verdict: SweepLimit['from']): string => (verdict === 'none' ? 'no verdict' : verdict)
