import type { CellPlace } from '../../workbook/cell-place.ts'
import { isFormula, type Cell, type CellContent, type Row } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import type { DifferenceKind } from './difference.ts'
import type { Found } from './found.ts'
import { losesReferences, LOST } from './lost-references.ts'
import { sameQuantity } from './same-quantity.ts'
import type { PairedSheets, Sides } from './sides.ts'
import { unitWords } from './unit-words.ts'
import { contentWords, EMPTY, formatWords, GONE, NO_SUCH } from './words.ts'

/** Where a cell that both sheets have, or could have, is on either side. */
export interface CellPair {
  readonly before: CellPlace
  readonly now: CellPlace
}

/** What differs in the cells of two rows that are the same row. @param columns which columns of the two are the same, and not told of as a whole */
export function* rowDifferences(sides: Sides, pair: PairedSheets, rows: { readonly before: number; readonly now: number }, columns: readonly { readonly before: number; readonly now: number }[]): Generator<Found> {
  const [rowBefore, rowNow]: [Row, Row] = [pair.sheetBefore.rows[rows.before], pair.sheetNow.rows[rows.now]]
  for (const column of columns) {
    const [before, now] = [rowBefore?.[column.before], rowNow?.[column.now]]
    if (before === now) {
      // Shared by both workbooks: only a formula may come to mean something else.
      if (before === undefined || !isFormula(before.content)) continue
    }
    const at: CellPair = { before: { sheet: pair.sheetBefore.name, row: rows.before, column: column.before }, now: { sheet: pair.sheetNow.name, row: rows.now, column: column.now } }
    if (before && now) yield* partsOf(sides, pair, at, before, now)
    else if (before) yield cellGone(sides, pair, at, before)
    else if (now) yield cellNew(sides, pair, at, now)
  }
}

/** Whether two contents say the same: formulas in the layout of either, numbers in the unit of either. */
export function sameContent(sides: Sides, { before, now }: CellPair, contentBefore: CellContent, contentNow: CellContent): boolean {
  if (isFormula(contentBefore) && isFormula(contentNow)) return sides.formulas.same(contentBefore, before.sheet, contentNow, now.sheet)
  if (contentBefore === contentNow) return true
  const textBefore = meantText(contentBefore)
  if (textBefore !== undefined && textBefore === meantText(contentNow)) return typeof contentBefore === typeof contentNow
  return typeof contentBefore === 'number' && typeof contentNow === 'number' && sameQuantity(contentBefore, sides.before.unitAt(before), contentNow, sides.now.unitAt(now))
}

function* partsOf(sides: Sides, pair: PairedSheets, at: CellPair, before: Cell, now: Cell): Generator<Found> {
  const found = (kind: DifferenceKind, part: 'content' | 'note' | 'role' | 'format', was: string, is: string, words: string): Found => ({
    kind, sheet: at.now.sheet, now: at.now, before: at.before, label: sides.now.label(at.now), was, is, accept: { words }, subject: { of: 'cell', part },
  })
  if (!sameContent(sides, at, before.content, now.content)) yield contentDifference(sides, pair, at, before, now)
  if ((before.note ?? '') !== (now.note ?? '')) {
    yield found('note', 'note', before.note ?? 'no note', now.note ?? 'no note', before.note === undefined ? 'Takes the note away.' : now.note === undefined ? 'Puts the note back.' : 'Puts the note of the other workbook in its place.')
  }
  if (before.role !== now.role) yield found('role', 'role', before.role, now.role, `Makes it ${/^[aeiou]/.test(before.role) ? 'an' : 'a'} ${before.role} again.`)
  if (before.digits !== now.digits || before.decimals !== now.decimals || before.wrap !== now.wrap) yield found('format', 'format', formatWords(before), formatWords(now), 'Shows it as the other workbook does; the number stays.')
}

function contentDifference(sides: Sides, pair: PairedSheets, at: CellPair, before: Cell, now: Cell): Found {
  const kind = contentKind(before, now)
  const [unitBefore, unitNow] = [sides.before.unitAt(at.before), sides.now.unitAt(at.now)]
  const there = isFormula(before.content) ? sides.way.formula(before.content, at.before.sheet) : before.content
  const isLost = isFormula(before.content) && losesReferences(before.content, there as string)
  const base = { kind, sheet: at.now.sheet, now: at.now, before: at.before, subject: { of: 'cell', part: 'content' } } as const
  if (before.role === 'unit' && now.role === 'unit' && !isLost) return { ...base, ...unitWords(sides, pair, at, before, now) }
  const was = contentWords(isLost ? before.content : there, unitBefore)
  return {
    ...base, label: sides.now.label(at.now), was, is: contentWords(now.content, unitNow),
    accept: isLost ? { refused: LOST } : { words: before.content === null ? 'Empties the cell.' : isFormula(before.content) ? 'Puts the formula back.' : `Puts ${typeof before.content === 'string' ? `“${was}”` : was} back.` },
  }
}

function contentKind(before: Cell, now: Cell): DifferenceKind {
  if (before.role === 'unit' && now.role === 'unit') return 'unit'
  if (isFormula(before.content)) return isFormula(now.content) ? 'formula' : 'formula overwritten'
  if (isFormula(now.content)) return 'formula entered'
  if (sameQuantity(before.content, undefined, now.content, undefined)) return 'unit'
  const isValue = (cell: Cell): boolean => cell.role === 'input' || typeof cell.content === 'number' || typeof cell.content === 'boolean'
  return isValue(before) || isValue(now) ? 'input' : 'text'
}

function cellGone({ before, way }: Sides, { sheetBefore, sheetNow }: PairedSheets, at: CellPair, cell: Cell): Found {
  const there = isFormula(cell.content) ? way.formula(cell.content, at.before.sheet) : cell.content
  const isLost = isFormula(cell.content) && losesReferences(cell.content, there as string)
  return {
    kind: 'cell gone', sheet: sheetNow.name, before: at.before, label: before.label(at.before),
    was: wholeWords(cell, isLost ? cell.content : there, before.unit(sheetBefore, at.before.row, at.before.column)), is: GONE,
    accept: isLost ? { refused: LOST } : { words: 'Puts the cell back.' }, subject: { of: 'cell', part: 'all' },
  }
}

const cellNew = ({ now }: Sides, { sheetNow }: PairedSheets, at: CellPair, cell: Cell): Found => ({
  kind: 'cell new', sheet: sheetNow.name, now: at.now, label: now.label(at.now), was: NO_SUCH, is: wholeWords(cell, cell.content, now.unit(sheetNow, at.now.row, at.now.column)),
  accept: { words: 'Takes the cell away.' }, subject: { of: 'cell', part: 'all' },
})

const wholeWords = ({ role, note }: Cell, content: CellContent, unit: string | undefined): string => `${content === null ? `${EMPTY} (${role})` : contentWords(content, unit)}${note === undefined ? '' : `, with a note: ${note}`}`
