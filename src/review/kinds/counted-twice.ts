import { printAddress, type Area } from '../../workbook/address.ts'
import { isWithin } from '../../workbook/areas.ts'
import { isFormula, type Sheet } from '../../workbook/document.ts'
import { eachNode, type FormulaNode } from '../../workbook/formula/tree.ts'
import type { FindingKind } from '../finding.ts'
import { merge, type CellFound } from '../merge.ts'
import type { Referred, Survey } from '../survey.ts'

/** Sums over a range in which a sum of some of it stands too. */
export const countedTwice: FindingKind = {
  kind: 'counted-twice',
  heading: 'Sums that count something twice',
  about: 'A total over a range that holds a subtotal of cells of the same range. What is added cell by cell is not looked at.',
  find(survey) {
    const subtotals = new Map<string, readonly Subtotal[]>()
    return merge(survey.formulas.flatMap(({ sheet, row, column, formula }): CellFound[] => {
      const [twice] = sumsOf(survey, formula, sheet).flatMap((range) => subtotalsIn(survey, range, subtotals))
      if (twice === undefined || (twice.sheet === sheet && twice.row === row && twice.column === column)) return []
      const where = printAddress(twice.row, twice.column)
      return [{
        found: {
          severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
          reason: `Counts something twice: ${where}, which it takes in, is itself a sum of cells that it takes in, ${printArea(twice.of)}.`,
          key: 'takes in a subtotal', causes: [{ sheet: twice.sheet.name, row: twice.row, column: twice.column }],
        },
        alike: survey.shape({ formula, row, column }),
      }]
    }))
  },
}

interface Subtotal {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  readonly of: Area
}

/** The ranges of SUM in a formula. */
function sumsOf(survey: Survey, formula: string, home: Sheet): readonly Referred[] {
  if (!SUM.test(formula)) return []
  const tree = survey.tree(formula)
  return tree === undefined ? [] : [...eachNode(tree)].flatMap((node) => (node.kind === 'call' && node.name === 'SUM' ? node.arguments.flatMap((one) => rangeOf(survey, one, home) ?? []) : []))
}

const SUM = /\bSUM\(/i

function rangeOf(survey: Survey, node: FormulaNode | undefined, home: Sheet): Referred | undefined {
  return node?.kind === 'reference' && node.reference.to !== null ? survey.resolve(node.reference, home) : undefined
}

function subtotalsIn(survey: Survey, { sheet, area }: Referred, known: Map<string, readonly Subtotal[]>): readonly Subtotal[] {
  const key = `${area.top}:${area.bottom}:${area.left}:${area.right}:${sheet.name}`
  const before = known.get(key)
  if (before !== undefined) return before
  const found: Subtotal[] = []
  for (let row = area.top; row <= area.bottom; row++) {
    for (let column = area.left; column <= area.right; column++) {
      const content = sheet.rows[row]?.[column]?.content
      if (!isFormula(content)) continue
      const part = sumsOf(survey, content, sheet).find((one) => one.sheet === sheet && isWithin(one.area, area))
      if (part) found.push({ sheet, row, column, of: part.area })
    }
  }
  known.set(key, found)
  return found
}

const printArea = ({ top, left, bottom, right }: Area): string => `${printAddress(top, left)}:${printAddress(bottom, right)}`
