import { checkedShares } from '../../src/workbook/review/checked-share.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import type { Cell, Workbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { markStates } from '../../src/workbook/review/mark-states.ts'
import { markChecked } from '../../src/workbook/review/review-commands.ts'
import { atMost, justSo, millisecondsOf, sideBySide, times, type Figure } from './measure.ts'

const ROWS = 3_300
const ROUNDS = 7

/** A check mark that covers some 10 000 cells: what an edit beside it costs, and rows that move it. */
export function marks(): readonly Figure[] {
  const plain = inventory()
  const area = { top: ROWS + 1, bottom: ROWS + 1, left: 2, right: 2 }
  const marked = (): Workbook => applyEdits(plain, markChecked(plain, { sheet: 'Charge', area, by: 'R. Smith', at: '2026-03-02T14:05:00Z', method: 'by hand', note: '' }, () => 1)).workbook
  const looked = marked()
  markStates(looked)
  let typed = 0
  const { making, first, after, share, moved, movedPlain } = sideBySide(ROUNDS, {
    making: () => millisecondsOf(marked),
    first: () => {
      const fresh = marked()
      return millisecondsOf(() => markStates(fresh))
    },
    after: () => {
      const edited = applyEdits(looked, setEntry(looked, 'Charge', { row: 5, column: 6 }, String(typed++))).workbook
      return millisecondsOf(() => markStates(edited))
    },
    share: () => {
      const states = markStates(looked)
      return millisecondsOf(() => checkedShares(looked, states))
    },
    moved: () => millisecondsOf(() => applyEdits(looked, insertLines(looked, 'Charge', { axis: 'rows', at: 100, count: 1 }))),
    movedPlain: () => millisecondsOf(() => applyEdits(plain, insertLines(plain, 'Charge', { axis: 'rows', at: 100, count: 1 }))),
  })
  const count = (looked.review?.marks[0]?.covers.length ?? 0).toLocaleString('en')
  return [
    atMost(`whether a mark over ${count} cells still stands, after an edit, of the time when first looked at`, after / first, 0.2),
    justSo('… and how much of each sheet is checked', times(share / first)),
    justSo('… making it', times(making / first)),
    justSo('a row inserted above what it covers, against one without marks', times(moved / movedPlain)),
  ]
}

function inventory(): Workbook {
  const unit: Cell = { content: 'ft', role: 'unit' }
  const rows = Array.from({ length: ROWS }, (_, row): Cell[] => [{ content: row + 1, role: 'input' }, { content: 2, role: 'input' }, { content: `=A${row + 2}*B${row + 2}`, role: 'result' }])
  const total: Cell = { content: `=SUM(C2:C${ROWS + 1})`, role: 'result' }
  return { title: 'Inventory', purpose: '', names: new Map(), figures: [], sheets: [{ name: 'Charge', columns: [], frozen: [0, 0], rows: [[unit, unit, unit], ...rows, [undefined, undefined, total]] }] }
}
