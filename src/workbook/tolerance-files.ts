import { inReadingOrder } from './cases.ts'
import { printCellPlace } from './cell-place.ts'
import type { Workbook } from './document.ts'
import { placeReader, type FilePath } from './file-places.ts'
import { normalTolerances, tolerancesProblem, type GivenTolerance, type Tolerance } from './given-tolerances.ts'
import type { FileTolerance, WorkbookFile } from './schema.ts'

/** Tolerances as a file has them: by the cell of the input, one a line. @param report hears of what is wrong, and where in the file */
export function tolerancesOfFile(file: Pick<WorkbookFile, 'tolerances' | 'sheets'>, report: (message: string, path: FilePath) => void): readonly GivenTolerance[] | undefined {
  const placeOf = placeReader(file.sheets, report)
  const given = Object.entries(file.tolerances).flatMap(([text, one]) => placeOf(text, ['tolerances', text]).map((place) => ({ place, tolerance: toleranceOf(one) })))
  const problem = tolerancesProblem(given)
  if (problem !== undefined) report(problem, ['tolerances'])
  return normalTolerances(given)
}

/** The member of a file that tells of tolerances; nothing where there are none. */
export function tolerancesText(workbook: Workbook): string {
  const flat = (workbook.tolerances ?? []).map(({ place, tolerance }) => ({ ...place, tolerance }))
  const lines = inReadingOrder(workbook, flat).map(({ tolerance: { kind: _kind, ...said }, ...place }) => `\n  ${JSON.stringify(printCellPlace(place))}: ${JSON.stringify(said)}`)
  return lines.length === 0 ? '' : `,\n "tolerances": {${lines.join(',')}\n }`
}

const toleranceOf = ({ share, size = 0, restatedFrom }: FileTolerance): Tolerance =>
  share === undefined ? { kind: 'size', size, ...(restatedFrom === undefined ? {} : { restatedFrom }) } : { kind: 'share', share }
