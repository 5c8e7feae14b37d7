import { Graph } from '../../src/calc/graph.ts'
import { isCellError, type CellValue } from '../../src/calc/values.ts'
import { exportXlsx } from '../../src/exchange/xlsx.ts'
import { printAddress } from '../../src/workbook/address.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { isFormula, type Workbook } from '../../src/workbook/document.ts'
import { fileInput, type FileInput, type Recalculated } from './recalculated.ts'

export const DATE = new Date('2025-03-04T05:06:07Z')

export async function exported(workbook: Workbook): Promise<FileInput> {
  return fileInput(await exportXlsx(workbook, new Graph(workbook).allValues(), { date: DATE }))
}

interface Change {
  readonly sheet: string
  readonly row: number
  readonly column: number
  readonly value: number
}

/** Some of the workbook's number inputs, spread over all of them, a hundredth higher. */
export function changedInputs(workbook: Workbook, count: number): readonly Change[] {
  const inputs: Change[] = []
  for (const { name, rows, ...sheet } of workbook.sheets) {
    eachCell({ name, rows, ...sheet }, ({ content, role }, row, column) => {
      if (role === 'input' && typeof content === 'number' && content !== 0) inputs.push({ sheet: name, row, column, value: content * 1.01 })
    })
  }
  const step = Math.max(1, Math.floor(inputs.length / count))
  return inputs.filter((_, index) => index % step === 0).slice(0, count)
}

/** The values that Lowside itself has after the changes. */
export function valuesAfter(workbook: Workbook, changes: readonly Change[]): ReadonlyMap<string, readonly (readonly CellValue[])[]> {
  const graph = new Graph(workbook)
  for (const { sheet, row, column, value } of changes) graph.apply(setEntry(graph.workbook, sheet, { row, column }, String(value)))
  return graph.allValues()
}

/** The file with its inputs changed, as typed into it with another program. */
export function inputAfter({ sheets, names }: FileInput, changes: readonly Change[]): FileInput {
  return {
    names,
    sheets: new Map([...sheets].map(([name, rows]) => {
      const own = changes.filter(({ sheet }) => sheet === name)
      return [name, rows.map((row, at) => Array.from(row ?? [], (cell, column) => {
        const change = own.find((one) => one.row === at && one.column === column)
        return change ? { ...cell, t: 'n' as const, v: change.value } : cell
      }))] as const
    })),
  }
}

/** The cells of the workbook that another engine has otherwise: an error is an error whatever its kind, an empty cell the empty text. */
export function differences(
  workbook: Workbook, values: ReadonlyMap<string, readonly (readonly CellValue[])[]>, found: ReadonlyMap<string, readonly (readonly Recalculated[])[]>, tolerance = 1e-9,
): readonly string[] {
  return workbook.sheets.flatMap((sheet) => {
    const differing: string[] = []
    eachCell(sheet, ({ content }, row, column) => {
      const [value, other] = [values.get(sheet.name)?.[row]?.[column] ?? null, found.get(sheet.name)?.[row]?.[column] ?? null]
      if (!sameValue(value, other, tolerance)) differing.push(`${sheet.name}!${printAddress(row, column)} ${String(content)}: ${JSON.stringify(value)}, elsewhere ${JSON.stringify(other)}`)
    })
    return differing
  })
}

export function sameValue(value: CellValue, other: Recalculated, tolerance = 1e-9): boolean {
  // Lowside's engine takes a difference in the last digits of two numbers for nothing; another may keep it.
  if (value === 0 && typeof other === 'number') return Math.abs(other) <= 1e-14
  if (typeof value === 'number' && typeof other === 'number') return Math.abs(value - other) <= tolerance * Math.max(Math.abs(value), Math.abs(other))
  if (isCellError(value)) return typeof other === 'string' && other.startsWith('#')
  return value === other || ((value === null || value === '') && (other === null || other === '' || other === 0))
}

/** How many formula cells of the workbook stand as formulas in the file, and how many there are. */
export function formulasKept({ sheets }: Workbook, file: FileInput): { readonly kept: number; readonly all: number } {
  let [kept, all] = [0, 0]
  for (const sheet of sheets) {
    eachCell(sheet, ({ content }, row, column) => {
      if (!isFormula(content)) return
      all++
      if (file.sheets.get(sheet.name)?.[row]?.[column]?.f !== undefined) kept++
    })
  }
  return { kept, all }
}
