import { Graph } from '../../src/calc/graph.ts'
import { compareWorkbooks, type ComparedSide } from '../../src/review/differences/compare-workbooks.ts'
import type { Difference } from '../../src/review/differences/difference.ts'
import type { Finding } from '../../src/review/finding.ts'
import { reviewed } from '../../src/review/reviewed.ts'
import type { CellPlace } from '../../src/workbook/cell-place.ts'
import type { Workbook } from '../../src/workbook/document.ts'
import { TEMPLATES } from './clean.ts'
import { cellsNamed, template, type Plant } from './planted/plant.ts'

/** What led a reviewer to a planted fault. */
export interface Led {
  readonly plant: Plant
  /** Open findings that the workbook without the fault does not have. */
  readonly findings: readonly Finding[]
  /** None where there is nothing to compare with. */
  readonly differences: readonly Difference[]
}

const templates: readonly Workbook[] = TEMPLATES.map(template)
const known = new Map<Workbook, readonly Finding[]>()

const withAreas = (workbook: Workbook): ComparedSide => ({ workbook, areas: new Graph(workbook).allAreas() })

/** All that is found in a workbook and not accepted, as the app and the command line look for it. */
export function openFindings(workbook: Workbook): readonly Finding[] {
  const found = known.get(workbook) ?? reviewed(workbook, new Graph(workbook).allAreas(), templates).findings.filter(({ accepted }) => accepted === undefined)
  known.set(workbook, found)
  return found
}

/** A finding of an error or a warning in a workbook in which nothing is wrong. */
export const falseAlarms = (workbook: Workbook): readonly Finding[] => openFindings(workbook).filter(({ severity }) => severity !== 'remark')

export function review(plant: Plant): Led {
  const [{ base }, now] = [plant, plant.plant(plant.base)]
  const before = saidOf(base)
  const findings = openFindings(now).filter((finding) => placesOf(finding).some((place) => plant.leads.some((lead) => meets(lead, place)) && isNew(finding, before.get(cellKey(finding, place)))))
  const differences = plant.before ? compareWorkbooks(withAreas(base), withAreas(now)).differences.filter((difference) => plant.leads.some((lead) => leadsTo(difference, lead))) : []
  return { plant, findings, differences }
}

/** What findings say of a cell, by their kind and the cell. */
function saidOf(workbook: Workbook): ReadonlyMap<string, readonly Finding[]> {
  const said = new Map<string, Finding[]>()
  for (const finding of openFindings(workbook)) {
    for (const place of placesOf(finding)) said.set(cellKey(finding, place), [...(said.get(cellKey(finding, place)) ?? []), finding])
  }
  return said
}

const cellKey = ({ kind }: Finding, { sheet, row, column }: CellPlace): string => [kind, sheet, row, column].join('|')

/** Whether it says something that was not said of the cell before; a remark, one of many, also says it in words or numbers that were not there. */
function isNew({ key, severity, reason }: Finding, before: readonly Finding[] = []): boolean {
  if (before.some((one) => one.key === key)) return false
  const words = new Set(before.flatMap((one) => wordsOf(one.reason)))
  return severity !== 'remark' || before.length === 0 || wordsOf(reason).some((word) => !words.has(word))
}

const wordsOf = (reason: string): readonly string[] => reason.match(/[\p{L}\d.]+/gu) ?? []

/** Severe first: the kind of what led there. */
export const howFound = ({ findings }: Led): readonly string[] => [...new Set(['error', 'warning', 'remark'].flatMap((severity) =>
  findings.filter((finding) => finding.severity === severity).map(({ kind }) => `${kind} (${severity})`)))]

/** The cells of a finding one by one, then those that cause it. */
function placesOf({ sheet, area: { top, left, bottom, right }, causes = [] }: Finding): CellPlace[] {
  const own: CellPlace[] = []
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) own.push({ sheet, row, column })
  return [...own, ...causes]
}

function meets(lead: string, { sheet, row, column }: CellPlace): boolean {
  const named = cellsNamed(lead)
  return named !== undefined && named.sheet === sheet && row >= named.area.top && row <= named.area.bottom && column >= named.area.left && column <= named.area.right
}

function leadsTo({ now, before, label, was, is }: Difference, lead: string): boolean {
  const places = [now, before].filter((place) => place !== undefined)
  return places.some((place) => meets(lead, place)) || (cellsNamed(lead) === undefined && [label, was, is].some((words) => words?.includes(lead)))
}
