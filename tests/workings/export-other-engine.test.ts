import { readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'
import type { CellValue } from '../../src/calc/values.ts'
import { isFormula } from '../../src/workbook/document.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { readTemplate } from '../templates/open-template.ts'
import { changedInputs, differences, exported, inputAfter, sameValue, valuesAfter } from './exported.ts'
import type { FileInput } from './recalculated.ts'
import { recalculatedOtherwise } from './recalculated-otherwise.ts'

const TEMPLATES = readdirSync(fileURLToPath(new URL('../../templates', import.meta.url))).filter((name) => name.endsWith('.lowside.json')).map((name) => `templates/${name}`)

describe.each([...TEMPLATES, 'demo-data/tallowmere.lowside.json'])('%s, exported, in a second engine that shares no code with the first', (path) => {
  const workbook = readTemplate(path)

  it('recalculates from changed inputs alone, every formula to 1e-9 of Lowside', { timeout: 300_000 }, async () => {
    let formulas = 0
    for (const sheet of workbook.sheets) eachCell(sheet, ({ content }) => void (formulas += isFormula(content) ? 1 : 0))
    expect(formulas).toBeGreaterThan(10)
    const file = await exported(workbook)
    const changes = changedInputs(workbook, 5)
    expect(differences(workbook, valuesAfter(workbook, changes), recalculatedOtherwise(inputAfter(file, changes)))).toEqual([])
  })

  it('comes to the values that stand in the file, on its cover and in the workings too', { timeout: 300_000 }, async () => {
    const file = await exported(workbook)
    expect(unlikeTheFile(file, recalculatedOtherwise(file))).toEqual([])
  })
})

/** The formula cells of a file whose value in it is another than what an engine makes of them. */
function unlikeTheFile({ sheets }: FileInput, found: ReturnType<typeof recalculatedOtherwise>): readonly string[] {
  const unlike: string[] = []
  for (const [name, rows] of sheets) {
    rows.forEach((row, at) => row?.forEach((cell, column) => {
      if (cell?.f === undefined || LEFT_OF_A_BRACKET.test(String(rows[LABELS]?.[column]?.v ?? ''))) return
      const value: CellValue = cell.t === 'e' ? { error: '#N/A', message: '' } : typeof cell.v === 'number' || typeof cell.v === 'string' || typeof cell.v === 'boolean' ? cell.v : null
      const other = found.get(name)?.[at]?.[column] ?? null
      // What is left over after a solving step has its last digits from rounding alone.
      const isRest = typeof value === 'number' && typeof other === 'number' && Math.abs(value - other) <= ROUNDING
      if (!isRest && !sameValue(value, other)) unlike.push(`${name} row ${at + 1} column ${column + 1} =${cell.f.slice(0, 120)}: ${JSON.stringify(cell.v)}, elsewhere ${JSON.stringify(other)}`)
    }))
  }
  return unlike
}

const ROUNDING = 1e-12

/** Which end of a bracket is left behind when the root has been met hangs on the last digit of the value there; the root does not. */
const LEFT_OF_A_BRACKET = /(lower|upper) end|, side \d/
/** The row of a sheet of workings that says what each step is. */
const LABELS = 3
