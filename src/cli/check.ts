import { Graph } from '../calc/graph.ts'
import type { Change } from '../exchange/return/changes.ts'
import { findFindings } from '../review/find-findings.ts'
import { findingPlace, findingWords } from '../review/finding-words.ts'
import type { Finding } from '../review/finding.ts'
import { KINDS } from '../review/kinds.ts'
import { matchTemplate } from '../review/match-template.ts'
import { Survey } from '../review/survey.ts'
import { printCellPlace } from '../workbook/cell-place.ts'
import type { AcceptedFinding } from '../workbook/review-record.ts'
import { readArguments } from './arguments.ts'
import { FINE, NOT_MET, type ExitCode, type Io } from './io.ts'
import { inCase } from './in-case.ts'
import { tabbed } from './print-value.ts'
import { BadUsage } from './refusal.ts'
import { allTemplates } from './templates.ts'
import { BadWorkbook, changeReason, openWithChanges } from './workbook-file.ts'

/** A finding as it is printed. */
interface Listed extends Pick<Finding, 'kind' | 'severity' | 'reason'> {
  readonly place: string
  readonly label?: string
  readonly key?: string
  readonly causes?: readonly string[]
  readonly accepted?: Pick<AcceptedFinding, 'note' | 'by' | 'at'>
}

/**
 * What there is to look at in a workbook; of a spreadsheet file that came back also what was changed in it beside inputs. Of a file that is no workbook everything that
 * is wrong with it is listed.
 */
export async function run(args: readonly string[], io: Io): Promise<ExitCode> {
  const { values: { json = false, case: name, kind: kinds, accepted: withAccepted = false }, positionals: [path = ''] } = readArguments(args, {
    json: { type: 'boolean' }, case: { type: 'string' }, kind: { type: 'string', multiple: true }, accepted: { type: 'boolean' },
  }, ['FILE'])
  refuseUnknown(kinds)
  try {
    const { workbook, setAside } = await openWithChanges(path, io)
    const graph = new Graph(inCase(workbook, name))
    const survey = new Survey(graph.workbook, graph.allAreas(), matchTemplate(graph.workbook, await allTemplates(io)))
    const looked = findFindings(survey, undefined, KINDS.filter(({ kind }) => isWanted(kind, kinds)))
    const found = [...looked.map(listed), ...(isWanted(SET_ASIDE, kinds) ? setAside.map(changeFinding) : [])]
    const open = found.filter(({ accepted }) => !accepted)
    print(withAccepted ? found : open, json, io)
    if (!json) for (const line of lastLines(graph, open, found.length - open.length, kinds === undefined)) io.out(line)
    return open.some(({ severity }) => severity !== 'remark') ? NOT_MET : FINE
  } catch (error) {
    if (error instanceof BadWorkbook) print(error.problems.map(({ message }) => ({ kind: 'file', severity: 'error', place: path, reason: message })), json, io)
    throw error
  }
}

/** What another program changed in a file that came back. */
const SET_ASIDE = 'set-aside'

const isWanted = (kind: string, kinds: readonly string[] | undefined): boolean => kinds === undefined || kinds.includes(kind)

function refuseUnknown(kinds: readonly string[] | undefined): void {
  const known = [...KINDS.map(({ kind }) => kind), SET_ASIDE]
  const unknown = kinds?.find((kind) => !known.includes(kind))
  if (unknown !== undefined) throw new BadUsage(`--kind ${unknown}: there is no such kind; there are ${known.join(', ')}`)
}

function listed(finding: Finding): Listed {
  const { kind, severity, label, reason, key, causes = [], accepted } = finding
  return {
    kind, severity, place: findingPlace(finding), ...(label !== undefined && { label }), reason, key,
    ...(causes.length > 0 && { causes: causes.map(printCellPlace) }),
    ...(accepted && { accepted: { note: accepted.note, ...(accepted.by !== undefined && { by: accepted.by }), ...(accepted.at !== undefined && { at: accepted.at }) } }),
  }
}

/** What another program changed in a spreadsheet file, and was not taken over. */
const changeFinding = (change: Change): Listed => ({ kind: SET_ASIDE, severity: 'warning', place: change.place, reason: `set aside: ${changeReason(change)}` })

function print(found: readonly Listed[], json: boolean, io: Io): void {
  if (json) io.out(JSON.stringify(found, undefined, 1))
  else for (const { severity, place, label, reason, accepted } of found) io.out(tabbed([severity, place, findingWords({ label, reason }), ...(accepted ? [acceptedWords(accepted)] : [])]))
}

const acceptedWords = ({ note, by, at }: NonNullable<Listed['accepted']>): string => `accepted${by === undefined ? '' : ` by ${by}`}${at === undefined ? '' : ` on ${at.slice(0, 10)}`}: ${note}`

function lastLines(graph: Graph, open: readonly Listed[], accepted: number, isOfAllKinds: boolean): string[] {
  if (accepted > 0) return [...(open.length > 0 ? [] : ['no open findings']), `${accepted} ${accepted === 1 ? 'finding' : 'findings'} accepted with a note`]
  return open.length > 0 ? [] : [isOfAllKinds ? allWellWords(graph) : 'no findings of this kind']
}

function allWellWords(graph: Graph): string {
  const checks = graph.states().reduce((sum, state) => sum + state.checks, 0)
  return `no findings: no error values, ${checks === 0 ? 'no checks in the workbook' : checks === 1 ? 'its one check is met' : `all ${checks} checks are met`}`
}
