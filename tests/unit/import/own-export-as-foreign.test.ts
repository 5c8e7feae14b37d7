import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { computedOtherwise } from '../../../src/exchange/import/compare-values.ts'
import { importedWorkbook } from '../../../src/exchange/import/import-edits.ts'
import { importSheets } from '../../../src/exchange/import/import-sheets.ts'
import { exportOds } from '../../../src/exchange/ods.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import { exportXlsx } from '../../../src/exchange/xlsx.ts'
import { isFormula, usedRange, type Workbook } from '../../../src/workbook/document.ts'
import { readWorkbook } from '../../../src/workbook/file.ts'

function template(name: string): Workbook {
  const read = readWorkbook(readFileSync(new URL(`../../../templates/${name}.lowside.json`, import.meta.url), 'utf8'))
  if ('problems' in read) throw new Error(read.problems[0]?.message)
  return read.workbook
}

const formulasIn = (rows: readonly (readonly ({ readonly formula?: string } | undefined)[] | undefined)[]): number =>
  rows.reduce((sum, row) => sum + (row ?? []).filter((cell) => cell?.formula !== undefined).length, 0)

/** Thousands of formulas over many sheets, as a file of anyone's. */
describe.each([['xlsx', exportXlsx], ['ods', exportOds]] as const)('an exported template as the sheets of a %s file', (ending, write) => {
  it.each(['zone-setpoints', 'feed-valves'])('%s: every formula stays one, and comes to what the file holds', async (name) => {
    const workbook = template(name)
    const bytes = await write(workbook, new Graph(workbook).allValues(), { date: new Date('2026-11-27T08:00:00Z') })
    const contents = await readFileContents(bytes, `x.${ending}`)
    if ('problem' in contents) throw new Error(contents.problem)
    const imported = importSheets(contents)
    expect(imported.remarks.filter(({ kind }) => kind === 'kept as text')).toEqual([])
    const graph = new Graph(importedWorkbook('x', imported))
    let formulas = 0
    for (const one of imported.sheets) {
      const { rows, columns } = usedRange(one.sheet)
      expect(computedOtherwise(one, 0, graph.read(one.sheet.name, { top: 0, left: 0, bottom: rows - 1, right: columns - 1 }).values)).toEqual([])
      const kept = one.sheet.rows.reduce((sum, row) => sum + (row ?? []).filter((cell) => isFormula(cell?.content)).length, 0)
      expect(kept).toBe(formulasIn(one.from.rows))
      formulas += kept
    }
    expect(formulas).toBeGreaterThan(4000)
  })
})
