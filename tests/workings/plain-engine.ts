import { DetailedCellError, HyperFormula } from 'hyperformula'
import type { Given } from '../../functions/given.ts'
import type { FunctionDefinition } from '../../functions/define.ts'
import { workingsTables } from '../../functions/workings/all-tables.ts'
import { fillMarks } from '../../functions/workings/expression.ts'
import type { CallPart } from '../../functions/workings/workings.ts'
import { columnLetters } from '../../src/workbook/address.ts'

/** A formula engine that knows standard functions only: what any spreadsheet program would make of the workings. */
const plainEngine = (): HyperFormula =>
  HyperFormula.buildEmpty({ licenseKey: 'gpl-v3', useArrayArithmetic: true, precisionRounding: 14, dateFormats: [], timeFormats: [], currencySymbol: [], maxRows: 100_000 })

/** What a function's workings give for calls, in the order of the calls: a number, a text or the code of an error. */
export function workingsValues(definition: FunctionDefinition, calls: readonly (readonly Given[])[]): (number | string)[] {
  const { workings } = definition
  const engine = plainEngine()
  try {
    engine.addSheet('Tables')
    const tables = engine.getSheetId('Tables') ?? 0
    const addresses = new Map<string, string>()
    let left = 0
    engine.batch(() => {
      for (const { name, blocks } of workingsTables) {
        for (const [block, rows] of Object.entries(blocks)) {
          const width = rows[0]?.length ?? 0
          const right = left + width - 1
          addresses.set(`${name}.${block}`, `Tables!$${columnLetters(left)}$1:$${columnLetters(right)}$${rows.length}`)
          engine.setCellContents({ sheet: tables, row: 0, col: left }, rows.map((row) => row.map((cell) => (typeof cell === 'string' ? `'${cell}` : cell))))
          left = right + 1
        }
      }
    })
    const address = (mark: number | string, row: number) => {
      if (typeof mark === 'number') return `${columnLetters(mark)}${row + 1}`
      const found = addresses.get(mark)
      if (found === undefined) throw new Error(`${definition.name}: there is no table block ${mark}`)
      return found
    }
    const content = calls.map((call, row) =>
      workings.columns.map(({ formula, given }) => {
        if (given !== undefined) return contentOf(partOf(call, given))
        // This engine reads a small e only.
        return `=${fillMarks(formula ?? '', (mark) => address(mark, row)).replace(/(\d)E([+-]?\d)/g, '$1e$2')}`
      }))
    engine.addSheet('Calls')
    const sheet = engine.getSheetId('Calls') ?? 0
    engine.setSheetContent(sheet, content)
    const last = workings.columns.length - 1
    return calls.map((_, row) => {
      const value = engine.getCellValue({ sheet, row, col: last })
      return value instanceof DetailedCellError ? value.value : typeof value === 'number' ? value : String(value)
    })
  } finally {
    engine.destroy()
  }
}

const contentOf = (value: number | string): number | string => (typeof value === 'string' ? `'${value}` : value)

/** What stands in a column for the call: quantities are given as value and unit side by side. */
function partOf(call: readonly Given[], { argument, row, part, whenOmitted }: CallPart): number | string {
  const given = call[argument]
  if (given === undefined) return whenOmitted ?? ''
  if (typeof given !== 'object' || given === null) return part === 'unit' && typeof given === 'number' ? '' : (given as number | string)
  const all = given.rows.flat()
  if (part === 'text' && all.length > 1) return all.join(' ')
  const cells = given.rows[row ?? 0] ?? []
  return (part === 'unit' ? cells[1] : cells[0]) as number | string ?? ''
}
