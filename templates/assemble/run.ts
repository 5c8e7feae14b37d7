// Writes the template `plant` from the other templates, and the demo workbooks from the plant: npm run -s plant
import { writeFileSync } from 'node:fs'
import { writeWorkbook } from '../../src/workbook/file.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { DEMOS } from './demo-inputs.ts'
import { demoFile, readTemplates, templateFile } from './files.ts'
import { TEMPLATE_ORDER } from './order.ts'
import { assemblePlant, demoOf } from './plant.ts'

try {
  const templates = readTemplates()
  const missing = TEMPLATE_ORDER.filter((name) => !templates.some((template) => template.name === name))
  if (missing.length > 0) console.log(`Not there yet: ${missing.join(', ')}`)
  const { workbook, waiting } = assemblePlant(templates)
  for (const { sheet, input } of waiting) console.log(`Not linked yet: ${sheet}, ${input}`)
  const files = [
    { file: templateFile('plant'), made: workbook },
    ...DEMOS.map((demo) => ({ file: demoFile(demo.file), made: demoOf(workbook, demo) })),
  ]
  for (const { file, made } of files) {
    writeFileSync(file, writeWorkbook(made))
    console.log(`Wrote ${file}`)
  }
} catch (error) {
  if (!(error instanceof WorkbookProblem)) throw error
  console.error(error.message)
  process.exitCode = 1
}
