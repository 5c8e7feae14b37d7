import { formatNumber } from '../../../functions/units/format.ts'
import { isOrder } from '../comparisons.ts'
import { formulaValues } from '../derivation/formula-values.ts'
import type { FindingKind, Found } from '../finding.ts'
import { merge, type CellFound } from '../merge.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { eachTaken } from '../taken-parts.ts'

/** Checks whose two sides are the same number but for what was lost in print. */
export const withinRounding: FindingKind = {
  kind: 'within-rounding',
  heading: 'Checks decided by the last digits',
  about:
    'Two sides of a comparison that differ by less than 0.05 % are often one number, once exact and once as printed: 4 535.9 kg and 10 000 lb. Then rounding decides, and not the plant. Sides that are equal to nine digits are left alone.',
  find: (survey) => merge(survey.formulas.flatMap((cell) => (cell.cell.role === 'check' ? findings(survey, cell) : []))),
}

/** Half of the last of four digits at most, and more than what computing itself loses. */
const [PRINTED, COMPUTED] = [5e-4, 1e-9]

function findings(survey: Survey, { formula, sheet, row, column }: FormulaCell): CellFound[] {
  const tree = survey.tree(formula)
  if (tree === undefined) return []
  const values = formulaValues({ workbook: survey.workbook, home: sheet, at: { row, column }, value: (name, ...at) => survey.value(name, ...at) })
  return [...eachTaken(tree, values)].flatMap((node) => {
    if (!isOrder(node)) return []
    const [left, right] = [values.single(node.left), values.single(node.right)]
    if (typeof left !== 'number' || typeof right !== 'number') return []
    const share = Math.abs(left - right) / Math.max(Math.abs(left), Math.abs(right))
    if (!(share > COMPUTED && share < PRINTED)) return []
    const found: Found = {
      severity: 'remark', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, key: `${digits(left)} and ${digits(right)}`,
      reason: `${digits(left)} and ${digits(right)} differ by ${formatNumber(Number((share * 100).toPrecision(2)))} %: the last digits decide, and may have been lost in print or in another unit.`,
    }
    return [{ found, alike: found.key }]
  }).slice(0, 1)
}

const digits = (value: number): string => String(Number(value.toPrecision(9)))
