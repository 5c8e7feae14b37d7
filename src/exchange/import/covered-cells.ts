import { areaOf, type Reference } from '../../workbook/address.ts'
import { foldCase } from '../../workbook/document.ts'

interface Rows {
  readonly top: number
  readonly bottom: number
}

/** Which cells the references of many formulas mean together: column by column, as runs of rows. */
export class CoveredCells {
  readonly #columns = new Map<string, Rows[][]>()
  readonly #known = new Map<string, number>()
  #merged = false

  /** @param widths how many columns of each sheet are in use, by its name in small letters: whole rows mean no more */
  constructor(private readonly widths: ReadonlyMap<string, number>) {}

  add(reference: Reference, host: string): void {
    const sheet = foldCase(reference.sheet ?? host)
    const { top, bottom, left, right } = areaOf(reference)
    const columns = this.#columns.get(sheet) ?? []
    this.#columns.set(sheet, columns)
    this.#merged = false
    for (let column = left; column <= Math.min(right, (this.widths.get(sheet) ?? 0) - 1); column++) {
      // Thousands of formulas refer to the same table.
      const key = `${sheet}\n${column}`
      const runs = (columns[column] ??= [])
      const last = runs[this.#known.get(key) ?? -1]
      if (last !== undefined && last.top === top && last.bottom === bottom) continue
      this.#known.set(key, runs.push({ top, bottom }) - 1)
    }
  }

  has(sheetName: string, row: number, column: number): boolean {
    if (!this.#merged) this.#merge()
    const runs = this.#columns.get(foldCase(sheetName))?.[column] ?? []
    let [from, to] = [0, runs.length]
    while (from < to) {
      const middle = (from + to) >> 1
      if ((runs[middle]?.bottom ?? 0) < row) from = middle + 1
      else to = middle
    }
    return (runs[from]?.top ?? Infinity) <= row
  }

  #merge(): void {
    for (const columns of this.#columns.values()) {
      for (const [column, runs] of columns.entries()) if (runs) columns[column] = merged(runs)
    }
    this.#known.clear()
    this.#merged = true
  }
}

function merged(runs: readonly Rows[]): Rows[] {
  const all: Rows[] = []
  for (const run of runs.toSorted((one, other) => one.top - other.top)) {
    const last = all.at(-1)
    if (last && run.top <= last.bottom + 1) all[all.length - 1] = { top: last.top, bottom: Math.max(last.bottom, run.bottom) }
    else all.push(run)
  }
  return all
}
