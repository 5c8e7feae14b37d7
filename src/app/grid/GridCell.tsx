import { createMemo, Show, type Accessor, type JSX } from 'solid-js'
import type { HeldContent } from '../../workbook/cases.ts'
import type { Row } from '../../workbook/document.ts'
import { entryOf } from '../../workbook/entry.ts'
import { misfit } from '../../workbook/misfit.ts'
import { mayHeadNumbers, standsOverNumbers } from '../../workbook/over-numbers.ts'
import { plainValue } from '../../calc/cell-value.ts'
import { checkMarksOf } from '../review/check-marks.ts'
import { checkedWords } from '../review/checked-words.ts'
import { useSession } from '../state/session.ts'
import { cellView, EMPTY_VIEW, sameView } from './cell-view.ts'
import { useGrid } from './grid-context.ts'
import { MARGIN } from './layout.ts'
import { CELL_PADDING, widthInRole, wraps } from './row-heights.ts'
import { spokenCell } from './spoken-cell.ts'
import './CheckedLine.css'

interface Props {
  readonly row: Accessor<number | undefined>
  /** What the row holds; the same object as long as nothing in the row changes, so that edits elsewhere cost nothing here. */
  readonly cells: Accessor<Row>
  readonly column: Accessor<number | undefined>
}

/** How a text lies in its cell. */
interface Lie {
  readonly classes: string
  /** How far it may run on over empty cells, in px. */
  readonly by: number
}
const WITHIN: Lie = { classes: '', by: 0 }

/** What the base has where the current case has something else. */
const baseWords = ({ content }: HeldContent): string => `differs from the base, which has ${entryOf(content) || 'nothing'}`

export const cellId = (row: number, column: number): string => `cell-${row}-${column}`

/** One slot of the grid: shows whichever cell its row and column stand for at the moment. */
export function GridCell(props: Props): JSX.Element {
  const session = useSession()
  const { sheet, sheetName, size, values, selection, cutting, feeds } = session
  const { layout, alignment, textWidth, isScrolledAside } = useGrid()
  const checkMarks = checkMarksOf(session)
  const row = () => props.row() ?? -1
  const column = () => props.column() ?? -1

  const view = createMemo(() => {
    const cell = props.cells()?.[column()]
    if (!cell) return EMPTY_VIEW
    const check = cell.role === 'check' ? values.checkAt(sheetName(), row(), column()) : undefined
    const plain = plainValue(cell)
    return cellView(cell, plain === undefined ? values.at(sheetName(), row(), column()) : plain, check)
    // Of all cells that are read together, those that look as before are done with here.
  }, EMPTY_VIEW, { equals: sameView })
  /** What its marks stand for, in words; the classes that make them; whether a check mark on it still stands. */
  const marks = createMemo(() => {
    const note = props.cells()?.[column()]?.note
    const wrong = misfit(props.cells(), column())
    const base = session.baseOf(row(), column())
    const differs = base !== undefined && base.content !== (props.cells()?.[column()]?.content ?? null)
    // A sheet that is checked as a whole is so where something stands.
    const states = (props.cells()?.[column()]?.content ?? null) === null ? [] : checkMarks.at(row(), column())
    const words = [view().description, ...checkedWords(states), wrong, differs ? baseWords(base) : undefined, note === undefined ? undefined : `note: ${note}`].filter((text) => text !== undefined)
    return { classes: (note === undefined ? '' : ' noted') + (wrong === undefined ? '' : ' misfit') + (differs ? ' case-differs' : ''), words: words.length > 0 ? words.join('; ') : undefined, checked: states.length === 0 ? undefined : states.some(({ isGood }) => isGood) ? 'good' : 'stale' }
  })
  const pad = createMemo(() => (view().isNumber ? alignment(sheet(), row(), column()) : ''))

  const lie = createMemo((): Lie => {
    const cell = props.cells()?.[column()]
    if (!cell || !view().runsOn || view().text === '') return WITHIN
    const isWrapped = wraps(props.cells(), column())
    if (mayHeadNumbers(cell.role) && standsOverNumbers(sheet().rows, row(), column())) {
      const fits = widthInRole(view().text, cell.role, textWidth) + CELL_PADDING <= layout.columnAxis().size(column())
      if (isWrapped || fits) return { classes: isWrapped ? ' over-numbers wraps' : ' over-numbers', by: 0 }
    }
    if (isWrapped) return { classes: ' wraps', by: 0 }
    const frozenColumns = layout.frozen()[1]
    const end = column() < frozenColumns && isScrolledAside() ? frozenColumns : size().columns
    let next = column() + 1
    while (next < end && (props.cells()?.[next]?.content ?? null) === null) next++
    return next === column() + 1 ? WITHIN : { classes: ' runs-on', by: layout.columnAxis().start(next) - layout.columnAxis().start(column() + 1) }
  }, WITHIN, { equals: (one, other) => one.classes === other.classes && one.by === other.by })

  const mark = createMemo(() => {
    const { row: activeRow, column: activeColumn } = selection.active()
    if (activeRow === row() && activeColumn === column()) return ' active'
    return selection.includes(row(), column()) ? ' selected' : ''
  })
  // Only of the active cell: of the others a reader hears what they show, in its table of the page.
  const spoken = createMemo(() => (mark() === ' active' ? spokenCell(session, { row: row(), column: column() }, view().text, marks().words) : undefined))
  const cut = createMemo(() => (cutting.includes(row(), column()) ? ' cut' : ''))
  const feed = createMemo(() => feeds.at(row(), column()))

  return (
    <div
      role="gridcell"
      id={row() < 0 || column() < 0 ? undefined : cellId(row(), column())}
      class={`cell ${view().classes}${lie().classes}${marks().classes}${mark()}${cut()}${feed() === undefined ? '' : ` feed-${feed()}`}`}
      hidden={column() < 0}
      aria-colindex={column() + 2}
      aria-selected={mark() !== ''}
      aria-label={spoken()?.name}
      aria-description={spoken()?.description ?? marks().words}
      data-pad={pad() || undefined}
      style={{
        left: `${MARGIN.left + layout.columnAxis().start(Math.max(0, column()))}px`,
        width: `${layout.columnAxis().size(Math.max(0, column()))}px`,
        '--runs-on': lie().by > 0 ? `${-lie().by}px` : undefined,
      }}
    >{view().text}<Show when={marks().checked}>{(state) => <i class={`checked-line ${state()}`} aria-hidden="true" />}</Show></div>
  )
}
