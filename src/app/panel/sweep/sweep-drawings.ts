import type { Drawing } from '../../../figures/drawing.ts'
import type { Plot } from '../../../figures/plot-frame.ts'
import type { Faults } from '../../../figures/read-parts.ts'
import { drawSweepChecks, type Stretch } from '../../../figures/sweep-checks.ts'
import { drawSweepField } from '../../../figures/sweep-field.ts'
import { drawSweepLines, MOST_LINES } from '../../../figures/sweep-lines.ts'
import { verdictOf } from '../../../whatif/verdict.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import type { Watched } from '../../../whatif/probe.ts'
import { axisTitle, withUnitText } from '../../../whatif/sweep-words.ts'
import type { SweepFound } from './sweep-state.ts'

export interface SweepDrawing {
  readonly name: string
  readonly drawn: (Drawing & { readonly plot: Plot }) | Faults
}

/** More limits in one figure cannot be told apart. */
const MOST_LIMITS = 4

/** Results of one input as lines, those of one unit together, and the checks below them. */
export function lineDrawings({ begun, points, limits }: SweepFound, widthPx: number): SweepDrawing[] {
  const [axis] = begun.axes
  if (axis === undefined) return []
  const given = points.map((point) => point.given[0] ?? Number.NaN)
  const ordered = points.toSorted((one, other) => (one.given[0] ?? 0) - (other.given[0] ?? 0))
  const results = begun.watched.flatMap((cell, at) => (cell.isCheck ? [] : [{ cell, at }]))
  const unitTexts = [...new Set(results.map(({ cell }) => cell.unitText ?? ''))]
  const groups = unitTexts.map((unit) => ({ unit, members: results.filter(({ cell }) => (cell.unitText ?? '') === unit) })).flatMap(({ unit, members }) => Array.from({ length: Math.ceil(members.length / MOST_LINES) }, (_, part) => ({ unit, members: members.slice(part * MOST_LINES, (part + 1) * MOST_LINES) })))
  const turns = limits.slice(0, MOST_LIMITS).map((limit) => ({ name: nameOf(begun.watched[limit.watched]), at: limit.first }))
  const lines = groups.map(({ unit, members }): SweepDrawing => ({
    name: members.map(({ cell }) => nameOf(cell)).join('; '),
    drawn: drawSweepLines({
      x: { title: axisTitle(axis), numbers: given }, yTitle: unit === '-' ? '' : unit,
      lines: members.map(({ cell, at }) => ({ name: nameOf(cell), values: points.map(({ readings }) => numberOf(readings[at]?.value)) })), limits: turns,
    }, widthPx),
  }))
  const checks = begun.watched.flatMap((cell, at) => (cell.isCheck ? [{ name: nameOf(cell), at, stretches: stretchesOf(at) }] : []))
  if (checks.length === 0) return lines
  const turned = checks.filter(({ stretches }) => stretches.length > 1)
  const drawn = turned.length > 0 ? turned : checks
  return [...lines, {
    name: turned.length > 0 ? 'Checks that turn' : 'Checks',
    drawn: drawSweepChecks({ title: axisTitle(axis), from: given.reduce((least, one) => Math.min(least, one), Infinity), to: given.reduce((most, one) => Math.max(most, one), -Infinity), checks: drawn }, widthPx),
  }]

  function stretchesOf(check: number): Stretch[] {
    const own = limits.filter(({ watched }) => watched === check)
    const stretches: { from: number; to: number; says: Stretch['says'] }[] = []
    for (const point of ordered) {
      const number = point.given[0] ?? Number.NaN
      const says = verdictOf(point.readings[check]?.value ?? null)
      const last = stretches.at(-1)
      if (last?.says === says) last.to = number
      else {
        const turn = last === undefined ? number : (own.find(({ first }) => first >= last.to && first <= number)?.first ?? (last.to + number) / 2)
        if (last !== undefined) last.to = turn
        stretches.push({ from: turn, to: number, says })
      }
    }
    return stretches
  }
}

/** One watched cell over two inputs; where only checks are watched, how many are not met. */
export function fieldDrawing({ begun, points, limits }: SweepFound, pictured: number | undefined, widthPx: number): SweepDrawing[] {
  const [along, across] = begun.axes
  if (along === undefined || across === undefined) return []
  const shown = pictured ?? begun.watched.findIndex(({ isCheck }) => !isCheck)
  const cell = begun.watched[shown]
  const checks = begun.watched.flatMap(({ isCheck }, at) => (isCheck ? [at] : []))
  const values = across.numbers.map((): (number | undefined)[] => along.numbers.map(() => undefined))
  for (const { at: [column = 0, row = 0], readings } of points) {
    const line = values[row]
    if (line !== undefined) line[column] = cell === undefined ? checks.filter((at) => readings[at]?.value !== true).length : numberOf(readings[shown]?.value)
  }
  const turning = [...new Set(limits.map(({ watched }) => watched))].slice(0, MOST_LIMITS)
  const name = cell === undefined ? 'Checks not met' : withUnitText(nameOf(cell), cell.unitText)
  return [{
    name,
    drawn: drawSweepField({
      name, x: { title: axisTitle(along), numbers: along.numbers }, y: { title: axisTitle(across), numbers: across.numbers }, values,
      limits: turning.map((at) => ({ name: nameOf(begun.watched[at]), points: limits.filter(({ watched }) => watched === at).map(({ first, row }) => ({ x: first, y: across.numbers[row] ?? Number.NaN })) })),
    }, widthPx),
  }]
}

const numberOf = (value: unknown): number | undefined => (typeof value === 'number' ? value : undefined)

const nameOf = (cell: Watched | undefined): string => (cell === undefined ? '' : (cell.label ?? printCellPlace(cell)))
