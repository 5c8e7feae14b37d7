import { existsSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { readWorkbook } from '../../src/workbook/file.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { TEMPLATE_ORDER, type NamedTemplate } from './order.ts'

export const templateFile = (name: string): string => fileURLToPath(new URL(`../${name}.lowside.json`, import.meta.url))
export const demoFile = (name: string): string => fileURLToPath(new URL(`../../demo-data/${name}.lowside.json`, import.meta.url))

/** The templates of the plant that there are, in the order of the job. @throws WorkbookProblem for one that cannot be read. */
export function readTemplates(): NamedTemplate[] {
  return TEMPLATE_ORDER.filter((name) => existsSync(templateFile(name))).map((name) => {
    const read = readWorkbook(readFileSync(templateFile(name), 'utf8'))
    if ('problems' in read) throw new WorkbookProblem(`template ${name}: ${read.problems[0]?.message ?? 'cannot be read'}`)
    return { name, workbook: read.workbook }
  })
}
