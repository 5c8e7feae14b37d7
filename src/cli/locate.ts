import { areaOf, parseReference, printAddress, quoteSheetName, type Area, type CellAddress, type Reference } from '../workbook/address.ts'
import { foldCase, sheetByName, usedRange, type Sheet, type Workbook } from '../workbook/document.ts'
import { Refusal } from './refusal.ts'

export interface Place extends CellAddress {
  readonly sheet: Sheet
}

/**
 * The cells that an address (`Duty!C5`, `'Wet return'!C5:C9`, `Duty!C:C`) or a defined name stands for, in reading order. The sheet may be
 * left out where there is only one, and its quotes always. Whole columns and rows go as far as the sheet is filled.
 * @throws Refusal
 */
export function locate(workbook: Workbook, text: string): Place[] {
  const reference = referenceOf(workbook, text.trim())
  const sheet = sheetOf(workbook, reference, text)
  const area = areaOf(reference)
  const used = usedRange(sheet)
  const bottom = isWhole(reference, 'row') ? used.rows - 1 : area.bottom
  const right = isWhole(reference, 'column') ? used.columns - 1 : area.right
  refuseTooMany(text, { ...area, bottom, right })
  const places: Place[] = []
  for (let row = area.top; row <= bottom; row++) {
    for (let column = area.left; column <= right; column++) places.push({ sheet, row, column })
  }
  return places
}

/** `Duty!C5` */
export function printPlace({ sheet, row, column }: Place): string {
  return `${quoteSheetName(sheet.name)}!${printAddress(row, column)}`
}

const MAX_PLACES = 1_000_000

function referenceOf(workbook: Workbook, text: string): Reference {
  const name = [...workbook.names].find(([one]) => foldCase(one) === foldCase(text))
  const written = name === undefined ? text : name[1].replace(/^=/, '').trim()
  const split = written.lastIndexOf('!')
  const reference = parseReference(written) ?? parseReference(`${quoteSheetName(written.slice(0, Math.max(split, 0)))}!${written.slice(split + 1)}`)
  if (reference !== undefined) return reference
  throw new Refusal(name === undefined
    ? `"${text}" is neither an address nor a name of the workbook; write for example "${exampleOf(workbook)}"`
    : `the name ${name[0]} stands for ${name[1]}, which is no cell`)
}

function sheetOf(workbook: Workbook, { sheet: name }: Reference, text: string): Sheet {
  const [first, ...others] = workbook.sheets
  const sheet = name === null ? (others.length === 0 ? first : undefined) : sheetByName(workbook, name)
  if (sheet !== undefined) return sheet
  if (name === null) throw new Refusal(`"${text}" does not say which sheet; write for example "${exampleOf(workbook)}"`)
  throw new Refusal(`"${text}": there is no sheet "${name}"; there are ${workbook.sheets.map((one) => `"${one.name}"`).join(', ')}`)
}

const exampleOf = ({ sheets }: Workbook): string => `${quoteSheetName(sheets[0]?.name ?? 'Sheet')}!C5`

const isWhole = ({ from, to }: Reference, axis: 'row' | 'column'): boolean => to !== null && from[axis] === null

function refuseTooMany(text: string, { top, bottom, left, right }: Area): void {
  const count = (bottom - top + 1) * (right - left + 1)
  if (count > MAX_PLACES) throw new Refusal(`"${text}" stands for ${count} cells; accepted: up to ${MAX_PLACES} at a time`)
}
