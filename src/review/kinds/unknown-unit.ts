import { similarUnit } from '../../../functions/units/units.ts'
import type { Area } from '../../workbook/address.ts'
import { eachCell } from '../../workbook/cells.ts'
import { withContent } from '../../workbook/commands.ts'
import { isFormula, type Cell, type Sheet } from '../../workbook/document.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import { valuesOfUnit } from '../../workbook/unit-scope.ts'
import { cellWords } from '../finding-words.ts'
import type { FindingKind, Found } from '../finding.ts'
import type { Survey } from '../survey.ts'
import { unitQuantity } from '../units/known-unit.ts'

/** Unit cells whose text no function takes for a unit, while their numbers are computed with. */
export const unknownUnit: FindingKind = {
  kind: 'unknown-unit',
  heading: 'Units that are not known',
  about: 'What stands in a unit cell and is no unit is not checked along with the arithmetic, and functions refuse it. Counts such as “pcs” or “drums” are let be.',
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
}

function unknownCells(survey: Survey): UnitCell[] {
  const found: UnitCell[] = []
  for (const sheet of survey.workbook.sheets) {
    eachCell(sheet, (cell, row, column) => {
      const value = cell.role === 'unit' ? survey.value(sheet.name, row, column) : undefined
      if (typeof value !== 'string' || value.trim() === '' || unitQuantity(value) !== undefined) return
      const text = value.trim()
      const meant = SPELT[text.toLowerCase().replace(/\.$/, '')] ?? similarUnit(text)?.code
      if (meant !== undefined || !isCounting(text)) found.push({ sheet, row, column, cell, text, meant })
    })
  }
  return found
}

/** How people write units that are known by a shorter code. */
const SPELT: Readonly<Record<string, string>> = {
  'lbs': 'lb', 'pounds': 'lb', 'inch': 'in', 'inches': 'in', 'feet': 'ft', 'foot': 'ft', 'deg f': '°F', 'deg c': '°C', 'deg. f': '°F', 'deg. c': '°C', 'degrees f': '°F', 'degrees c': '°C',
  'hours': 'h', 'hour': 'h', 'hrs': 'h', 'minutes': 'min', 'mins': 'min', 'seconds': 's', 'secs': 's', 'psid': 'psi', 'cuft': 'ft3', 'cu ft': 'ft3', 'cu. ft': 'ft3', 'cf': 'ft3',
  'sqft': 'ft2', 'sq ft': 'ft2', 'sq. ft': 'ft2', 'btuh': 'Btu/h', 'btu/hr': 'Btu/h', 'lb/hr': 'lb/h', 'lbs/h': 'lb/h', 'lbs/hr': 'lb/h', 'lbs/min': 'lb/min', 'pph': 'lb/h',
  'gallons': 'gal', 'gals': 'gal', 'percent': '%', 'ton r': 'TR', 'tr.': 'TR', 'kilograms': 'kg', 'kgs': 'kg', 'metres': 'm', 'meters': 'm', 'litres': 'L', 'liters': 'L',
}

/** What stands for no unit: words, plurals and abbreviations of things that are counted, dashes, "x:1". */
const isCounting = (text: string): boolean =>
  /^(?!tons$)(?:[a-z ]{2,}s|[a-z][a-z ]{4,})$/i.test(text) || /^[^\p{L}%°]+$/u.test(text) || /:\s*1$/.test(text) || text.length > MOST_LETTERS
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

function found({ sheet, row, column, cell, text, meant }: UnitCell, used: { readonly row: number; readonly column: number }): Found {
  const place = { sheet: sheet.name, ...used }
  const isTyped = meant !== undefined && !isFormula(cell.content)
  return {
    severity: meant === undefined ? 'remark' : 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column },
    reason: `“${text}” is no unit that is known${meant === undefined ? '' : `; ${meant} is`}: ${cellWords(place, sheet.name)} is computed with, and its unit cannot be checked.`,
    key: text, causes: [place],
    ...(isTyped && { mend: { words: `Write ${meant}`, edits: [{ kind: 'cells', sheet: sheet.name, cells: [{ row, column, cell: withContent(cell, meant) }] }] } }),
  }
}
