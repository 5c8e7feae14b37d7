import { readFileSync, readdirSync } from 'node:fs'
import { Graph } from '../../calc/graph.ts'
import { readWorkbook } from '../../workbook/file.ts'
import { Survey } from '../survey.ts'
import { findFindings } from '../find-findings.ts'
import { findingPlace, findingWords } from '../finding-words.ts'
import { unitKinds } from './kinds-of-units.ts'
const files = process.argv.slice(2).length ? process.argv.slice(2) : [...readdirSync('templates').filter((f) => f.endsWith('.json')).map((f) => `templates/${f}`), 'demo-data/tallowmere.lowside.json']
for (const file of files) {
  const read = readWorkbook(readFileSync(file, 'utf8'))
  if (!('workbook' in read)) throw new Error(file)
  const survey = new Survey(read.workbook, new Graph(read.workbook).allAreas())
  const start = performance.now()
  const found = findFindings(survey, undefined, unitKinds)
  console.log(`## ${file}: ${found.length} findings, ${survey.formulas.length} formulas, ${(performance.now() - start).toFixed(0)} ms`)
  for (const one of found) console.log(`  ${one.kind} ${one.severity} ${findingPlace(one)} ${findingWords(one)}${one.mend ? ` [${one.mend.words}]` : ''}`)
}
