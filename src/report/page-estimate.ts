import { functionsCalled } from '../calc/functions-called.ts'
import type { AreaValues } from '../calc/values.ts'
import { checkCells } from '../calc/check-cells.ts'
import { isFormula, type Cell, type Sheet, type Workbook } from '../workbook/document.ts'
import type { Paper } from '../workbook/report-settings.ts'
import { layOut, type Band } from './bands.ts'
import { columnNeeds } from './column-needs.ts'
import { figuresOfSheets } from './figures-of-sheets.ts'
import { printedRowCount } from './outline.ts'
import { printableHeight } from '../pages/paper.ts'
import { printedCells, type PrintedCells } from './printed-cells.ts'
import { bandRows } from './sheet-tables.ts'

/** What is to be printed. */
export interface ToPrint {
  readonly sheets: readonly Sheet[]
  readonly paper: Paper
  /** The findings are told of, those accepted too. */
  readonly withReview: boolean
}

/**
 * About how many pages the report becomes: columns are laid out as they are printed, lines counted by their letters. What formulas come to is not
 * known here; they are taken for numbers of the usual length.
 */
export function estimatedPages(workbook: Workbook, { sheets, paper, withReview }: ToPrint): number {
  const figures = figuresOfSheets(workbook, new Set(sheets.map(({ name }) => name)))
  const ofSheets = sheets.reduce((sum, sheet) => sum + sheetPages(sheet, paper, figures.ofSheets.get(sheet.name)?.length ?? 0), 0)
  return Math.ceil(frontHeight(workbook, withReview) / printableHeight(paper, 'portrait')) + ofSheets + Math.ceil(figures.others.length / FIGURES_ON_A_PAGE)
}

/** A line of the type of the report and what stands above and below it, in CSS px. */
const LINE = (8.5 * 1.35 * 96) / 72
const PADDING = (2 * 1.6 * 96) / 72
/** On average of a text, broken at words. */
const LETTER = 6.9
const HEADING_MORE = 9
const FIGURE = 400
const FIGURES_ON_A_PAGE = 2

/** Title, facts, room to sign, caution, contents; then what is listed. */
const FRONT = 850
const A_CHECK = 17
const A_FINDING = 48
const A_METHOD = 115

function frontHeight(workbook: Workbook, withReview: boolean): number {
  const { sheets, review } = workbook
  const checks = sheets.reduce((sum, sheet) => sum + checkCells(sheet).length, 0)
  const accepted = withReview ? (review?.accepted.length ?? 0) : 0
  return FRONT + sheets.length * A_CHECK + checks * A_CHECK + accepted * A_FINDING + (review?.marks.length ?? 0) * A_FINDING + functionsCalled(workbook).length * A_METHOD
}

/** Of a long sheet the first rows stand for the others. */
const MOST_LOOKED_AT = 600

function sheetPages(sheet: Sheet, paper: Paper, figures: number): number {
  const part = sheet.rows.length > MOST_LOOKED_AT ? { ...sheet, rows: sheet.rows.slice(0, MOST_LOOKED_AT) } : sheet
  const printed = printedCells(part, usualValues(part))
  const { orientation, bands } = layOut(columnNeeds(part, printed), sheet.frozen[1], paper)
  const page = printableHeight(paper, orientation)
  const share = printedRowCount(sheet) / Math.max(1, printedRowCount(part))
  const heights = bands.map((band) => bandHeight(part, printed, band) * share)
  const notes = printed.remarks.length * LINE * share
  if (bands.length === 1) return Math.max(1, Math.ceil(((heights[0] ?? 0) + notes + figures * FIGURE) / page))
  return heights.reduce((sum, height) => sum + Math.ceil(height / page), 0) + Math.ceil((figures * FIGURE + notes) / page)
}

function bandHeight(sheet: Sheet, printed: PrintedCells, band: Band): number {
  const { head, blocks } = bandRows(sheet, printed, band)
  const height = (row: number): number => {
    const lines = band.columns.map(({ column, width }, index) => {
      const cell = printed.at(row, column)
      if (cell === undefined || cell.kind === 'number') return 1
      // A text that nothing stands beside goes on over the empty columns.
      let room = width
      for (const next of cell.staysIn ? [] : band.columns.slice(index + 1)) {
        if (printed.at(row, next.column) !== undefined) break
        room += next.width
      }
      if (!cell.staysIn) room += band.rest
      return cell.text.split('\n').reduce((sum, line) => sum + Math.max(1, Math.ceil((line.length * LETTER) / Math.max(1, room - PADDING))), 0)
    })
    return Math.max(1, ...lines) * LINE + PADDING
  }
  const all = [...head, ...blocks.flat()]
  return all.reduce((sum, row) => sum + height(row), 0) + blocks.length * HEADING_MORE
}

/** As the cells with formulas will look, about. */
const usualValues = ({ rows }: Sheet): AreaValues => ({ values: Array.from(rows, (row) => Array.from(row ?? [], usualValue)), checks: new Map() })

function usualValue(cell: Cell | undefined): string | number | boolean | null {
  if (cell === undefined || !isFormula(cell.content)) return cell?.content ?? null
  return cell.role === 'check' ? true : cell.role === 'unit' ? 'lb/min' : cell.role === 'label' || cell.role === 'heading' || cell.role === 'text' ? 'Text of this length' : 123.4
}
