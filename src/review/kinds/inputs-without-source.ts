import { bandOf, columnsHeaded, isTable, type Band } from '../bands.ts'
import type { FindingKind, Found } from '../finding.ts'
import { inputsOf, type InputCell } from '../input-cells.ts'
import { merge } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** Numbers that do not say where they come from, where their neighbours do. */
export const inputsWithoutSource: FindingKind = {
  kind: 'inputs-without-source',
  heading: 'Inputs without source',
  about:
    'Asked for where the sheet has a column for it, headed “Source”, “Origin”, “Basis”, “Reference” or, without such, “Method” or “Why”: there each typed number says where it comes from, in its row or in a note. In a table with units over its columns one source in that column counts for all its rows.',
  find: (survey) => merge(inputsOf(survey).flatMap((input) => {
    const column = typeof input.cell.content === 'number' ? missingIn(survey, input) : undefined
    if (column === undefined) return []
    const { sheet, row } = input
    const found: Found = {
      severity: 'remark', sheet: sheet.name, area: { top: row, bottom: row, left: input.column, right: input.column }, key: 'no source',
      reason: `Where the number comes from is not said: “${column}” is empty in its row, and it has no note.`,
    }
    return [{ found, alike: column }]
  })),
}

/** The heading of the column in which the source is missing. */
function missingIn(survey: Survey, { sheet, row, column, cell: { note } }: InputCell): string | undefined {
  const band = bandOf(sheet, row)
  if (band === undefined || (note !== undefined && note.trim() !== '')) return undefined
  const asked = askedColumns(band).filter((at) => at > column)
  const [first] = asked
  if (first === undefined || asked.some((at) => isSaid(survey, sheet.name, row, at))) return undefined
  if (isTable(sheet, band) && asked.some((at) => isSaidAnywhere(survey, sheet.name, band, at))) return undefined
  return band.headings.get(first)
}

const known = new WeakMap<Band, readonly number[]>()

/** The columns of sources; where there is none those of methods: beside a column of sources a method is no source. */
function askedColumns(band: Band): readonly number[] {
  const before = known.get(band)
  if (before !== undefined) return before
  const sources = columnsHeaded(band, SOURCE)
  const asked = sources.length > 0 ? sources : columnsHeaded(band, METHOD)
  known.set(band, asked)
  return asked
}

const SOURCE = /\b(?:sources?|origin|references?|basis|where .* comes? from)\b/i
const METHOD = /^(?:methods?|why|remarks?|notes?|comments?)\b/i

const isSaid = (survey: Survey, sheet: string, row: number, column: number): boolean => {
  const value = survey.value(sheet, row, column)
  return typeof value === 'string' && value.trim() !== ''
}

function isSaidAnywhere(survey: Survey, sheet: string, { top, bottom }: Band, column: number): boolean {
  for (let row = top; row <= Math.min(bottom, top + ROWS_LOOKED_AT); row++) if (isSaid(survey, sheet, row, column)) return true
  return false
}

const ROWS_LOOKED_AT = 50
