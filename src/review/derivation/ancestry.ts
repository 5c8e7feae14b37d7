import type { Area } from '../../workbook/address.ts'
import { printCellPlace, type CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, sheetByName, type Sheet } from '../../workbook/document.ts'
import { shifter } from '../../workbook/formula/references.ts'
import { eachNode, type FormulaNode } from '../../workbook/formula/tree.ts'
import type { Survey } from '../survey.ts'
import { formulaLines } from './formula-lines.ts'
import { cellOf, isOneCell, referredCells, surveySource, type ReferredCells } from './formula-source.ts'
import { linkedTo } from './links.ts'

/** A step before it has a number: one cell, or the cells of a range. */
export interface Node {
  readonly key: string
  readonly sheet: Sheet
  readonly area: Area
  readonly formula: string | undefined
  /** Keys of the nodes it is computed from. */
  readonly uses: readonly string[]
}

export interface Ancestry {
  readonly nodes: ReadonlyMap<string, Node>
  /** Cells that only pass on what another one holds, by the key of that one. */
  readonly links: ReadonlyMap<string, readonly CellPlace[]>
  /** How many nodes were not gone into, because there are so many. */
  readonly cut: number
}

/** More steps than this nobody reads. */
export const MOST_STEPS = 3000

export const keyOfPlace = ({ sheet, row, column }: CellPlace): string => `${sheet}!${row}:${column}`
const keyOf = ({ sheet, area }: ReferredCells): string =>
  isOneCell(area) ? keyOfPlace({ sheet: sheet.name, row: area.top, column: area.left }) : `${sheet.name}!${area.top}:${area.left}:${area.bottom}:${area.right}`

/** All that some results are computed from, cell by cell, and range by range where a formula takes cells together. What has no part in the numbers is left out. */
export function ancestryOf(survey: Survey, results: readonly CellPlace[]): Ancestry {
  const nodes = new Map<string, Node>()
  const links = new Map<string, CellPlace[]>()
  const asked = new Set(results.map(keyOfPlace))
  let cut = 0
  const toVisit: ReferredCells[] = results.toReversed().flatMap(({ sheet: name, row, column }) => {
    const sheet = sheetByName(survey.workbook, name)
    return sheet === undefined ? [] : [{ sheet, area: { top: row, left: column, bottom: row, right: column } }]
  })
  for (let next = toVisit.pop(); next !== undefined; next = toVisit.pop()) {
    const key = keyOf(next)
    if (nodes.has(key)) continue
    if (nodes.size >= MOST_STEPS) {
      cut++
      continue
    }
    const uses = distinct(partsOf(survey, next).flatMap((cells) => followed(cells, key)))
    const { sheet, area } = next
    const content = isOneCell(area) ? cellOf(sheet, area.top, area.left)?.content : undefined
    nodes.set(key, { key, sheet, area, formula: isFormula(content) ? content : undefined, uses: uses.map(keyOf) })
    toVisit.push(...uses.toReversed())
  }
  return { nodes, links, cut }

  /** Through cells that only pass a value on, to the one that has it. */
  function followed(cells: ReferredCells, from: string): ReferredCells[] {
    let here = cells
    const seen = new Set<string>()
    while (isOneCell(here.area) && !asked.has(keyOf(here)) && !seen.has(keyOf(here))) {
      seen.add(keyOf(here))
      const next = linkedTo(survey, here)
      if (next === undefined) break
      const passing = { sheet: here.sheet.name, row: here.area.top, column: here.area.left }
      const known = links.get(keyOf(next)) ?? []
      if (!known.some((one) => keyOfPlace(one) === keyOfPlace(passing))) links.set(keyOf(next), [...known, passing])
      here = next
    }
    if (keyOf(here) === from && keyOf(here) !== keyOf(cells)) return [cells]
    return [here]
  }
}

