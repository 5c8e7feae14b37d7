import { readFileSync, readdirSync } from 'node:fs'
import { Graph } from '../../calc/graph.ts'
import { readWorkbook } from '../../workbook/file.ts'
import { applyEdits } from '../../workbook/edits.ts'
import { restate } from '../../workbook/restate.ts'
import { Survey } from '../survey.ts'
import { findFindings } from '../find-findings.ts'
import { findingPlace, findingWords } from '../finding-words.ts'
import { unitKinds } from './kinds-of-units.ts'
for (const file of [...readdirSync('templates').filter((f) => f.endsWith('.json')).map((f) => `templates/${f}`), 'demo-data/tallowmere.lowside.json']) {
  const read = readWorkbook(readFileSync(file, 'utf8'))
  if (!('workbook' in read)) throw new Error(file)
  const workbook = applyEdits(read.workbook, restate(read.workbook, 'SI') as never).workbook
  const found = findFindings(new Survey(workbook, new Graph(workbook).allAreas()), undefined, unitKinds)
  console.log(`## SI ${file}: ${found.length} findings`)
  for (const one of found) console.log(`  ${one.kind} ${one.severity} ${findingPlace(one)} ${findingWords(one)}`)
}
