import { createMemo, createSignal, untrack, type Accessor } from 'solid-js'
import type { Area, CellAddress } from '../../workbook/address.ts'

export interface Selection {
  /** The cell that keys and the entry line act on. */
  readonly active: Accessor<CellAddress>
  /** The rectangle selected last; holds the active cell. */
  readonly area: Accessor<Area>
  /** All rectangles selected, in the order of selecting; they may overlap. */
  readonly areas: Accessor<readonly Area[]>
  /** Whether a cell is in any of them. */
  includes(row: number, column: number): boolean
  /** The corner that moves when the rectangle is stretched; what should be in view. */
  readonly corner: Accessor<CellAddress>
  /** Selects one cell and nothing else, or stretches the last rectangle from the cell it began at. */
  moveTo(place: CellAddress, extend?: boolean): void
  /** Selects a rectangle, its first cell being the active one. */
  select(area: Area): void
  /** Selects several, of which the first cell of the last one is the active one. */
  selectAll(areas: readonly Area[]): void
  /** Begins one more rectangle at a cell. */
  add(place: CellAddress): void
  /** Keeps what is selected: the moves that follow lead to one more rectangle, until it is stretched. */
  keep(): void
  /** Leaves the active cell's rectangle selected alone; false if it is. */
  leaveOne(): boolean
  /** A move by keys: as `moveTo`, but what was kept stays selected. */
  travel(place: CellAddress, extend: boolean): void
  /** By so many rows and columns, not beyond the sheet's ends. */
  step(rows: number, columns: number, extend?: boolean): void
  /** To the next end of a run of filled cells in that direction, or to the sheet's end. */
  leap(rows: -1 | 0 | 1, columns: -1 | 0 | 1, extend?: boolean): void
  /** Every sheet is again as if shown for the first time. */
  forget(): void
}

interface Surroundings {
  readonly sheet: Accessor<string>
  readonly size: Accessor<{ readonly rows: number; readonly columns: number }>
  readonly isFilled: (row: number, column: number) => boolean
  /** The cell that a sheet shown for the first time is at. */
  readonly start: () => CellAddress
}

interface Ends {
  /** Rectangles selected before this one. */
  readonly others: readonly Area[]
  /** The others were kept: plain moves do not leave them yet. */
  readonly isKeeping?: true
  readonly anchor: CellAddress
  /** The corner opposite the anchor, which moves when the rectangle is stretched. */
  readonly end: CellAddress
}

/** What is selected on the sheet shown; every sheet keeps its own selection. */
export function createSelection({ sheet, size, isFilled, start }: Surroundings): Selection {
  const [bySheet, setBySheet] = createSignal<ReadonlyMap<string, Ends>>(new Map())
  const ends = createMemo(() => bySheet().get(sheet()) ?? endsAt(untrack(start)))
  const put = (next: Ends): void => void setBySheet((before) => new Map(before).set(sheet(), next))

  const within = ({ row, column }: CellAddress): CellAddress => ({
    row: Math.max(0, Math.min(size().rows - 1, row)),
    column: Math.max(0, Math.min(size().columns - 1, column)),
  })

  const area = createMemo(() => areaBetween(ends().anchor, ends().end), undefined, { equals: sameArea })
  const areas = createMemo((): readonly Area[] => [...ends().others, area()])

  function moveTo(place: CellAddress, extend = false): void {
    const end = within(place)
    put(extend ? { others: ends().others, anchor: ends().anchor, end } : { others: [], anchor: end, end })
  }
  const select = ({ top, left, bottom, right }: Area, others: readonly Area[] = []): void =>
    put({ others, anchor: within({ row: top, column: left }), end: within({ row: bottom, column: right }) })
  function travel(place: CellAddress, extend: boolean): void {
    const { others, isKeeping } = ends()
    const end = within(place)
    if (isKeeping && !extend) put({ others, isKeeping, anchor: end, end })
    else moveTo(place, extend)
  }
  const from = (extend: boolean): CellAddress => (extend ? ends().end : ends().anchor)

  return {
    active: createMemo(() => ends().anchor, undefined, { equals: samePlace }),
    area,
    areas,
    includes: (row, column) => areas().some((one) => inArea(one, row, column)),
    corner: createMemo(() => ends().end, undefined, { equals: samePlace }),
    moveTo,
    travel,
    select,
    selectAll: (some) => {
      const last = some.at(-1)
      if (last) select(last, some.slice(0, -1))
    },
    add(place) {
      const at = within(place)
      put({ others: areas(), anchor: at, end: at })
    },
    keep: () => put({ ...ends(), others: areas(), isKeeping: true }),
    leaveOne() {
      const { others, anchor, end } = ends()
      if (others.length > 0) put({ others: [], anchor, end })
      return others.length > 0
    },
    step(rows, columns, extend = false) {
      const { row, column } = from(extend)
      travel({ row: row + rows, column: column + columns }, extend)
    },
    leap(rows, columns, extend = false) {
      travel(endOfRun(from(extend), rows, columns, size(), isFilled), extend)
    },
    forget: () => void setBySheet(new Map()),
  }
}

const endsAt = (place: CellAddress): Ends => ({ others: [], anchor: place, end: place })

export const areaBetween = (one: CellAddress, other: CellAddress): Area => ({
  top: Math.min(one.row, other.row),
  left: Math.min(one.column, other.column),
  bottom: Math.max(one.row, other.row),
  right: Math.max(one.column, other.column),
})

export const inArea = ({ top, left, bottom, right }: Area, row: number, column: number): boolean =>
  row >= top && row <= bottom && column >= left && column <= right

/** From inside a run of filled cells to its last one; from elsewhere to the next filled cell, or to the sheet's end. */
function endOfRun(
  start: CellAddress, rows: number, columns: number,
  size: { readonly rows: number; readonly columns: number }, isFilled: (row: number, column: number) => boolean,
): CellAddress {
  const next = ({ row, column }: CellAddress): CellAddress => ({ row: row + rows, column: column + columns })
  const onSheet = ({ row, column }: CellAddress) => row >= 0 && column >= 0 && row < size.rows && column < size.columns
  const filled = (place: CellAddress) => onSheet(place) && isFilled(place.row, place.column)
  const inRun = filled(start) && filled(next(start))
  let place = start
  if (inRun) {
    while (filled(next(place))) place = next(place)
    return place
  }
  while (onSheet(next(place))) {
    place = next(place)
    if (filled(place)) break
  }
  return place
}

const samePlace = (a: CellAddress, b: CellAddress): boolean => a.row === b.row && a.column === b.column
const sameArea = (a: Area, b: Area): boolean => a.top === b.top && a.left === b.left && a.bottom === b.bottom && a.right === b.right
