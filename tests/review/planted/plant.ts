import { areaOf, parseReference, type Area } from '../../../src/workbook/address.ts'
import type { CellPlace } from '../../../src/workbook/cell-place.ts'
import { setEntry } from '../../../src/workbook/commands.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { readTemplate } from '../../templates/open-template.ts'

/** A fault in a workbook as a colleague might leave it there, and where a reviewer should be led. */
export interface Plant {
  /** What is wrong, in a few words. */
  readonly fault: string
  /** What it does in the plant. */
  readonly matters: string
  /** The workbook without the fault. */
  readonly base: Workbook
  readonly plant: (base: Workbook) => Workbook
  /**
   * A reviewer who is led to one of these has found it: the cells that are wrong, or the first check or value that shows it. `Sheet!C5:C9`;
   * of what is no cell, the words by which a difference calls it.
   */
  readonly leads: readonly string[]
  /**
   * Whether the reviewer has the workbook without the fault as well: the template it came from, or an earlier revision. Of one that was wrong when
   * it was written there is nothing to compare it with.
   */
  readonly before: boolean
}

export const template = (name: string): Workbook => readTemplate(`templates/${name}.lowside.json`)
export const demo: Workbook = readTemplate('demo-data/tallowmere.lowside.json')

/** Types into cells, one after the other, as the colleague did: a content at `Sheet!C5`. */
export const typed = (entries: Readonly<Record<string, string>>) => (base: Workbook): Workbook =>
  Object.entries(entries).reduce((workbook, [place, entry]) => {
    const { sheet, row, column } = cellOf(place)
    return applyEdits(workbook, setEntry(workbook, sheet, { row, column }, entry)).workbook
  }, base)

/** The same formula filled down a column, `{}` standing for the row of each. */
export const filled = (sheet: string, column: string, [first, last]: readonly [number, number], formula: string): Readonly<Record<string, string>> =>
  Object.fromEntries(Array.from({ length: last - first + 1 }, (_, index) => [`${sheet}!${column}${first + index}`, formula.replaceAll('{}', String(first + index))]))

export const edited = (edits: (base: Workbook) => readonly Edit[]) => (base: Workbook): Workbook => applyEdits(base, edits(base)).workbook

/** Cells of a sheet, written `Sheet!C5` or `Sheet!C5:C9` without quotes about its name; undefined for what is no such thing. */
export function cellsNamed(place: string): Place | undefined {
  const [, sheet, cells] = /^(.+)!([A-Z]+[0-9]+(?::[A-Z]+[0-9]+)?)$/.exec(place) ?? []
  const reference = cells === undefined ? undefined : parseReference(cells)
  return sheet === undefined || reference === undefined ? undefined : { sheet, area: areaOf(reference) }
}

export interface Place {
  readonly sheet: string
  readonly area: Area
}

function cellOf(place: string): CellPlace {
  const { sheet, area } = cellsNamed(place) ?? {}
  if (sheet === undefined || area === undefined) throw new Error(`${place} is no cell of a sheet`)
  return { sheet, row: area.top, column: area.left }
}