/** What a cell, or the cells of a range, are computed from: without units and words. */
function partsOf(survey: Survey, cells: ReferredCells): readonly ReferredCells[] {
  const { sheet, area } = cells
  if (!isOneCell(area)) return rangeParts(survey, cells)
  const content = cellOf(sheet, area.top, area.left)?.content
  const tree = isFormula(content) ? survey.tree(content) : undefined
  if (tree === undefined) return []
  const silent = { source: surveySource(survey, sheet, { row: area.top, column: area.left }), print: String, nameOf: printCellPlace, rangeName: () => '' }
  return formulaLines(tree, silent).uses.filter(isStep)
}

/** A unit, a heading or a label is no step: it is told where it is used. */
export const isStep = ({ sheet, area }: ReferredCells): boolean => {
  const role = isOneCell(area) ? cellOf(sheet, area.top, area.left)?.role : undefined
  return role !== 'unit' && role !== 'heading' && role !== 'title'
}

/** What the formulas of a range refer to: of formulas that were filled from one, the same stretch of cells. */
function rangeParts(survey: Survey, { sheet, area }: ReferredCells): readonly ReferredCells[] {
  const parts: ReferredCells[] = []
  for (const group of alike(sheet, area)) {
    const [first, last] = [group.at(0), group.at(-1)]
    if (first === undefined || last === undefined) continue
    const trees = [survey.tree(first.formula), survey.tree(last.formula)].map((tree, at) => referencesOf(survey, sheet, tree, at === 0 ? first : last))
    for (const [at, one] of (trees[0] ?? []).entries()) {
      const other = trees[1]?.[at]
      parts.push(other === undefined || other.sheet !== one.sheet ? one : { sheet: one.sheet, area: around(one.area, other.area) })
    }
  }
  return distinct(parts.filter(isStep))
}

interface Formula {
  readonly row: number
  readonly column: number
  readonly formula: string
}

/** The formulas of a range, column by column; those of a column that were filled from one together. */
export function alike(sheet: Sheet, { top, left, bottom, right }: Area): readonly (readonly Formula[])[] {
  const groups: Formula[][] = []
  for (let column = left; column <= right; column++) {
    const inColumn: { readonly first: Formula; readonly group: Formula[]; readonly moved: (rows: number, columns: number) => string }[] = []
    for (let row = top; row <= bottom; row++) {
      const content = cellOf(sheet, row, column)?.content
      if (!isFormula(content)) continue
      const own = { row, column, formula: content }
      const known = inColumn.slice(-KINDS_COMPARED).findLast(({ first, moved }) => moved(row - first.row, 0) === content)
      if (known !== undefined) known.group.push(own)
      else {
        const group = [own]
        inColumn.push({ first: own, group, moved: shifter(content) })
        groups.push(group)
      }
    }
  }
  return groups
}

/** In a column where hardly two formulas are alike, not each is compared with all before. */
const KINDS_COMPARED = 20

function referencesOf(survey: Survey, home: Sheet, tree: FormulaNode | undefined, at: { readonly row: number; readonly column: number }): ReferredCells[] {
  if (tree === undefined) return []
  const source = surveySource(survey, home, at)
  return [...eachNode(tree)].flatMap((node) => {
    const cells = referredCells(node, source)
    if (cells === undefined) return []
    // Of a quantity only the number is a step.
    const { area, sheet } = cells
    const isQuantity = area.right === area.left + 1 && cellOf(sheet, area.top, area.right)?.role === 'unit'
    return [isQuantity ? { sheet, area: { ...area, right: area.left } } : cells]
  })
}

const around = (one: Area, other: Area): Area => ({
  top: Math.min(one.top, other.top), left: Math.min(one.left, other.left), bottom: Math.max(one.bottom, other.bottom), right: Math.max(one.right, other.right),
})

function distinct(cells: readonly ReferredCells[]): ReferredCells[] {
  return [...new Map(cells.map((one) => [keyOf(one), one])).values()]
}
