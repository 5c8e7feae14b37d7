import { STANDARD_ATMOSPHERE_PA } from '../../../functions/units/constants.ts'
import { toSi } from '../../../functions/units/convert.ts'
import { findUnit, type Unit } from '../../../functions/units/units.ts'
import { isCellError, type CellValue } from '../../calc/values.ts'
import type { CellPlace } from '../../workbook/cell-place.ts'
import { eachCell } from '../../workbook/cells.ts'
import { numberIn } from '../../workbook/restate.ts'
import type { Effect } from './difference.ts'
import { isComparable } from './same-quantity.ts'
import type { Sides } from './sides.ts'

/** Relative: less is what another order of adding up may leave. */
const AS_GOOD_AS_SAME = 1e-9

export interface Effects {
  readonly effects: readonly Effect[]
  /** How many results and checks were held against each other. */
  readonly compared: number
}

/** What the differences do to the results and checks that both have, or to those that are chosen, by their places now: these are told even where they stay the same. */
export function effectsOn(sides: Sides, chosen: readonly CellPlace[] | undefined): Effects {
  if (chosen !== undefined && chosen.length > 0) return { effects: chosen.map((place) => effectAt(sides, place)), compared: chosen.length }
  const effects: Effect[] = []
  let compared = 0
  for (const sheet of sides.now.workbook.sheets) {
    eachCell(sheet, ({ role }, row, column) => {
      if (role !== 'result' && role !== 'check') return
      const place = { sheet: sheet.name, row, column }
      const before = sides.back.place(place)
      if (before === undefined || sides.before.cell(before) === undefined) return
      compared++
      const [was, is] = [sides.before.value(before), sides.now.value(place)]
      // Most results stay as they are, to the last digit and with their unit.
      if (was === is && typeof was !== 'number') return
      if (!sameValue(was, sides.before.unitAt(before), is, sides.now.unitAt(place))) effects.push(effectAt(sides, place))
    })
  }
  return { effects: effects.toSorted((one, other) => rank(other) - rank(one)), compared }
}

function effectAt(sides: Sides, now: CellPlace): Effect {
  const there = sides.back.place(now)
  const before = there && sides.before.cell(there) ? there : undefined
  const [was, is] = [before ? sides.before.value(before) : null, sides.now.value(now)]
  const [unitBefore, unit] = [before && sides.before.unitAt(before), sides.now.unitAt(now)]
  const isCheck = sides.now.cell(now)?.role === 'check'
  return {
    before, now, label: sides.now.label(now), unitBefore, unit, was, is, ...changeOf(was, unitBefore, is, unit),
    turned: isCheck && typeof was === 'boolean' && typeof is === 'boolean' && was !== is,
  }
}

/** Most important first: checks that turned, those no longer met before those met now; errors that came; then by how much. */
function rank({ turned, was, is, change, step, unit }: Effect): number {
  if (turned) return is === false ? 6e300 : 5e300
  if (isCellError(is) !== isCellError(was)) return isCellError(is) ? 4e300 : 3e300
  if (step !== undefined && typeof was === 'number' && typeof is === 'number') return Math.abs(step / fromTrueZero(is, findUnit(unit ?? '')))
  if (change !== undefined) return Math.min(Math.abs(change), 1e300)
  return typeof was === 'number' && typeof is === 'number' ? 2e300 : -1
}

function sameValue(was: CellValue, unitBefore: string | undefined, is: CellValue, unit: string | undefined): boolean {
  if (isCellError(was) || isCellError(is)) return isCellError(was) && isCellError(is) && was.error === is.error
  if (typeof was !== 'number' || typeof is !== 'number') return was === is
  const there = inUnit(was, unitBefore, unit)
  return there !== undefined && Math.abs(is - there) <= AS_GOOD_AS_SAME * Math.max(Math.abs(there), Math.abs(is))
}

function changeOf(was: CellValue, unitBefore: string | undefined, is: CellValue, unit: string | undefined): Pick<Effect, 'change' | 'step'> {
  if (typeof was !== 'number' || typeof is !== 'number') return { change: undefined }
  const there = inUnit(was, unitBefore, unit)
  if (there !== undefined && hasAgreedZero(findUnit(unit ?? ''))) return { change: undefined, step: is - there }
  return { change: there === undefined || there === 0 ? undefined : (is - there) / Math.abs(there) }
}

const hasAgreedZero = (unit: Unit | undefined): boolean => unit !== undefined && (unit.offset !== 0 || unit.gauge)

/** A number counted from where its quantity is none, in the same steps; the site's atmosphere as good as the standard one. */
const fromTrueZero = (number: number, unit: Unit | undefined): number =>
  unit === undefined ? number : Math.max(LEAST_FROM_ZERO, Math.abs(toSi(number, unit, STANDARD_ATMOSPHERE_PA) / unit.factor))

const LEAST_FROM_ZERO = 1e-3

/** The number before in the unit of now; undefined where it has none that can be held against it. */
function inUnit(number: number, before: string | undefined, now: string | undefined): number | undefined {
  if (before === now) return number
  const [from, to] = [findUnit(before ?? ''), findUnit(now ?? '')]
  if (from === undefined || to === undefined || !isComparable(from, to)) return undefined
  return from.code === to.code ? number : numberIn(number, from, to)
}
