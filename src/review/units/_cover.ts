import { readFileSync, readdirSync } from 'node:fs'
import { Graph } from '../../calc/graph.ts'
import { readWorkbook } from '../../workbook/file.ts'
import { applyEdits } from '../../workbook/edits.ts'
import { Survey } from '../survey.ts'
import { unitFaults } from './analysis.ts'
import { findUnit, units } from '../../../functions/units/units.ts'
import { printAddress } from '../../workbook/address.ts'
// Mutate: a literal unit of a formula is replaced by another of its dimension.
let [tried, found] = [0, 0]
const missed: string[] = []
for (const f of readdirSync('templates').filter((f) => f.endsWith('.json') && !f.startsWith('plant'))) {
  const read = readWorkbook(readFileSync(`templates/${f}`, 'utf8'))
  if (!('workbook' in read)) continue
  const areas = new Graph(read.workbook).allAreas()
  const survey = new Survey(read.workbook, areas)
  const seen = new Set<string>()
  for (const cell of survey.formulas) {
    const shape = cell.formula.replace(/\d+/g, '#')
    if (seen.has(shape)) continue
    seen.add(shape)
    for (const m of cell.formula.matchAll(/"\s*([^"]+)"/g)) {
      const unit = findUnit(m[1]!)
      if (!unit || unit.dimension === 'share') continue
      const other = units.find((u) => u.dimension === unit.dimension && u.factor !== unit.factor && !u.gauge)!
      const formula = cell.formula.slice(0, m.index) + m[0].replace(m[1]!, other.code) + cell.formula.slice(m.index + m[0].length)
      const mutated = applyEdits(read.workbook, [{ kind: 'cells', sheet: cell.sheet.name, cells: [{ row: cell.row, column: cell.column, cell: { ...cell.cell, content: formula } }] }]).workbook
      tried++
      const faults = unitFaults(new Survey(mutated, areas))
      if (faults.length) found++
      else missed.push(`${f} ${cell.sheet.name}!${printAddress(cell.row, cell.column)} ${formula}   <- ${unit.code}`)
    }
  }
}
console.log(tried, found)
console.log(missed.slice(0, 60).join('\n'))
