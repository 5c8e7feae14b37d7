import { bySheet } from '../../workbook/case-switching.ts'
import { casesOf } from '../../workbook/cases.ts'
import { printCellPlace, samePlace, type CellPlace } from '../../workbook/cell-place.ts'
import { foldCase, isFormula, type Cell, type CellContent } from '../../workbook/document.ts'
import type { CellChange, Edit } from '../../workbook/edits.ts'
import { valuesOfUnit } from '../../workbook/unit-scope.ts'
import type { Found } from './found.ts'
import { sameQuantity } from './same-quantity.ts'
import { sameTolerance } from './tolerance-differences.ts'
import type { Sides } from './sides.ts'

/** The edits that give cells what they have in the workbook before, or the part of it that differs. With a unit go back the numbers that are the same quantity in it. */
export function acceptCells(sides: Sides, chosen: readonly Found[]): Edit[] {
  const { before, now, way } = sides
  const cells = new Map<string, { readonly place: CellPlace; readonly cell: Cell | null }>()
  const current = (place: CellPlace): Cell | null | undefined => cells.get(printCellPlace(place))?.cell ?? now.cell(place)
  const put = (place: CellPlace, cell: Cell | null): void => void cells.set(printCellPlace(place), { place, cell })
  const contentThere = (cell: Cell, host: string): CellContent => (isFormula(cell.content) ? way.formula(cell.content, host) : cell.content)
  const units: CellPlace[] = []
  for (const { before: from, now: at, subject } of chosen) {
    if (subject.of !== 'cell') continue
    const place = at ?? (from && way.place(from))
    const was = from && before.cell(from)
    if (place === undefined) continue
    if (from === undefined || was === undefined) put(place, null)
    else if (subject.part === 'all') put(place, { ...was, content: contentThere(was, from.sheet) })
    else {
      const is = current(place)
      if (!is) continue
      if (subject.part === 'content' && was.role === 'unit' && is.role === 'unit') units.push(place)
      put(place, withPart(is, was, subject.part, contentThere(was, from.sheet)))
    }
  }
  const converted = units.flatMap((place) => convertedUnder(sides, place))
  for (const { place, from } of converted) {
    const [is, was] = [current(place), before.cell(from)]
    if (is && was && isConverted(sides, from, was.content, place, is.content)) put(place, withPart(is, was, 'content', was.content))
  }
  const changed = bySheet([...cells.values()].map(({ place, cell }) => ({ ...place, cell })))
  return [
    ...[...changed].map(([sheet, some]): Edit => ({ kind: 'cells', sheet, cells: some.map(({ row, column, cell }): CellChange => ({ row, column, cell })) })),
    ...(converted.length === 0 ? [] : [...convertedAside(sides, converted), ...convertedTolerances(sides, converted)]),
  ]
}

interface Converted {
  readonly place: CellPlace
  readonly from: CellPlace
}

/** The cells that a unit applies to, with where they were. */
function convertedUnder({ now, back }: Sides, unit: CellPlace): Converted[] {
  const sheet = now.sheet(unit.sheet)
  if (!sheet) return []
  const beside = { row: unit.row, column: unit.column - 1 }
  const places = valuesOfUnit(sheet, unit)
  // An input without a value may have one in a case.
  const all = places.length === 0 && sheet.rows[beside.row]?.[beside.column]?.role === 'input' ? [beside] : places
  return all.flatMap(({ row, column }) => {
    const place = { sheet: sheet.name, row, column }
    const from = back.place(place)
    return from ? [{ place, from }] : []
  })
}

const isConverted = ({ before, now }: Sides, from: CellPlace, was: CellContent, place: CellPlace, is: CellContent): boolean =>
  typeof was === 'number' && typeof is === 'number' && sameQuantity(was, before.unitAt(from), is, now.unitAt(place))

/** What cases hold there goes back as well. */
function convertedAside(sides: Sides, converted: readonly Converted[]): Edit[] {
  const [old, cases] = [casesOf(sides.before.workbook), casesOf(sides.now.workbook)]
  const from = new Map(converted.map((one) => [printCellPlace(one.place), one.from]))
  const list = cases.list.map((one) => {
    const same = old.list.find(({ name }) => foldCase(name) === foldCase(one.name))
    return {
      ...one,
      aside: one.aside.map((value) => {
        const earlier = from.get(printCellPlace(value))
        const was = earlier && same?.aside.find((other) => samePlace(other, earlier))
        return was && isConverted(sides, was, was.content, value, value.content) ? { ...was, sheet: value.sheet, row: value.row, column: value.column } : value
      }),
    }
  })
  return cases.list.length === 0 ? [] : [{ kind: 'cases', cases: { ...cases, list } }]
}

function convertedTolerances(sides: Sides, converted: readonly Converted[]): Edit[] {
  const [old = [], tolerances] = [sides.before.workbook.tolerances, sides.now.workbook.tolerances]
  if (!tolerances) return []
  return [{ kind: 'tolerances', tolerances: tolerances.map((one) => {
    const earlier = converted.find(({ place }) => samePlace(place, one.place))?.from
    const was = earlier && old.find(({ place }) => samePlace(place, earlier))
    return was && sameTolerance(sides, was, one) ? { place: one.place, tolerance: was.tolerance } : one
  }) }]
}

/** A cell with one part of another; what is no part of that one goes. */
function withPart(cell: Cell, other: Cell, part: 'content' | 'note' | 'role' | 'format', content: CellContent): Cell {
  if (part === 'role') return { ...cell, role: other.role }
  if (part === 'note') {
    const { note: _, ...rest } = cell
    return other.note === undefined ? rest : { ...rest, note: other.note }
  }
  if (part === 'format') {
    const { digits: _, decimals: __, wrap: ___, ...rest } = cell
    return { ...rest, ...(other.digits === undefined ? {} : { digits: other.digits }), ...(other.decimals === undefined ? {} : { decimals: other.decimals }), ...(other.wrap === undefined ? {} : { wrap: other.wrap }) }
  }
  const { restatedFrom: _, ...rest } = cell
  return { ...rest, content, ...(other.restatedFrom === undefined ? {} : { restatedFrom: other.restatedFrom }) }
}

