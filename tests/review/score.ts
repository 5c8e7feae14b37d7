import { Graph } from '../../src/calc/graph.ts'
import { compareWorkbooks, type ComparedSide } from '../../src/review/differences/compare-workbooks.ts'
import type { Difference } from '../../src/review/differences/difference.ts'
import type { Finding } from '../../src/review/finding.ts'
import { reviewed } from '../../src/review/reviewed.ts'
import type { Area } from '../../src/workbook/address.ts'
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
  const before = new Set(openFindings(base).flatMap(cellsOf))
  const isNew = (finding: Finding, cell: string): boolean => !before.has(cell) && finding.accepted === undefined
  const findings = openFindings(now).filter((finding) => placesOf(finding).some((place, index) => plant.leads.some((lead) => meets(lead, place)) && isNew(finding, cellOf(finding, place, index))))
  const differences = plant.before ? compareWorkbooks(withAreas(base), withAreas(now)).differences.filter((difference) => plant.leads.some((lead) => leadsTo(difference, lead))) : []
  return { plant, findings, differences }
}

/** Severe first: the kind of what led there. */
export const howFound = ({ findings }: Led): readonly string[] => [...new Set(['error', 'warning', 'remark'].flatMap((severity) =>
  findings.filter((finding) => finding.severity === severity).map(({ kind }) => `${kind} (${severity})`)))]

/** The cells of a finding one by one, then those that cause it. */
function placesOf({ sheet, area: { top, left, bottom, right }, causes = [] }: Finding): CellPlace[] {
  const own: CellPlace[] = []
  for (let row = top; row <= bottom; row++) for (let column = left; column <= right; column++) own.push({ sheet, row, column })
  return [...own, ...causes]
}

const cellsOf = (finding: Finding): string[] => placesOf(finding).map((place, index) => cellOf(finding, place, index))

/** What is said of a cell: that it has the fault, or, after as many as the area has, that it causes one. */
const cellOf = ({ kind, key, area }: Finding, { sheet, row, column }: CellPlace, index: number): string =>
  [kind, key, index < sizeOf(area) ? 'has' : 'causes', sheet, row, column].join('|')

const sizeOf = ({ top, left, bottom, right }: Area): number => (bottom - top + 1) * (right - left + 1)

function meets(lead: string, { sheet, row, column }: CellPlace): boolean {
  const named = cellsNamed(lead)
  return named !== undefined && named.sheet === sheet && row >= named.area.top && row <= named.area.bottom && column >= named.area.left && column <= named.area.right
}

function leadsTo({ now, before, label, was, is }: Difference, lead: string): boolean {
  const places = [now, before].filter((place) => place !== undefined)
  return places.some((place) => meets(lead, place)) || (cellsNamed(lead) === undefined && [label, was, is].some((words) => words?.includes(lead)))
}
