import { printAddress, quoteSheetName } from '../../workbook/address.ts'
import type { CellsOfSheet } from './derivation.ts'

/** `Drums!F7:F15`, `Drums!F7` */
export function areaText({ sheet, area: { top, left, bottom, right } }: CellsOfSheet): string {
  const [from, to] = [printAddress(top, left), printAddress(bottom, right)]
  return `${quoteSheetName(sheet)}!${from === to ? from : `${from}:${to}`}`
}
