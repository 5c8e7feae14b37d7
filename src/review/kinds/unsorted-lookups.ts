import type { CellValue } from '../../calc/values.ts'
import { foldCase } from '../../workbook/document.ts'
import type { FindingKind } from '../finding.ts'
import { lookupsOf, valuesIn, type Lookup } from '../lookups.ts'
import { merge, type CellFound } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** Searches that halve a list which is in no order. */
export const unsortedLookups: FindingKind = {
  kind: 'unsorted-lookups',
  heading: 'Lookups in lists that are in no order',
  about: 'Without an exact match, a lookup takes its list to rise, or with −1 to fall, and gives any row where it does not. By the values as they are now.',
  find(survey) {
    const known = new Map<string, boolean>()
    return merge(survey.formulas.flatMap(({ sheet, row, column, formula }): CellFound[] => {
      const one = lookupsOf(survey, formula, sheet).find((lookup) => lookup.match !== 'exact' && !isInOrder(survey, lookup, known))
      if (one === undefined) return []
      const { range, text, name, match } = one
      const exact = name === 'MATCH' ? 'a third argument 0' : name === 'LOOKUP' ? 'MATCH with a third argument 0' : 'a fourth argument FALSE'
      return [{
        found: {
          severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
          reason: `${name} takes ${text} to ${match === 'rising' ? 'rise' : 'fall'} from cell to cell, and it does not: the row that it finds may be any. ${exact[0]?.toUpperCase()}${exact.slice(1)} finds exactly what is sought.`,
          key: `${name}: not in order`, causes: [{ sheet: range.sheet.name, row: range.area.top, column: range.area.left }],
        },
        alike: `${name}${text}`,
      }]
    }))
  },
}

function isInOrder(survey: Survey, { range, match }: Lookup, known: Map<string, boolean>): boolean {
  const { top, bottom, left, right } = range.area
  const key = `${match}:${top}:${bottom}:${left}:${right}:${range.sheet.name}`
  const before = known.get(key)
  if (before !== undefined) return before
  const values = valuesIn(survey, range)
  const way = match === 'rising' ? 1 : -1
  const inOrder = values.every((value, index) => index === 0 || way * compared(values[index - 1] ?? null, value) <= 0)
  known.set(key, inOrder)
  return inOrder
}

/** Values of different kinds say nothing of each other’s order: a heading over numbers. */
function compared(one: CellValue, other: CellValue): number {
  if (typeof one === 'number' && typeof other === 'number') return one - other
  if (typeof one !== 'string' || typeof other !== 'string') return 0
  const [first, second] = [foldCase(one), foldCase(other)]
  return first < second ? -1 : first > second ? 1 : 0
}
