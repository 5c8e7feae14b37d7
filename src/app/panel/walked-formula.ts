import { plainValue } from '../../calc/cell-value.ts'
import type { CellValue } from '../../calc/values.ts'
import type { Feed } from '../../calc/walk.ts'
import { formulaLines, type FormulaLines } from '../../review/derivation/formula-lines.ts'
import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import { foldCase, sheetByName, type Sheet, type Workbook } from '../../workbook/document.ts'
import { formulaTree } from '../../workbook/formula/tree.ts'
import { formatNumber } from '../../workbook/number-format.ts'
import { unitOfValue } from '../../workbook/unit-scope.ts'
import { labelOf } from '../../workbook/words-beside.ts'

/**
 * A formula as it is computed, with numbers and units put in: the same lines as in derivations, made of what the screen knows, which is the document and what
 * feeds the cell. Undefined where the formula cannot be read.
 */
export function walkedFormula(formula: string, feeds: readonly Feed[], workbook: Workbook, home: Sheet, at: { readonly row: number; readonly column: number }): FormulaLines | undefined {
  const tree = formulaTree(formula)
  if (tree === undefined) return undefined
  const known = valuesOfFeeds(feeds, workbook)
  return formulaLines(tree, {
    source: {
      workbook, home, at,
      value: (sheet, row, column) => {
        const plain = plainValue(sheetByName(workbook, sheet)?.rows[row]?.[column])
        return plain === undefined ? known.get(keyOf(sheet, row, column)) : plain
      },
    },
    // As the cell itself shows it.
    print: (value, place) => formatNumber(value, (place && sheetByName(workbook, place.sheet)?.rows[place.row]?.[place.column]) ?? {}),
    nameOf: (place) => {
      const sheet = sheetByName(workbook, place.sheet)
      return (sheet && labelOf(sheet, place)) ?? printAddress(place.row, place.column)
    },
    rangeName: ({ sheet, area: { top, left, bottom, right } }) => `${foldCase(sheet.name) === foldCase(home.name) ? '' : `${quoteSheetName(sheet.name)}!`}${printAddress(top, left)}:${printAddress(bottom, right)}`,
  })
}

/** What feeds say of cells and of their units. */
function valuesOfFeeds(feeds: readonly Feed[], workbook: Workbook): ReadonlyMap<string, CellValue> {
  const known = new Map<string, CellValue>()
  for (const { sheet: name, area: { top, left }, value, unit, quantity } of feeds) {
    const sheet = sheetByName(workbook, name)
    if (sheet === undefined || value === undefined) continue
    known.set(keyOf(name, top, left), value)
    const unitAt = quantity ? undefined : unitOfValue(sheet, { row: top, column: left })
    if (unit === undefined) continue
    if (unitAt !== undefined) known.set(keyOf(name, unitAt.row, unitAt.column), unit)
    else if (sheet.rows[top]?.[left + 1]?.role === 'unit') known.set(keyOf(name, top, left + 1), unit)
  }
  return known
}

const keyOf = (sheet: string, row: number, column: number): string => `${foldCase(sheet)}!${row}:${column}`
