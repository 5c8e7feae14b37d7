import { casesProblem, inReadingOrder, type CaseValue, type Cases } from './cases.ts'
import { printCellPlace } from './cell-place.ts'
import type { Workbook } from './document.ts'
import { placeReader, type FilePath } from './file-places.ts'
import type { FileHeld, WorkbookFile } from './schema.ts'

/**
 * Cases as a file has them: the cells of the file are the base's whichever case is current, each case has its own values by address, a line a
 * value, and the current one is named. So a switch changes one line of the file.
 */

/** @param report hears of what is wrong, and where in the file */
export function casesOfFile(file: Pick<WorkbookFile, 'cases' | 'currentCase' | 'compared' | 'sheets'>, report: (message: string, path: FilePath) => void): { readonly cases: Cases; readonly current: number | null } {
  const placeOf = placeReader(file.sheets, report)
  const list = file.cases.map(({ name, note, values }, index) => ({
    name, ...(note === undefined ? {} : { note }),
    aside: Object.entries(values).flatMap(([text, held]): CaseValue[] => placeOf(text, ['cases', index, 'values', text]).map((place) => ({ ...place, ...heldOf(held) }))),
  }))
  const compared = file.compared.flatMap((text, index) => placeOf(text, ['compared', index]))
  const current = file.currentCase === undefined ? null : list.findIndex(({ name }) => name === file.currentCase)
  if (current === -1) report(`there is no case ${JSON.stringify(file.currentCase)}; accepted: ${list.map(({ name }) => JSON.stringify(name)).join(', ') || 'none, as there are no cases'}`, ['currentCase'])
  const cases: Cases = { list, current: null, compared }
  const problems = list.map((one, index) => casesProblem({ list: [...list.slice(0, index).map(({ name }) => ({ name, aside: [] })), one], current: null, compared: [] }))
  for (const [index, problem] of problems.entries()) if (problem !== undefined) report(problem, ['cases', index])
  // Each may be in order, and all of them be too much.
  const together = problems.some((problem) => problem !== undefined) ? undefined : casesProblem(cases)
  if (together !== undefined) report(together, ['cases'])
  return { cases, current: current === -1 ? null : current }
}

/** The members of a file that tell of cases; nothing where there are none. The workbook has its base in the cells. */
export function casesText(workbook: Workbook, currentCase: string | undefined): string {
  if (!workbook.cases) return ''
  const { list, compared } = workbook.cases
  const cases = list.map(({ name, note, aside }) => {
    const lines = inReadingOrder(workbook, aside).map((value) => `\n     ${json(printCellPlace(value))}: ${heldText(value)}`)
    return `\n  {"name": ${json(name)},${note === undefined ? '' : ` "note": ${json(note)},`}\n   "values": {${lines.join(',')}${lines.length > 0 ? '\n   ' : ''}}}`
  })
  return [
    list.length > 0 ? `,\n "cases": [${cases.join(',')}\n ]` : '',
    currentCase === undefined ? '' : `,\n "currentCase": ${json(currentCase)}`,
    compared.length > 0 ? `,\n "compared": [${compared.map((place) => `\n  ${json(printCellPlace(place))}`).join(',')}\n ]` : '',
  ].join('')
}

const heldOf = (held: FileHeld): Pick<CaseValue, 'content' | 'restatedFrom'> => (Array.isArray(held) ? { content: held[0], ...held[1] } : { content: held })

const heldText = ({ content, restatedFrom }: CaseValue): string => (restatedFrom === undefined ? json(content) : `[${json(content)}, {"restatedFrom": ${json(restatedFrom)}}]`)

const json = (value: string | number | boolean | null): string => JSON.stringify(value)
