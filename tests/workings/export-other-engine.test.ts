import { expect, it } from 'vitest'
import { eachCell } from '../../src/workbook/cells.ts'
import { isFormula } from '../../src/workbook/document.ts'
import { readTemplate } from '../templates/open-template.ts'
import { changedInputs, differences, exported, inputAfter, valuesAfter } from './exported.ts'
import { recalculatedOtherwise } from './recalculated-otherwise.ts'

/**
 * What share of a template's formulas a second reader of formulas computes as Lowside does, inputs changed. Where it is less than all, what
 * it does otherwise (errors and empty texts in arguments, wildcards) goes on into the cells that depend on it.
 */
const SHARES: Readonly<Record<string, number>> = {
  'basis': 1, 'feed-comparison': 1, 'saturation-table': 1, 'suction-accumulator': 1, 'zone-setpoints': 0.95, 'interlocks': 0.9,
  'head-circulation': 0.85, 'charge-inventory': 0.85, 'vessel-sizing': 0.85, 'relief': 0.7, 'feed-valves': 0.5,
}

it.each(Object.entries(SHARES))('%s: a second, independent engine computes %d of its formulas from changed inputs to 1e-9 of Lowside', { timeout: 300_000 }, async (name, share) => {
  const workbook = readTemplate(`templates/${name}.lowside.json`)
  let formulas = 0
  for (const sheet of workbook.sheets) eachCell(sheet, ({ content }) => void (formulas += isFormula(content) ? 1 : 0))
  const changes = changedInputs(workbook, 5)
  const differing = differences(workbook, valuesAfter(workbook, changes), recalculatedOtherwise(inputAfter(await exported(workbook), changes)))
  if (share === 1) expect(differing).toEqual([])
  expect(1 - differing.length / formulas).toBeGreaterThanOrEqual(share)
})
