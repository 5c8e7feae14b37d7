import { findUnit, type Unit } from '../../../functions/units/units.ts'
import { printCellPlace, type CellPlace } from '../../workbook/cell-place.ts'
import type { GivenTolerance, Tolerance } from '../../workbook/given-tolerances.ts'
import type { Found } from './found.ts'
import { sameNumbers } from './same-quantity.ts'
import type { Side, Sides } from './sides.ts'
import { toleranceWords } from './words.ts'

/** What inputs may be off, where someone has said so: in cells that both workbooks have. */
export function toleranceDifferences(sides: Sides): Found[] {
  const left = new Map((sides.now.workbook.tolerances ?? []).map((one) => [printCellPlace(one.place), one]))
  const found = (sides.before.workbook.tolerances ?? []).flatMap((was): Found[] => {
    const place = sides.way.place(was.place)
    if (!place) return []
    const is = left.get(printCellPlace(place))
    left.delete(printCellPlace(place))
    return is && sameTolerance(sides, was, is) ? [] : [difference(sides, was.place, place, was, is)]
  })
  const others = [...left.values()].flatMap((is): Found[] => {
    const before = sides.back.place(is.place)
    return before ? [difference(sides, before, is.place, undefined, is)] : []
  })
  return [...found, ...others]
}

function difference(sides: Sides, before: CellPlace, now: CellPlace, was: GivenTolerance | undefined, is: GivenTolerance | undefined): Found {
  return {
    kind: 'tolerance', sheet: now.sheet, now, before, label: sides.now.label(now),
    was: was ? toleranceWords(was.tolerance, sides.before.unitAt(before)) : USUAL, is: is ? toleranceWords(is.tolerance, sides.now.unitAt(now)) : USUAL,
    accept: { words: was ? 'Gives the input that tolerance again.' : 'Gives the input the usual tolerance again.' }, subject: { of: 'tolerance' },
  }
}

const USUAL = 'the usual tolerance'

/** Sizes in two units of one dimension are the same where the steps are: a tolerance has no zero point. */
export function sameTolerance({ before, now }: { readonly before: Side; readonly now: Side }, one: GivenTolerance, other: GivenTolerance): boolean {
  const [first, second]: readonly Tolerance[] = [one.tolerance, other.tolerance]
  if (first?.kind === 'share' || second?.kind === 'share') return first?.kind === second?.kind && first?.kind === 'share' && second?.kind === 'share' && first.share === second.share
  if (first === undefined || second === undefined) return false
  if (first.size === second.size) return true
  const [from, to] = [stepUnit(before.unitAt(one.place)), stepUnit(now.unitAt(other.place))]
  return from !== undefined && to !== undefined && from.code !== to.code && sameNumbers(first.size, from, second.size, to)
}

function stepUnit(text: string | undefined): Unit | undefined {
  const unit = text === undefined ? undefined : findUnit(text)
  return unit && { ...unit, factor: Math.abs(unit.factor), offset: 0, gauge: false }
}
