import { areaOf, parseReference, printAddress, quoteSheetName, type Area } from '../../../workbook/address.ts'
import type { CellPlace } from '../../../workbook/cell-place.ts'
import { isFormula, sheetByName, usedRange, type Sheet, type Workbook } from '../../../workbook/document.ts'
import { namedReference } from '../../../workbook/formula/references.ts'

/** So many results at a time. */
const MOST = 200

/** The results that typed addresses and names stand for, apart by commas or blanks between them; or, in words, what is wrong with them. Of a range only what is computed. @param home the sheet meant where none is named */
export function chosenCells(workbook: Workbook, text: string, home: string): readonly CellPlace[] | string {
  const typed = text.split(/[,;\n]+/).map((one) => one.trim()).filter((one) => one !== '')
  if (typed.length === 0) return 'No cell yet: write for example Duty!C30, or several with commas between them.'
  const found = new Map<string, CellPlace>()
  for (const one of typed) {
    const reference = parseReference(one) ?? namedReference(workbook.names, one)
    if (reference === undefined) return `“${one}” is neither an address nor a name of the workbook; accepted: such as Duty!C30, Drums!Y7:Y15.`
    const sheet = sheetByName(workbook, reference.sheet ?? home)
    if (sheet === undefined) return `There is no sheet “${reference.sheet ?? home}”; there are ${workbook.sheets.map(({ name }) => `“${name}”`).join(', ')}.`
    const computed = computedIn(sheet, areaOf(reference))
    if (computed.length === 0) return `Nothing is computed in ${one}: choose results or checks.`
    for (const place of computed) found.set(`${place.sheet}!${place.row}:${place.column}`, place)
  }
  return found.size > MOST ? `${found.size} results; accepted: up to ${MOST} at a time.` : [...found.values()]
}

/** What is selected, as it would be typed; of a selection without anything computed, nothing. */
export function selectedText(sheet: Sheet, areas: readonly Area[]): string {
  return areas.filter((area) => computedIn(sheet, area).length > 0).map(({ top, left, bottom, right }) => {
    const [from, to] = [printAddress(top, left), printAddress(bottom, right)]
    return `${quoteSheetName(sheet.name)}!${from === to ? from : `${from}:${to}`}`
  }).join(', ')
}

function computedIn(sheet: Sheet, { top, left, bottom, right }: Area): readonly CellPlace[] {
  const { rows, columns } = usedRange(sheet)
  const found: CellPlace[] = []
  for (let row = top; row <= Math.min(bottom, rows - 1); row++) {
    for (let column = left; column <= Math.min(right, columns - 1); column++) {
      const cell = sheet.rows[row]?.[column]
      if (isFormula(cell?.content) && cell.role !== 'unit') found.push({ sheet: sheet.name, row, column })
    }
  }
  return found
}
