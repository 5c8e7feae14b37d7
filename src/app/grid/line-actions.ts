import { columnLetters, type Area } from '../../workbook/address.ts'
import type { Workbook } from '../../workbook/document.ts'
import { spans } from '../../workbook/areas.ts'
import { applyEdits } from '../../workbook/edits.ts'
import { deleteLinesInParts, insertLinesInParts, moveLinesInParts, type LinesPart } from '../../workbook/line-commands.ts'
import type { LineAxis, Lines } from '../../workbook/line-edits.ts'
import type { Session } from '../state/session.ts'

/** What can be done with the selected rows or columns. */
export type LineDeed = 'insertBefore' | 'insertAfter' | 'moveBack' | 'moveOn' | 'delete'

/** Whole rows, whole columns, or cells that are neither. */
export function selectedKind({ selection, size }: Pick<Session, 'selection' | 'size'>): LineAxis | 'cells' {
  const kinds = new Set(selection.areas().map(({ top, left, bottom, right }) => {
    const [allRows, allColumns] = [top === 0 && bottom === size().rows - 1, left === 0 && right === size().columns - 1]
    return allRows === allColumns ? 'cells' : allColumns ? 'rows' : 'columns'
  }))
  const [kind = 'cells'] = kinds
  return kinds.size === 1 ? kind : 'cells'
}

/** The rows, or the columns, that the selection lies on, those next to each other together; of whole ones, as far as the sheet is in use. */
export function linesSelected(session: Session, axis: LineAxis): readonly Lines[] {
  const areas = selectedKind(session) === axis ? session.selection.areas() : session.usedAreas()
  return spans(areas.map(({ top, left, bottom, right }) => (axis === 'rows' ? { first: top, last: bottom } : { first: left, last: right })))
    .map(({ first, last }) => ({ axis, at: first, count: last - first + 1 }))
}

/** Does it and selects what it was done to. */
export function doWithLines(session: Session, axis: LineAxis, deed: LineDeed): void {
  if (!session.settle()) return
  const groups = linesSelected(session, axis)
  if (groups.length > 1 && MOVES.has(deed)) {
    return session.setNotice({ tone: 'problem', text: `To move ${axis}, select ${axis} that lie next to each other: those selected have others between them` })
  }
  if (!canDoWithLines(session, axis, deed)) return
  const kind = selectedKind(session)
  const area = session.usedSelection()
  const { label, parts, lineAt } = DEEDS[deed]
  const count = groups.reduce((sum, lines) => sum + lines.count, 0)
  const sheet = session.sheet().name
  const asked = session.selection.areas()
  session.actInParts({
    label: `${label} ${count === 1 ? ONE[axis] : axis}`,
    // From the last to the first, so that those still to come are where they were.
    make: (workbook) => inTurn(workbook, groups.toReversed().map((lines) => (then) => parts(then, sheet, lines))),
    done() {
      // Whoever has gone on meanwhile stays where they are.
      if (session.selection.areas() !== asked || session.entry.editing()) return
      const [first] = groups
      if (groups.length === 1 && first && kind !== axis) session.selection.select(movedTo(area, axis, lineAt(first), first.count))
      else selectAllLines(session, afterwards(groups, deed))
    },
  })
}

export function canDoWithLines(session: Session, axis: LineAxis, deed: LineDeed): boolean {
  const [first, ...others] = linesSelected(session, axis)
  return !MOVES.has(deed) || (others.length === 0 && (deed !== 'moveBack' || (first?.at ?? 0) > 0))
}

/** Whole rows, or whole columns, from the one to the other. */
export function linesArea({ size }: Pick<Session, 'size'>, axis: LineAxis, from: number, to: number): Area {
  const [first, last] = from <= to ? [from, to] : [to, from]
  return axis === 'rows'
    ? { top: first, bottom: last, left: 0, right: size().columns - 1 }
    : { left: first, right: last, top: 0, bottom: size().rows - 1 }
}

export const selectLines = (session: Pick<Session, 'selection' | 'size'>, axis: LineAxis, from: number, to: number): void => session.selection.select(linesArea(session, axis, from, to))

export const selectAllLines = (session: Pick<Session, 'selection' | 'size'>, groups: readonly Lines[]): void =>
  session.selection.selectAll(groups.map(({ axis, at, count }) => linesArea(session, axis, at, at + count - 1)))

/** Where the lines are that are selected after a deed: new ones, moved ones, or those that come in the place of the first ones deleted. */
function afterwards(groups: readonly Lines[], deed: LineDeed): readonly Lines[] {
  if (deed === 'delete') return groups.slice(0, 1)
  let before = 0
  return groups.map((lines) => {
    const at = DEEDS[deed].lineAt(lines) + before
    if (!MOVES.has(deed)) before += lines.count
    return { ...lines, at }
  })
}

/** Each is made for the workbook as those before leave it. */
function* inTurn(workbook: Workbook, steps: readonly ((workbook: Workbook) => Iterable<LinesPart>)[]): Generator<LinesPart> {
  let now = workbook
  for (const [index, step] of steps.entries()) {
    const isLast = index === steps.length - 1
    for (const { edits, share } of step(now)) {
      yield { edits, share: (index + share) / steps.length }
      if (!isLast) now = applyEdits(now, edits).workbook
    }
  }
}

/** What a deed is called, at those lines. */
export function deedWords(deed: LineDeed, axis: LineAxis, groups: readonly Lines[]): string {
  const name = (line: number): string => (axis === 'rows' ? String(line + 1) : columnLetters(line))
  const count = groups.reduce((sum, lines) => sum + lines.count, 0)
  const names = groups.map((lines) => (lines.count === 1 ? name(lines.at) : `${name(lines.at)} to ${name(lines.at + lines.count - 1)}`)).join(', ')
  const which = `${count === 1 ? ONE[axis] : axis} ${names}`
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
  readonly parts: (workbook: Workbook, sheet: string, lines: Lines) => Iterable<LinesPart>
  /** Where the first of the lines is that are selected then. */
  readonly lineAt: (lines: Lines) => number
}

const here = ({ at }: Lines): number => at
const after = ({ at, count }: Lines): number => at + count

const DEEDS: Readonly<Record<LineDeed, Deed>> = {
  insertBefore: { label: 'Insert', parts: insertLinesInParts, lineAt: here },
  insertAfter: { label: 'Insert', parts: (workbook, sheet, lines) => insertLinesInParts(workbook, sheet, { ...lines, at: after(lines) }), lineAt: after },
  moveBack: { label: 'Move', parts: (workbook, sheet, lines) => moveLinesInParts(workbook, sheet, lines, lines.at - 1), lineAt: ({ at }) => at - 1 },
  moveOn: { label: 'Move', parts: (workbook, sheet, lines) => moveLinesInParts(workbook, sheet, lines, lines.at + 1), lineAt: ({ at }) => at + 1 },
  delete: { label: 'Delete', parts: deleteLinesInParts, lineAt: here },
}

const MOVES: ReadonlySet<LineDeed> = new Set<LineDeed>(['moveBack', 'moveOn'])

const movedTo = (area: Area, axis: LineAxis, at: number, count: number): Area =>
  axis === 'rows' ? { ...area, top: at, bottom: at + count - 1 } : { ...area, left: at, right: at + count - 1 }
