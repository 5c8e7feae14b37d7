import type { AreaValues, CellValue } from '../calc/values.ts'
import type { Workbook } from '../workbook/document.ts'
import type { FigureArea } from './binding-place.ts'
import type { FigureSource } from './read-parts.ts'

/** A source of the values of areas that were read one by one; cells beyond them are empty. */
export function areaSource(workbook: Workbook, areas: readonly FigureArea[], read: readonly (AreaValues | undefined)[]): FigureSource {
  return {
    workbook,
    value(sheet, row, column): CellValue {
      for (const [index, { sheet: name, area }] of areas.entries()) {
        if (name !== sheet || row < area.top || row > area.bottom || column < area.left || column > area.right) continue
        return read[index]?.values[row - area.top]?.[column - area.left] ?? null
      }
      return null
    },
  }
}
