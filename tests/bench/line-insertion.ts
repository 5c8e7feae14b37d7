import { emptySheet, type Cell, type Workbook } from '../../src/workbook/document.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { insertLines, insertLinesInParts } from '../../src/workbook/line-commands.ts'
import { atMost, millisecondsOf, sideBySide, type Figure } from './measure.ts'

const ROWS = 20_000
/** One frame of a 60 Hz screen. */
const FRAME_MS = 1000 / 60

/** Five formulas a row, as in an inventory: own functions on header units, sums and choices. */
const formulasOf = (row: number): string[] => [
  `=VESSEL.VOLUME(A${row}&A$2,B${row}&B$2,"2:1","horizontal",E$2)`, `=C${row}*LIQUID.DENSITY(D${row}&D$2,"lb/ft3")*0.4`, `=SUM(A${row}:B${row})`, `=IF(C${row}>10,C${row}/2,D${row})`, `=F${row}+E${row}`,
]

/** What it takes to insert a row above all formulas, and below them, against reading each of them once. */
export function lineInsertion(): Figure[] {
  const formulas = Array.from({ length: ROWS }, (_, index) => formulasOf(index + 3))
  const cell = (content: Cell['content'], role: Cell['role']): Cell => ({ content, role })
  const rows = formulas.map((line) => [cell(12, 'input'), cell(4, 'input'), ...line.map((formula) => cell(formula, 'result'))])
  const workbook: Workbook = { title: 'Rows', purpose: '', names: new Map(), figures: [], sheets: [{ ...emptySheet('S'), rows: [undefined, undefined, ...rows] }] }
  const inserted = (at: number): number => millisecondsOf(() => insertLines(workbook, 'S', { axis: 'rows', at, count: 1 }))

  const { read, above, below, longest } = sideBySide(5, {
    read: () => millisecondsOf(() => formulas.forEach((line) => line.forEach((formula) => tokenise(formula)))),
    above: () => inserted(2),
    below: () => inserted(ROWS + 1),
    longest: () => longestStep(insertLinesInParts(workbook, 'S', { axis: 'rows', at: 2, count: 1 })),
  })
  return [
    atMost('a row inserted above 100 000 formulas, against reading each once', above / read, 2.5),
    atMost('a row inserted below 99 995 of them, against the same', below / read, 0.25),
    { what: 'the longest step of the first, the screen going on in between', figure: `${(longest / FRAME_MS).toFixed(2)} frames`, reach: '≤ 3 frames', met: longest <= 3 * FRAME_MS },
  ]
}

function longestStep(parts: Iterator<unknown>): number {
  let longest = 0
  for (let isDone = false; !isDone;) longest = Math.max(longest, millisecondsOf(() => (isDone = parts.next().done ?? false)))
  return longest
}
