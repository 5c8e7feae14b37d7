import { batch } from 'solid-js'
import { columnLetters, type Area } from '../../workbook/address.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import { deleteLines, insertLines, moveLines } from '../../workbook/line-commands.ts'
import type { LineAxis, Lines } from '../../workbook/line-edits.ts'
import type { Session } from '../state/session.ts'

/** What can be done with the selected rows or columns. */
export type LineDeed = 'insertBefore' | 'insertAfter' | 'moveBack' | 'moveOn' | 'delete'

/** Whole rows, whole columns, or cells that are neither. */
export function selectedKind({ selection, size }: Pick<Session, 'selection' | 'size'>): LineAxis | 'cells' {
  const { top, left, bottom, right } = selection.area()
  const [allRows, allColumns] = [top === 0 && bottom === size().rows - 1, left === 0 && right === size().columns - 1]
  if (allColumns && !allRows) return 'rows'
  return allRows && !allColumns ? 'columns' : 'cells'
}

/** The rows, or the columns, that the selection lies on; of whole ones, as far as the sheet is in use. */
export function linesSelected(session: Session, axis: LineAxis): Lines {
  const area = selectedKind(session) === axis ? session.selection.area() : session.usedSelection()
  return axis === 'rows' ? { axis, at: area.top, count: area.bottom - area.top + 1 } : { axis, at: area.left, count: area.right - area.left + 1 }
}

/** Does it and selects what it was done to. */
export function doWithLines(session: Session, axis: LineAxis, deed: LineDeed): void {
  if (!session.settle() || !canDoWithLines(session, axis, deed)) return
  const lines = linesSelected(session, axis)
  const kind = selectedKind(session)
  const area = session.usedSelection()
  const { label, edits, at } = DEEDS[deed](lines)
  batch(() => {
    const before = session.document.workbook()
    session.act(`${label} ${lines.count === 1 ? ONE[axis] : axis}`, (workbook) => edits(workbook, session.sheet().name))
    if (session.document.workbook() === before) return
    if (kind === axis) selectLines(session, axis, at, at + lines.count - 1)
    else session.selection.select(movedTo(area, axis, at, lines.count))
  })
}

export function canDoWithLines(session: Session, axis: LineAxis, deed: LineDeed): boolean {
  return deed !== 'moveBack' || linesSelected(session, axis).at > 0
}

/** Selects whole rows, or whole columns, from the one to the other. */
export function selectLines({ selection, size }: Pick<Session, 'selection' | 'size'>, axis: LineAxis, from: number, to: number): void {
  const [first, last] = from <= to ? [from, to] : [to, from]
  selection.select(axis === 'rows'
    ? { top: first, bottom: last, left: 0, right: size().columns - 1 }
    : { left: first, right: last, top: 0, bottom: size().rows - 1 })
}

/** What a deed is called, at those lines. */
export function deedWords(deed: LineDeed, { axis, at, count }: Lines): string {
  const name = (line: number): string => (axis === 'rows' ? String(line + 1) : columnLetters(line))
  const which = count === 1 ? `${ONE[axis]} ${name(at)}` : `${axis} ${name(at)} to ${name(at + count - 1)}`
  const some = count === 1 ? `a ${ONE[axis]}` : `${count} ${axis}`
  const [before, after, back, on] = axis === 'rows' ? ['above', 'below', 'up', 'down'] : ['on the left', 'on the right', 'left', 'right']
  const words: Readonly<Record<LineDeed, string>> = {
    insertBefore: `Insert ${some} ${before}`, insertAfter: `Insert ${some} ${after}`, moveBack: `Move ${which} ${back}`, moveOn: `Move ${which} ${on}`, delete: `Delete ${which}`,
  }
  return words[deed]
}

const ONE: Readonly<Record<LineAxis, string>> = { rows: 'row', columns: 'column' }

interface Deed {
  readonly label: string
  readonly edits: (workbook: Workbook, sheet: string) => readonly Edit[]
  /** Where the lines are that are selected then. */
  readonly at: number
}

const DEEDS: Readonly<Record<LineDeed, (lines: Lines) => Deed>> = {
  insertBefore: (lines) => ({ label: 'Insert', edits: (workbook, sheet) => insertLines(workbook, sheet, lines), at: lines.at }),
  insertAfter: (lines) => {
    const at = lines.at + lines.count
    return { label: 'Insert', edits: (workbook, sheet) => insertLines(workbook, sheet, { ...lines, at }), at }
  },
  moveBack: (lines) => ({ label: 'Move', edits: (workbook, sheet) => moveLines(workbook, sheet, lines, lines.at - 1), at: lines.at - 1 }),
  moveOn: (lines) => ({ label: 'Move', edits: (workbook, sheet) => moveLines(workbook, sheet, lines, lines.at + 1), at: lines.at + 1 }),
  delete: (lines) => ({ label: 'Delete', edits: (workbook, sheet) => deleteLines(workbook, sheet, lines), at: lines.at }),
}

const movedTo = (area: Area, axis: LineAxis, at: number, count: number): Area =>
  axis === 'rows' ? { ...area, top: at, bottom: at + count - 1 } : { ...area, left: at, right: at + count - 1 }
