import type { CellPlace } from '../workbook/cell-place.ts'
import { isFormula, sheetByName, type Sheet, type Workbook } from '../workbook/document.ts'
import type { FormulaNode } from '../workbook/formula/tree.ts'
import { referredCells } from './derivation/formula-source.ts'
import type { Survey } from './survey.ts'

/** The cell whose value a part of a formula hands on, whatever the unit it is put into; undefined where the part computes something. */
export function handedOn(node: FormulaNode, workbook: Workbook, home: Sheet): CellPlace | undefined {
  if (node.kind === 'operation' && node.operator === '&') return handedOn(node.left, workbook, home)
  if (node.kind === 'call' && node.name === 'UNIT.CONVERT') return node.arguments[0] === undefined ? undefined : handedOn(node.arguments[0], workbook, home)
  const referred = referredCells(node, { workbook, home })
  return referred && { sheet: referred.sheet.name, row: referred.area.top, column: referred.area.left }
}

/** Where a value that cells hand on from one to the next comes from: an input, or the cell that computes it. */
export function sourceOfValue(survey: Survey, place: CellPlace): CellPlace {
  let at = place
  for (let step = 0; step < MOST_STEPS; step++) {
    const home = sheetByName(survey.workbook, at.sheet)
    const content = home?.rows[at.row]?.[at.column]?.content
    const tree = isFormula(content) ? survey.tree(content) : undefined
    const before = home === undefined || tree === undefined ? undefined : handedOn(tree, survey.workbook, home)
    if (before === undefined) return at
    at = before
  }
  return at
}

/** Long enough for any chain of sheets; a circle of references ends by it too. */
const MOST_STEPS = 50

/** The inputs that a cell is computed from, the nearest first, a few of them. */
export function inputsUpstream(survey: Survey, from: CellPlace, most: number): CellPlace[] {
  const found: CellPlace[] = []
  const seen = new Set<string>()
  let next: CellPlace[] = [from]
  for (let step = 0; step < MOST_STEPS && next.length > 0 && found.length < most; step++) {
    next = next.flatMap((place) => feedsOf(survey, place)).filter((place) => {
      const key = `${place.row}:${place.column}:${place.sheet}`
      const isNew = !seen.has(key)
      seen.add(key)
      return isNew
    })
    found.push(...next.filter((place) => cellOf(survey, place)?.role === 'input' && typeof cellOf(survey, place)?.content === 'number'))
  }
  return found.slice(0, most)
}

const cellOf = ({ workbook }: Survey, { sheet, row, column }: CellPlace) => sheetByName(workbook, sheet)?.rows[row]?.[column]

/** Cell by cell; of a large range its first cells do. */
function feedsOf(survey: Survey, place: CellPlace): CellPlace[] {
  const home = sheetByName(survey.workbook, place.sheet)
  const content = cellOf(survey, place)?.content
  if (home === undefined || !isFormula(content)) return []
  return survey.referred(content, home).flatMap(({ sheet, area: { top, left, bottom, right } }) => {
    const places: CellPlace[] = []
    for (let row = top; row <= Math.min(bottom, top + MOST_OF_RANGE); row++) {
      for (let column = left; column <= Math.min(right, left + MOST_OF_RANGE); column++) places.push({ sheet: sheet.name, row, column })
    }
    return places
  })
}

const MOST_OF_RANGE = 20
