import { DetailedCellError, HyperFormula } from 'hyperformula'
import { read, type CellObject, type WorkBook } from 'xlsx'
import { makeDependentsLinear } from '../../src/calc/linear-dependents.ts'

/** What a cell comes to in another engine; an error by its code. */
export type Recalculated = number | string | boolean | null

/** The cells of a spreadsheet file as the engine's input: formulas without the values they had, constants as they are. */
export interface FileInput {
  readonly sheets: ReadonlyMap<string, readonly (readonly (CellObject | undefined)[])[]>
  readonly names: ReadonlyMap<string, string>
}

export function fileInput(bytes: Uint8Array): FileInput {
  // The library's types say `any` for this.
  const file: WorkBook = read(bytes, { type: 'array', dense: true, cellFormula: true, cellText: false, cellHTML: false, cellStyles: false })
  const sheets = new Map(file.SheetNames.map((name) => [name, (file.Sheets[name]?.['!data'] ?? []) as (CellObject | undefined)[][]]))
  const names = new Map((file.Workbook?.Names ?? []).filter(({ Name }) => !Name.startsWith('_xlnm.')).map(({ Name, Ref }) => [Name, Ref]))
  return { sheets, names }
}

/** Every value of a file, recalculated from its constants alone by an engine of standard functions. */
export function recalculatedPlainly({ sheets, names }: FileInput): ReadonlyMap<string, readonly (readonly Recalculated[])[]> {
  const engine = HyperFormula.buildEmpty({ licenseKey: 'gpl-v3', useArrayArithmetic: true, precisionRounding: 14, dateFormats: [], timeFormats: [], currencySymbol: [], maxRows: 100_000 })
  // Only its speed is another one.
  makeDependentsLinear(engine)
  try {
    for (const name of sheets.keys()) engine.addSheet(name)
    engine.batch(() => {
      for (const [name, refersTo] of names) engine.addNamedExpression(name, `=${refersTo}`)
      for (const [name, rows] of sheets) engine.setSheetContent(engine.getSheetId(name) ?? 0, Array.from(rows, (row) => Array.from(row ?? [], content)))
    })
    return new Map([...sheets.keys()].map((name) => {
      const values = engine.getSheetValues(engine.getSheetId(name) ?? 0)
      return [name, values.map((row) => row.map((value) => (value instanceof DetailedCellError ? value.value : value)))] as const
    }))
  } finally {
    engine.destroy()
  }
}

function content(cell: CellObject | undefined): number | string | boolean | null {
  if (cell === undefined) return null
  if (cell.f !== undefined) return `=${engineDialect(cell.f)}`
  if (cell.t === 'e') return '=NA()'
  if (typeof cell.v === 'string') return `'${cell.v}`
  return typeof cell.v === 'number' || typeof cell.v === 'boolean' ? cell.v : null
}

/** The engine reads a small e only, TRUE and FALSE as functions, and no prefix of younger functions. */
const engineDialect = (formula: string): string =>
  formula.split(/("(?:[^"]|"")*")/).map((piece, index) => (index % 2 === 1 ? piece : piece.replace(/(\d)E([+-]?\d)/g, '$1e$2').replace(/\b(TRUE|FALSE)\b(?!\()/g, '$1()').replace(/_xlfn\./g, ''))).join('')
