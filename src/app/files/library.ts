import { readWorkbook } from '../../workbook/file.ts'
import type { Workbook } from '../../workbook/document.ts'

/** Workbooks that come with Lowside: the demo, and the templates. Each is read when it is asked for. */
const DEMO = import.meta.glob<string>('../../../demo-data/*.lowside.json', { query: '?raw', import: 'default' })
const TEMPLATES = import.meta.glob<string>('../../../templates/*.lowside.json', { query: '?raw', import: 'default' })

export interface Template {
  readonly title: string
  readonly purpose: string
  readonly workbook: Workbook
}

/** The demo workbook; undefined if there is none. */
export async function demoWorkbook(): Promise<Workbook | undefined> {
  const [first] = Object.values(DEMO)
  return first && ownWorkbook(await first())
}

/** The templates in the order of their titles. */
export async function templates(): Promise<readonly Template[]> {
  const workbooks = await Promise.all(Object.values(TEMPLATES).map(async (load) => ownWorkbook(await load())))
  return workbooks
    .map((workbook) => ({ title: workbook.title, purpose: workbook.purpose, workbook }))
    .toSorted((one, other) => one.title.localeCompare(other.title))
}

function ownWorkbook(text: string): Workbook {
  const read = readWorkbook(text)
  if ('problems' in read) throw new Error(`a workbook that comes with Lowside cannot be read: ${read.problems[0]?.message ?? ''}`)
  return read.workbook
}
