import { lower, rangeWords, upper } from '../../../functions/range.ts'
import { fromSi } from '../../../functions/units/convert.ts'
import { formatNumber } from '../../../functions/units/format.ts'
import { findUnit, type Unit } from '../../../functions/units/units.ts'
import type { CellContent } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { wordsOfHeading } from './heading-words.ts'
import type { ColumnUse, Condition, ListColumn, WorkbookList } from './list.ts'
import { choiceKey } from './mapping.ts'

/** What is to be said of one cell of a row. */
export interface CellRemark {
  /** Which of the list's columns, from 0. */
  readonly at: number
  readonly heading: string
  /** What stands in the file. */
  readonly found: string
  readonly why: string
  readonly accepted: string
}

/** A cell of the file as it was understood. */
export interface CellRead {
  readonly value: CellContent
  readonly found: string
  /** The SI value, where the column has a unit. */
  readonly si?: number
}

export const NOTHING: CellRead = { value: null, found: '' }

/** What the formulas of the row would not take, and what other rows have and this one lacks. */
export function checkNeeds(list: WorkbookList, isMapped: (column: ListColumn) => boolean, read: readonly CellRead[], problems: CellRemark[], marks: CellRemark[]): void {
  const textAt = (column: number): string => choiceKey(meantText(read[list.columns.findIndex((one) => one.column === column)]?.value) ?? '')
  const holds = ({ column, isOneOf, texts: wanted }: Condition): boolean => wanted.some((text) => choiceKey(text) === textAt(column)) === isOneOf
  for (const [at, column] of list.columns.entries()) {
    const one = read[at] ?? NOTHING
    // One remark a cell is enough to look at it.
    if (problems.some((problem) => problem.at === at)) continue
    const tell = (to: CellRemark[], why: string, accepted: string) => void to.push({ at, heading: column.heading, found: one.found, why, accepted })
    const uses = column.uses.filter(({ when }) => when.every(holds))
    if (one.value === null) {
      if (column.isTag) tell(problems, 'missing', 'a tag or name')
      else if (uses.some(({ certain }) => certain)) tell(problems, 'missing, and the formulas of the row need it', needed(column))
      else if (column.isAlwaysFilled && !column.isRemark && isMapped(column)) tell(marks, 'missing; all other rows of the list have it', needed(column))
      continue
    }
    const unit = column.unit === undefined ? undefined : findUnit(column.unit)
    if (one.si === undefined || !unit) continue
    const bad = badSize(column, unit, one.si, uses)
    if (bad) tell(bad.certain ? problems : marks, bad.why, bad.accepted)
  }
}

const needed = (column: ListColumn): string => (column.kind === 'choice' ? column.choices.join(', ') : column.kind === 'text' ? 'a text' : column.unit === undefined ? 'a number' : `a number with a unit such as ${column.unit}`)

interface BadSize {
  readonly why: string
  readonly accepted: string
  readonly certain: boolean
}

function badSize(column: ListColumn, unit: Unit, si: number, uses: readonly ColumnUse[]): BadSize | undefined {
  const show = (bound: number): string => `${formatNumber(fromSi(bound, unit))} ${unit.code}`
  const isSize = unit.dimension === 'length' || unit.dimension === 'area' || unit.dimension === 'volume' || unit.dimension === 'mass'
  if (isSize && si < 0) return { why: 'a size below nothing', accepted: `more than 0 ${unit.code}`, certain: true }
  if (isSize && si === 0 && uses.some(({ certain }) => certain)) return { why: 'a size of nothing', accepted: `more than 0 ${unit.code}`, certain: true }
  if (unit.dimension === 'share' && wordsOfHeading(column.heading, false).has('filled') && (si < 0 || si > 1)) {
    return { why: 'a share below nothing or above the whole', accepted: `${show(0)} to ${show(1)}`, certain: true }
  }
  for (const { range, dimension, certain, of } of uses) {
    if (!range || dimension !== unit.dimension) continue
    const { min = -Infinity, max = Infinity, above = -Infinity, below = Infinity } = range
    if (si >= lower(min) && si <= upper(max) && si > above && si < below) continue
    return { why: `out of the range of ${of ?? 'a formula'}`, accepted: rangeWords({ ...range, limit: '' }, show).replace(/\s*\(\)\s*$/, '').trim(), certain }
  }
  return undefined
}
