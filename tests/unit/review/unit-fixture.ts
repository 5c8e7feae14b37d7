import type { Finding, FindingKind } from '../../../src/review/finding.ts'
import { findFindings } from '../../../src/review/find-findings.ts'
import { unitKinds } from '../../../src/review/units/kinds-of-units.ts'
import { Survey } from '../../../src/review/survey.ts'
import type { AreaValues } from '../../../src/calc/values.ts'
import { isFormula, type Workbook } from '../../../src/workbook/document.ts'
import { workbookOf, type Put } from '../workbook-of.ts'

/** A number and the unit beside it, as one writes it: `85 TR`, `3 ft`; a number alone has no unit. */
export type Typed = string

/**
 * What is found about units in one formula. It stands in C9, its unit in D9; what it is computed from stands in C1, C2 and so on, each with its
 * unit beside it. The workbook's site, 12.23 psia, is in C20 and has the name `site_pressure`.
 */
export function unitFindings(formula: string, declared: string | undefined, inputs: readonly Typed[], more: Readonly<Record<string, Put>> = {}): readonly Finding[] {
  const cells: Record<string, Put> = { C9: formula, C20: 12.23, D20: ['psia', 'unit'], ...(declared !== undefined && { D9: [declared, 'unit'] as const }) }
  for (const [index, typed] of inputs.entries()) {
    const [, number = '', unit = ''] = /^(\S+)\s*(.*)$/.exec(typed) ?? []
    cells[`C${index + 1}`] = Number(number)
    if (unit !== '') cells[`D${index + 1}`] = [unit, 'unit']
  }
  return findFindings(uncalculated(workbookOf({ Duty: { ...cells, ...more } }, { site_pressure: 'Duty!$C$20:$D$20' })), undefined, unitKinds)
}

/** Every formula comes to 1: what is found about units does not hang on what they come to, and the tests ask for thousands. */
function uncalculated(workbook: Workbook): Survey {
  const areas = workbook.sheets.map(({ name, rows }): [string, AreaValues] => [name, {
    values: Array.from(rows, (row) => Array.from(row ?? [], (cell) => (isFormula(cell?.content) ? 1 : (cell?.content ?? null)))), checks: new Map(),
  }])
  return new Survey(workbook, new Map(areas))
}

/** The kinds that are found, to be compared with the one that is expected, or with none. */
export const kindsFound = (...given: Parameters<typeof unitFindings>): readonly string[] => unitFindings(...given).map(({ kind }) => kind)

/** The reasons of the one kind. */
export const reasonsOf = ({ kind }: FindingKind, ...given: Parameters<typeof unitFindings>): readonly string[] =>
  unitFindings(...given).filter((one) => one.kind === kind).map(({ reason }) => reason)

/** What the first mend writes. */
export function mended(...given: Parameters<typeof unitFindings>): unknown {
  const [edit] = unitFindings(...given)[0]?.mend?.edits ?? []
  return edit?.kind === 'cells' ? edit.cells[0]?.cell?.content : undefined
}
