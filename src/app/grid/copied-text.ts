import { plainValue, valueText } from '../../calc/cell-value.ts'
import type { CellValue } from '../../calc/values.ts'
import { createSlices } from '../../storage/next-task.ts'
import type { LinedUp } from '../../workbook/areas.ts'
import { isFormula, type Cell } from '../../workbook/document.ts'
import { WorkStopped } from '../state/long-work.ts'
import type { Session } from '../state/session.ts'
import { printTabular } from './tabular-text.ts'

/** Cells of a sheet that go to the clipboard. */
export interface ToCopy {
  readonly sheet: string
  readonly from: LinedUp
  readonly cells: readonly (readonly (Cell | undefined)[])[]
}

/** Whether all values are known as they are now: those out of view need not be. */
export const isAllKnown = ({ values }: Pick<Session, 'values'>, { sheet, from, cells }: ToCopy): boolean =>
  cells.every((line, row) => line.every((cell, column) => !isFormula(cell?.content) || values.isCurrent(sheet, from.rows[row] ?? 0, from.columns[column] ?? 0)))

/** What other programs get, by the values that are known. */
export function knownText({ values }: Pick<Session, 'values'>, { sheet, from, cells }: ToCopy): string {
  return printTabular(cells.map((line, row) => line.map((cell, column) => textOf(cell, values.at(sheet, from.rows[row] ?? 0, from.columns[column] ?? 0)))))
}

/** Cells whose values are asked for at once: a few milliseconds on the way. */
const CELLS_AT_ONCE = 4000

/** The same by the values of the graph, whatever has been read of it; the screen goes on meanwhile. Rejected where they cannot be had, with `WorkStopped` if that is stopped. */
export async function readText({ recalculation, work }: Pick<Session, 'recalculation' | 'work'>, { sheet, from, cells }: ToCopy): Promise<string> {
  let isStopped = false
  const version = recalculation.version()
  const shown = work.begin('Copying', () => (isStopped = true))
  const slice = createSlices()
  try {
    const lines: string[][] = []
    const columnRuns = runsOf(from.columns, Infinity)
    for (const rows of runsOf(from.rows, Math.max(1, Math.floor(CELLS_AT_ONCE / from.columns.length)))) {
      const blocks = await Promise.all(columnRuns.map((columns) =>
        recalculation.ask((service) => service.read(sheet, { top: rows.first, left: columns.first, bottom: rows.last, right: columns.last }))))
      if (isStopped) throw new WorkStopped('The copy was stopped.')
      if (version !== recalculation.version()) throw new Error('The workbook has changed while it was being copied; copy again')
      if (blocks.includes(undefined)) throw new Error('The values of what was to be copied cannot be had; recalculate, then copy again')
      for (let row = rows.first; row <= rows.last; row++) {
        const values = blocks.flatMap((block) => block?.values[row - rows.first] ?? [])
        lines.push((cells[lines.length] ?? []).map((cell, column) => textOf(cell, values[column])))
      }
      shown.report(lines.length / from.rows.length)
      await slice()
    }
    return printTabular(lines)
  } finally {
    shown.end()
  }
}

const textOf = (cell: Cell | undefined, value: CellValue | undefined): string => {
  const plain = plainValue(cell)
  return valueText(plain === undefined ? value : plain)
}

/** Numbers that follow each other, at most so many at a time. */
function runsOf(numbers: readonly number[], most: number): { first: number; last: number }[] {
  const runs: { first: number; last: number }[] = []
  for (const number of numbers) {
    const run = runs.at(-1)
    if (run?.last === number - 1 && number - run.first < most) run.last = number
    else runs.push({ first: number, last: number })
  }
  return runs
}
