import fc from 'fast-check'
import { expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { clear, removeSheet, renameSheet, setEntry } from '../../src/workbook/commands.ts'
import { deleteLines, insertLines, moveLines } from '../../src/workbook/line-commands.ts'
import { blockOf, moveCells } from '../../src/workbook/move-cells.ts'
import { duplicateSheet } from '../../src/workbook/sheet-commands.ts'
import { areaBetween } from '../../src/app/state/selection.ts'
import { emptySheet, type CellContent, type Workbook } from '../../src/workbook/document.ts'
import type { Edit } from '../../src/workbook/edits.ts'
import { perform, redo, startHistory, undo, type History, type Moved } from '../../src/workbook/history.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { cellOf, sheetOf, workbookOf } from '../unit/workbook-of.ts'

const ROWS = 6
const COLUMNS = 5
const SHEETS = ['S', 'Basis', 'Zone 1', 'New']

const start = (): Workbook =>
  workbookOf(
    {
      'S': { A1: 5, B1: '°F', C1: '=SAT.PRESSURE(A1:B1,D1)', D1: 'psia', A2: '=A1+1', B2: '=A2&$B$1', C2: '=SAT.PRESSURE(B2,D$1)', D2: ['=C2>C1', 'check'], E1: '=SUM(C1:C6)', A3: '=Basis!A1*2', E3: '=load+1' },
      'Basis': { A1: 85, B1: 'TR', A2: '=FEED.FLOW(A1:B1,S!A1:B1,"86 °F","lb/min")', A3: "='Zone 1'!A1", C3: ['=A2<=1', 'check'] },
      'Zone 1': { A1: '=Basis!A2*2', B1: '=SUM(S!A1:C3)', C1: '=site' },
    },
    { load: 'Basis!$A$1', site: "'Zone 1'!$A$1:$A$1" },
  )

const anyReference = fc.constantFrom('A1', 'B1', 'C1', 'A2', 'B2', 'C2', 'A3', 'D1', '$A$1', 'E5', 'Basis!A1', 'Basis!A2', "'Zone 1'!A1", 'S!C1', 'New!A1', 'load', 'site', 'other')
const anyArea = fc.constantFrom('A1:B1', 'A2:B2', 'A1:C3', 'Basis!A1:B1', "'Zone 1'!A1:B2", 'New!A1:A3', 'A:A', 'D1:E6')
const anyFormula = fc.oneof(
  fc.tuple(anyReference, fc.constantFrom('+', '*', '-', '&', '<', '>=', '/'), anyReference).map((parts) => `=${parts.join('')}`),
  fc.tuple(fc.constantFrom('SUM', 'MAX', 'COUNT', 'AVERAGE'), anyArea).map(([name, area]) => `=${name}(${area})`),
  fc.tuple(fc.constantFrom('SAT.PRESSURE', 'SAT.TEMPERATURE', 'LIQUID.DENSITY', 'UNIT.CONVERT'), anyArea, anyReference).map(([name, area, unit]) => `=${name}(${area},${unit})`),
  fc.tuple(anyReference, anyReference).map(([value, unit]) => `=UNIT.CONVERT(${value}&${unit},"kW")`),
  fc.tuple(anyReference, anyReference, anyReference).map(([test, yes, no]) => `=IF(${test}>5,${yes},${no})`),
  fc.tuple(anyReference, fc.constantFrom('ROUND', 'CEILING', 'TEXT')).map(([reference, name]) => `=${name}(${reference},${name === 'TEXT' ? '"0.0"' : 1})`),
  anyReference.map((reference) => `=IFERROR(${reference},0)`),
  fc.constantFrom('=A1:B1*2', '=ABS(A1:B2)', '=TRANSPOSE(A1:A3)', '=A1:A2', '=1/0', '=NA()', '=SUM(', '=1..2', '=nowhere', '=Gone!A1', '=A1 B1', '=', '="a""b"', '=TRUE', '=1E-5'),
)
const anyContent: fc.Arbitrary<CellContent> = fc.oneof(
  fc.constantFrom<CellContent>(0, 1, 5, -40, 86, 1e-5, true, '°F', '°C', 'TR', 'psia', 'kPa', 'furlong', 'text', "'=1", '5%', null),
  fc.integer({ min: -100, max: 200 }),
  { weight: 2, arbitrary: anyFormula },
)
const anySheet = fc.constantFrom(...SHEETS)
const anyCell = fc.record({ row: fc.nat(ROWS - 1), column: fc.nat(COLUMNS - 1) })

const anyLines = fc.record({ axis: fc.constantFrom('rows' as const, 'columns' as const), at: fc.nat(7), count: fc.integer({ min: 1, max: 3 }) })

/** What a user may do, as a function of the workbook it is done to. */
type Action = (workbook: Workbook) => readonly Edit[]
const action = (edits: Action): Action => edits

const anyAction: fc.Arbitrary<Action | 'undo' | 'redo'> = fc.oneof(
  { weight: 6, arbitrary: fc.tuple(anySheet, anyCell, anyContent).map(([sheet, cell, content]) => action((workbook) => setEntry(workbook, sheet, cell, content === null ? '' : String(content)))) },
  { weight: 2, arbitrary: fc.tuple(anySheet, anyCell, anyContent, fc.boolean()).map(([sheet, cell, content, check]) => action(() => [{ kind: 'cells', sheet, cells: [{ ...cell, cell: check ? { content, role: 'check' } : cellOf(content) }] }])) },
  // A block in reading order is handed to the engine as one; cells here and there one by one.
  { weight: 2, arbitrary: fc.tuple(anySheet, fc.array(anyContent, { minLength: 6, maxLength: 6 })).map(([sheet, contents]) => action(() => [{ kind: 'cells', sheet, cells: contents.map((content, i) => ({ row: 1 + Math.floor(i / 2), column: 1 + (i % 2), cell: content === null ? null : cellOf(content) })) }])) },
  { weight: 2, arbitrary: fc.tuple(anySheet, anySheet, fc.array(fc.tuple(anyCell, anyContent), { maxLength: 5 })).map(([one, other, list]) => action(() => [one, other].map((sheet) => ({ kind: 'cells', sheet, cells: list.map(([cell, content]) => ({ ...cell, cell: content === null ? null : cellOf(content) })) })))) },
  { weight: 2, arbitrary: fc.tuple(anySheet, anyCell, anyCell).map(([sheet, from, to]) => action((workbook) => clear(workbook, sheet, { from, to }))) },
  fc.tuple(anySheet, fc.nat(3), anyFormula).map(([name, position, formula]) => action(() => [{ kind: 'addSheet', at: position, sheet: sheetOf(name, { A1: formula, A2: 7 }) }])),
  fc.tuple(anySheet, fc.nat(3)).map(([name, position]) => action(() => [{ kind: 'addSheet', at: position, sheet: emptySheet(name) }])),
  anySheet.map((sheet) => action((workbook) => removeSheet(workbook, sheet))),
  fc.tuple(anySheet, fc.constantFrom('New', 'Basis', "It's", 'basis', 'Zone 1')).map(([sheet, name]) => action((workbook) => renameSheet(workbook, sheet, name))),
  fc.tuple(anySheet, fc.nat(3)).map(([sheet, to]) => action(() => [{ kind: 'moveSheet', sheet, to }])),
  fc.tuple(fc.constantFrom('load', 'site', 'other'), fc.constantFrom('Basis!$A$1', 'S!A2', 'New!$B$2', '$A$1', 'Basis!$A$1:$B$1', '((', null)).map(([name, refersTo]) => action(() => [{ kind: 'name', name, refersTo }])),
  { weight: 8, arbitrary: fc.tuple(anySheet, anyLines).map(([sheet, lines]) => action((workbook) => insertLines(workbook, sheet, lines))) },
  { weight: 8, arbitrary: fc.tuple(anySheet, anyLines).map(([sheet, lines]) => action((workbook) => deleteLines(workbook, sheet, lines))) },
  { weight: 2, arbitrary: fc.tuple(anySheet, anyLines, fc.nat(7)).map(([sheet, lines, to]) => action((workbook) => moveLines(workbook, sheet, lines, to))) },
  // As another program might write it: lines that come or go and no reference that follows.
  fc.tuple(anySheet, anyLines, fc.constantFrom('insertLines' as const, 'deleteLines' as const)).map(([sheet, lines, kind]) => action(() => [{ kind, sheet, ...lines }])),
  { weight: 2, arbitrary: fc.tuple(anySheet, anyCell, anyCell, anySheet, anyCell).map(([sheet, one, other, toSheet, to]) => action((workbook) => moveCells(workbook, blockOf(workbook, sheet, areaBetween(one, other)), toSheet, to))) },
  anySheet.map((sheet) => action((workbook) => duplicateSheet(workbook, sheet).edits)),
  { weight: 5, arbitrary: fc.constant('undo' as const) },
  { weight: 2, arbitrary: fc.constant('redo' as const) },
)

/** What the action did, or undefined where the workbook refuses it. */
function move(history: History, next: Action | 'undo' | 'redo'): Moved | undefined {
  if (next === 'undo') return undo(history)
  if (next === 'redo') return redo(history)
  try {
    return perform(history, next(history.workbook), 'action')
  } catch (problem) {
    if (problem instanceof WorkbookProblem) return undefined
    throw problem
  }
}

const everything = (graph: Graph) => ({
  values: [...graph.allValues()],
  errors: graph.errors(),
  states: graph.states(),
  checks: graph.workbook.sheets.map(({ name }) => [...graph.read(name, { top: 0, left: 0, bottom: ROWS, right: COLUMNS }).checks]),
})

it('after any actions, undone and redone, the graph has what a fresh one has: values, errors, checks, states', () => {
  fc.assert(
    fc.property(fc.array(anyAction, { minLength: 1, maxLength: 12 }), (actions) => {
      let history = startHistory(start())
      const graph = new Graph(history.workbook)
      for (const next of actions) {
        const moved = move(history, next)
        if (moved === undefined) continue
        history = moved.history
        graph.apply(moved.edits)
        expect(graph.workbook).toEqual(history.workbook)
        expect(everything(graph)).toEqual(everything(new Graph(history.workbook)))
      }
    }),
    { numRuns: 150 },
  )
})

it('after everything is undone, the graph has what it had at first', () => {
  fc.assert(
    fc.property(fc.array(anyAction, { minLength: 1, maxLength: 12 }), (actions) => {
      let history = startHistory(start())
      const graph = new Graph(history.workbook)
      const first = everything(graph)
      for (const next of actions) {
        const moved = move(history, next)
        history = moved?.history ?? history
        graph.apply(moved?.edits ?? [])
      }
      while (history.past.length > 0) {
        const moved = undo(history)
        history = moved.history
        graph.apply(moved.edits)
      }
      expect(everything(graph)).toEqual(first)
    }),
    { numRuns: 60 },
  )
})
