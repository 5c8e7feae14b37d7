import { readFileSync } from 'node:fs'
import { Graph } from '../../calc/graph.ts'
import { readWorkbook } from '../../workbook/file.ts'
import { applyEdits, type CellChange } from '../../workbook/edits.ts'
import { shiftReferences } from '../../workbook/formula/references.ts'
import { Survey } from '../survey.ts'
import { unitFaults } from './analysis.ts'
const read = readWorkbook(readFileSync('templates/charge-inventory.lowside.json', 'utf8'))
if (!('workbook' in read)) throw new Error()
const sheet = read.workbook.sheets.find((s) => s.name === 'Charge')!
const row = sheet.rows[8]!
const cells: CellChange[] = []
for (let r = 70; r < 10070; r++) row.forEach((cell, column) => { if (cell) cells.push({ row: r, column, cell: { ...cell, content: typeof cell.content === 'string' && cell.content.startsWith('=') ? shiftReferences(cell.content, r - 8, 0) : typeof cell.content === 'number' ? cell.content + r * 0.37 : cell.content } }) })
const workbook = applyEdits(read.workbook, [{ kind: 'cells', sheet: 'Charge', cells }]).workbook
console.time('graph'); const areas = new Graph(workbook).allAreas(); console.timeEnd('graph')
const survey = new Survey(workbook, areas)
console.time('units'); const faults = unitFaults(survey); console.timeEnd('units')
console.log(survey.formulas.length, faults.length)
const bare = applyEdits(workbook, [{ kind: 'cells', sheet: 'Charge', cells: Array.from({ length: 9000 }, (_, i) => ({ row: 80 + i, column: 20, cell: { content: `=SUM(P$8:P${81 + i})*2+U${80 + i}*H${81 + i}`, role: 'result' as const } })) }]).workbook
const s2 = new Survey(bare, areas)
console.time('units2'); console.log(unitFaults(s2).length); console.timeEnd('units2')
import { findFindings } from '../find-findings.ts'
import { findingPlace, findingWords } from '../finding-words.ts'
import { unitKinds } from './kinds-of-units.ts'
console.time('told'); const f = findFindings(survey, undefined, unitKinds); console.timeEnd('told')
console.log(f.length, f.slice(0, 5).map((x) => findingPlace(x) + ' ' + x.kind + ' ' + findingWords(x)).join('\n'))
