import type { CellPlace } from '../../workbook/cell-place.ts'
import { eachCell } from '../../workbook/cells.ts'
import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import type { FindingKind, Found } from '../finding.ts'
import { asSentence, cellsWords } from '../finding-words.ts'
import type { Survey } from '../survey.ts'

/** Checks that come to FALSE, with how far they are off. */
export const checksNotMet: FindingKind = {
  kind: 'checks-not-met',
  heading: 'Checks not met',
  about: 'A limit of the design that is broken, and by how much. A check that only gathers others is named with those that it gathers.',
  find(survey) {
    const notMet = checksThat(survey, (value) => value === false)
    const gathering = new Map<string, CellPlace[]>()
    const sources = notMet.filter((check) => {
      const gathered = gatheredBy(survey, check)
      for (const key of gathered) gathering.set(key, [...(gathering.get(key) ?? []), check])
      return gathered.length === 0
    })
    return sources.map((check) => found(survey, check, gathering.get(keyOf(check)) ?? []))
  },
}

/** A cell of the role `check`. */
export interface CheckCell extends CellPlace {
  readonly cell: Cell
  readonly home: Sheet
}

export function checksThat(survey: Survey, wanted: (value: ReturnType<Survey['value']>) => boolean): CheckCell[] {
  const found: CheckCell[] = []
  for (const home of survey.workbook.sheets) {
    eachCell(home, (cell, row, column) => {
      if (cell.role === 'check' && wanted(survey.value(home.name, row, column))) found.push({ sheet: home.name, row, column, cell, home })
    })
  }
  return found
}

/** The checks not met that a check refers to cell by cell; a range of a hundred checks is one that it counts. */
function gatheredBy(survey: Survey, { cell: { content }, home }: CheckCell): string[] {
  if (!isFormula(content)) return []
  return survey.referred(content, home).flatMap(({ sheet, area: { top, left, bottom, right } }) => {
    if ((bottom - top + 1) * (right - left + 1) > MOST_GATHERED) return []
    const keys: string[] = []
    for (let row = top; row <= bottom; row++) {
      for (let column = left; column <= right; column++) {
        if (sheet.rows[row]?.[column]?.role === 'check' && survey.value(sheet.name, row, column) === false) keys.push(keyOf({ sheet: sheet.name, row, column }))
      }
    }
    return keys
  })
}

const MOST_GATHERED = 100

const keyOf = ({ sheet, row, column }: CellPlace): string => `${row}:${column}:${sheet}`

function found(survey: Survey, { sheet, row, column, cell: { content }, home }: CheckCell, gathering: readonly CellPlace[]): Found {
  const words = survey.check(sheet, row, column)?.words ?? 'not met'
  const gathered = gathering.length === 0 ? '' : `; with it ${cellsWords(gathering, sheet)}`
  const sides = isFormula(content) ? survey.referred(content, home).map(({ sheet: { name }, area: { top, left } }) => ({ sheet: name, row: top, column: left })) : []
  return {
    severity: 'error', sheet, area: { top: row, bottom: row, left: column, right: column },
    reason: asSentence(`Check ${words}${gathered}`), key: words, causes: sides.slice(0, MOST_CAUSES),
  }
}

const MOST_CAUSES = 10
