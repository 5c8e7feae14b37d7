import { convert } from '../../../functions/units/convert.ts'
import { formatNumber } from '../../../functions/units/format.ts'
import { eachNode } from '../../workbook/formula/tree.ts'
import { isOrder } from '../comparisons.ts'
import type { FindingKind, Found } from '../finding.ts'
import { cellWords } from '../finding-words.ts'
import { imageOf, type MassThreshold } from '../mass-thresholds.ts'
import { merge, type CellFound } from '../merge.ts'
import { shapesOf } from '../shapes.ts'
import type { FormulaCell, Survey } from '../survey.ts'
import { typedLimit, type TypedLimit } from '../typed-limits.ts'

/** Limits that are the rounded print of a rule's threshold in the units of another system. */
export const thresholdUnits: FindingKind = {
  kind: 'threshold-units',
  heading: 'Thresholds in another unit than their rule’s',
  about:
    'A rule counts in its own unit: 10 000 lb are 4535.92 kg, so a limit of 4 540 kg, or of 4 536 kg, lets through or stops what the rule does not. Named are limits of comparisons within 1 % of a threshold of ammonia rules that is stated in pounds or kilograms, the other of the two.',
  find: (survey) => merge(shapesOf(survey).flatMap(({ tree, cells }) => {
    const isComparing = tree !== undefined && [...eachNode(tree)].some(isOrder)
    return isComparing ? cells.flatMap((cell) => findings(survey, cell)) : []
  })),
}

function findings(survey: Survey, cell: FormulaCell): CellFound[] {
  const tree = survey.tree(cell.formula)
  const found = new Map<string, CellFound>()
  for (const node of tree === undefined ? [] : eachNode(tree)) {
    if (!isOrder(node)) continue
    for (const [side, other] of [[node.left, node.right], [node.right, node.left]] as const) {
      const limit = typedLimit(survey, cell.sheet, side, other)
      const image = limit && imageOf(limit.value, limit.unit)
      if (limit !== undefined && image !== undefined) found.set(`${limit.value} ${limit.unit.code}`, made(cell, limit, image))
    }
  }
  return [...found.values()]
}

function made({ sheet, row, column }: FormulaCell, { value, unit, place }: TypedLimit, image: MassThreshold): CellFound {
  const exact = Number(convert(image.value, image.unit, unit).toPrecision(7))
  const [amount, threshold] = [`${formatNumber(value)} ${unit.code}`, `${formatNumber(image.value)} ${image.unit.code}`]
  const found: Found = {
    severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, key: `${amount} for ${threshold}`,
    reason: `Held to ${amount}${place === undefined ? '' : ` in ${cellWords(place, sheet.name)}`}, a rounded ${threshold} (${exact} ${unit.code}), the threshold of ${image.rule}: compare in ${image.unit.code}.`,
    ...(place && { causes: [place] }),
  }
  return { found, alike: found.key }
}
