import { createEffect, createMemo, createRoot, createSignal, on, type Accessor } from 'solid-js'
import { isCellError } from '../../calc/values.ts'
import { isInArea } from '../../workbook/areas.ts'
import { bySheet } from '../../workbook/case-switching.ts'
import { sheetByName, type Workbook } from '../../workbook/document.ts'
import { samePlace, type CellPlace } from '../../workbook/cell-place.ts'
import type { CheckedValue, CheckMark } from '../../workbook/review-record.ts'
import { checkedShares, type CheckedShare } from '../../workbook/review/checked-share.ts'
import { markStates, type MarkState } from '../../workbook/review/mark-states.ts'
import type { Session } from '../state/session.ts'

/** What has become of the check marks of the open workbook: for the panel, the grid, Why and the sheet list. */
export interface CheckMarks {
  readonly states: Accessor<readonly MarkState[]>
  readonly shares: Accessor<ReadonlyMap<string, CheckedShare>>
  /** The marks on a cell of the sheet shown. */
  at(row: number, column: number): readonly MarkState[]
  /** Marks elsewhere that cover a cell of the sheet shown, as it feeds what was checked. */
  over(row: number, column: number): readonly MarkState[]
  /** Grows each time that the form to check something is asked for. */
  readonly asked: Accessor<number>
  /** Opens the panel at that form. */
  ask(): void
}

const stores = new WeakMap<Session, CheckMarks>()

export function checkMarksOf(session: Session): CheckMarks {
  const known = stores.get(session)
  if (known) return known
  const store = createRoot(() => createStore(session))
  stores.set(session, store)
  return store
}

const NONE: readonly MarkState[] = []
const NO_SHARES: ReadonlyMap<string, CheckedShare> = new Map()

function createStore(session: Session): CheckMarks {
  const { document, sheetName, setPanel } = session
  const cameTo = createCameTo(session)
  const [asked, setAsked] = createSignal(0)
  const states = createMemo(() => {
    const workbook = document.workbook()
    return (workbook.review?.marks.length ?? 0) === 0 ? NONE : markStates(workbook, cameTo)
  }, NONE)
  const shares = createMemo(() => (states().length === 0 ? NO_SHARES : checkedShares(document.workbook(), states())), NO_SHARES)
  // Most edits change nothing of it: then no cell is drawn again.
  const here = createMemo(() => states().filter(({ mark }) => mark.sheet === sheetName() && !mark.gone), NONE, { equals: sameStates })
  return {
    states, shares, asked,
    at: (row, column) => (here().length === 0 ? NONE : here().filter(({ mark }) => isMarked(mark, row, column))),
    over: (row, column) => states().filter(({ mark }) => !(mark.sheet === sheetName() && isMarked(mark, row, column)) && covers(mark, { sheet: sheetName(), row, column })),
    ask() {
      setPanel('Checked')
      setAsked((times) => times + 1)
    },
  }
}

const isMarked = ({ area, gone }: CheckMark, row: number, column: number): boolean =>
  !gone && (area === null || isInArea({ row, column }, area))

const covers = ({ covers: cells }: CheckMark, place: CellPlace): boolean => cells.some((cell) => !cell.gone && samePlace(cell, place))

const sameStates = (one: readonly MarkState[], other: readonly MarkState[]): boolean =>
  one.length === other.length && one.every((state, index) => state.mark === other[index]?.mark && state.isGood === other[index]?.isGood)

/**
 * What marked cells come to. Read when a workbook is opened, and whenever its marks have become others, as by restating: for what stands in them as
 * it was checked they come to the same from then on.
 */
function createCameTo(session: Session): (place: CellPlace) => CheckedValue['value'] | undefined {
  const [known, setKnown] = createSignal<ReadonlyMap<string, CheckedValue['value']>>(new Map())
  createEffect(on(() => [session.opened(), session.document.workbook().review?.marks, session.recalculation.version() > 0] as const, ([, marks, isThere]) => {
    setKnown(new Map())
    if (marks && isThere) void read(marks)
  }))

  async function read(marks: readonly CheckMark[]): Promise<void> {
    const workbook = session.document.workbook()
    const asChecked = markStates(workbook).filter(({ isGood }) => isGood).map(({ mark }) => mark)
    const values = await valuesAt(session, workbook, asChecked.flatMap((mark) => mark.values.filter(({ gone }) => !gone)))
    if (values && session.document.workbook().review?.marks === marks) setKnown(values)
  }
  return (place) => known().get(placeKey(place))
}

export const placeKey = ({ sheet, row, column }: CellPlace): string => `${sheet}!${row}:${column}`

/** The values of cells as they are now, of errors their signs; undefined where the calculation was stopped, or the workbook is another by then. */
export async function valuesAt(session: Session, workbook: Workbook, places: readonly CellPlace[]): Promise<ReadonlyMap<string, CheckedValue['value']> | undefined> {
  const values = new Map<string, CheckedValue['value']>()
  for (const [sheet, cells] of bySheet(places)) {
    if (!sheetByName(workbook, sheet)) continue
    const [rows, columns] = [cells.map(({ row }) => row), cells.map(({ column }) => column)]
    const [top, left] = [least(rows), least(columns)]
    const read = await session.recalculation.ask((service) => service.read(sheet, { top, left, bottom: most(rows), right: most(columns) }))
    if (!read || session.document.workbook() !== workbook) return undefined
    for (const { row, column } of cells) {
      const value = read.values[row - top]?.[column - left] ?? null
      values.set(placeKey({ sheet, row, column }), isCellError(value) ? value.error : value)
    }
  }
  return values
}

const least = (numbers: readonly number[]): number => numbers.reduce((found, one) => (one < found ? one : found), Infinity)
const most = (numbers: readonly number[]): number => numbers.reduce((found, one) => (one > found ? one : found), 0)
