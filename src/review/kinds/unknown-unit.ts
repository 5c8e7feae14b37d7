import { findUnit } from '../../../functions/units/units.ts'
import type { Area, CellAddress } from '../../workbook/address.ts'
import { eachCell } from '../../workbook/cells.ts'
import { withContent } from '../../workbook/commands.ts'
import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import { valuesOfUnit } from '../../workbook/unit-scope.ts'
import { cellWords } from '../finding-words.ts'
import type { FindingKind, Found } from '../finding.ts'
import type { Survey } from '../survey.ts'
import { labelOf } from '../../workbook/words-beside.ts'
import { unitQuantity } from '../units/known-unit.ts'
import { isTons, meantUnit } from '../units/meant-unit.ts'

/** Unit cells whose text no function takes for a unit, while their numbers are computed with. */
export const unknownUnit: FindingKind = {
  kind: 'unknown-unit',
  heading: 'Units that are not known',
  about: 'What stands in a unit cell and is not a known unit cannot be checked, functions refuse it, and Restate leaves it as it is. Counts such as “pcs” or “drums” are let be.',
  find(survey) {
    const cells = unknownCells(survey)
    if (cells.length === 0) return []
    const computed = computedWith(survey)
    return cells.flatMap((cell) => {
      const used = valuesOfUnit(cell.sheet, cell).find(({ row, column }) => computed(cell.sheet, row, column))
      return used === undefined ? [] : [found(cell, used)]
    })
  },
}

interface UnitCell {
  readonly sheet: Sheet
  readonly row: number
  readonly column: number
  readonly cell: Cell
  readonly text: string
  readonly meant: string | undefined
  /** The arithmetic is checked with it: only functions and Restate do not take it. */
  readonly isRead: boolean
}

function unknownCells(survey: Survey): UnitCell[] {
  const found: UnitCell[] = []
  for (const sheet of survey.workbook.sheets) {
    eachCell(sheet, (cell, row, column) => {
      const value = cell.role === 'unit' ? survey.value(sheet.name, row, column) : undefined
      if (typeof value !== 'string' || value.trim() === '' || findUnit(value) !== undefined) return
      const text = value.trim()
      const meant = meantUnit(text)
      const isRead = unitQuantity(value) !== undefined
      // A unit made of units that no function has a counterpart of is checked along with the arithmetic all the same.
      if (meant !== undefined || (!isRead && !isCounting(text))) found.push({ sheet, row, column, cell, text, meant, isRead })
    })
  }
  return found
}

/** What stands for no unit: words, plurals and abbreviations of things that are counted, dashes, "x:1". */
const isCounting = (text: string): boolean =>
  /^(?!tons?\.?$)(?:[a-z ]{2,}s|[a-z][a-z ]{4,})$/i.test(text) || /^[^\p{L}%°]+$/u.test(text) || /:\s*1$/.test(text) || text.length > MOST_LETTERS
  || /^(?:no|nr|qty|pc|ea|each|set|pair|of|x|off|yes.*|zone|drum|unit|rev|date|time|name|type|size|code|tag|row|nps|dn|sch|re|n)\.?$/i.test(text)

const MOST_LETTERS = 24

/** Whether a cell is computed: by its own formula, or in one that refers to it. */
function computedWith(survey: Survey): (sheet: Sheet, row: number, column: number) => boolean {
  const areas = new Map<Sheet, Area[]>()
  const seen = new Set<string>()
  for (const { formula, sheet: home } of survey.formulas) {
    if (!isArithmetic(formula)) continue
    for (const { sheet, area } of survey.referred(formula, home)) {
      const key = `${area.top}:${area.left}:${area.bottom}:${area.right}!${sheet.name}`
      if (seen.has(key)) continue
      seen.add(key)
      const ofSheet = areas.get(sheet)
      if (ofSheet) ofSheet.push(area)
      else areas.set(sheet, [area])
    }
  }
  return (sheet, row, column) => {
    const content = sheet.rows[row]?.[column]?.content
    return (isFormula(content) && isArithmetic(content)) || (areas.get(sheet) ?? []).some(({ top, bottom, left, right }) => row >= top && row <= bottom && column >= left && column <= right)
  }
}

const isArithmetic = (formula: string): boolean => tokenise(formula).some(({ kind, text }) => kind === 'function' || (kind === 'operator' && text !== '&' && text !== '='))

function found(unit: UnitCell, used: CellAddress): Found {
  const { sheet, row, column, cell, text } = unit
  const place = { sheet: sheet.name, ...used }
  const meant = unit.meant ?? tonsMeant(unit, used)
  const isTyped = meant !== undefined && !isFormula(cell.content)
  return {
    severity: meant === undefined && !isTons(text) ? 'remark' : 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
    reason: `“${text}” is not a known unit${isTons(text) ? ': TR is a ton of refrigeration, ton a mass of 2000 lb' : meant === undefined ? '' : `; ${meant} is`}. ${unit.isRead ? `Functions and Restate will not take ${cellWords(place, sheet.name)} with it.` : `${cellWords(place, sheet.name)} is computed with, and its unit cannot be checked.`}`,
    key: text, causes: [place],
    ...(isTyped && { mend: { words: `Write ${meant}`, edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: withContent(cell, meant) }] }] } }),
  }
}

/** Which tons they are, where the words beside them say so. */
function tonsMeant({ sheet, text }: UnitCell, used: CellAddress): string | undefined {
  const label = isTons(text) ? (labelOf(sheet, used) ?? '') : ''
  return /load|refrig|capacity|duty|cooling/i.test(label) ? 'TR' : /mass|weight|charge|inventory/i.test(label) ? 'ton' : undefined
}
