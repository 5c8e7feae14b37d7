import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { makeBase, makeCase, removeCase, setInCase, takeBack } from '../../../src/workbook/case-commands.ts'
import { switchCase } from '../../../src/workbook/case-switching.ts'
import { casesOf, heldIn, isOwn } from '../../../src/workbook/cases.ts'
import { eachCell, withCells } from '../../../src/workbook/cells.ts'
import { renameSheet, setEntry, setRole } from '../../../src/workbook/commands.ts'
import { emptySheet, type Cell, type CellContent, type Sheet, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { contentOf } from '../../../src/workbook/entry.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { perform, redo, startHistory, undo, type History } from '../../../src/workbook/history.ts'
import { deleteLines, insertLines, moveLines } from '../../../src/workbook/line-commands.ts'
import { blockOf, moveCells } from '../../../src/workbook/move-cells.ts'
import { restate } from '../../../src/workbook/restate.ts'
import { duplicateSheet } from '../../../src/workbook/sheet-commands.ts'
import { changeUnits, unitPlace } from '../../../src/workbook/unit-change.ts'

/**
 * The model: a workbook of its own for the base and for each case, without any of this. What is common to all is done to each of them; what
 * belongs to one, to that one. Cells are told apart by their notes, which go where the cells go.
 */
interface Model {
  readonly base: Workbook
  readonly cases: readonly { readonly workbook: Workbook; readonly own: ReadonlySet<string> }[]
  readonly current: number | null
}

const ROWS = 5

const sheetOfInputs = (name: string): Sheet => withCells(emptySheet(name), Array.from({ length: ROWS }, (_, row) => [
  { row, column: 0, cell: { content: `${name} ${row}`, role: 'label' as const, note: `${name}-label${row}` } },
  { row, column: 1, cell: { content: row % 2 === 0 ? 30 + row : row === 1 ? `=C1*${row}` : '31 °F', role: 'input' as const, note: `${name}-input${row}` } },
  { row, column: 2, cell: { content: ['°F', 'ft/s', 'psig', 'TR', 'm'][row] ?? 'ft', role: 'unit' as const, note: `${name}-unit${row}` } },
]).flat())

const start: Workbook = { title: 't', purpose: '', sheets: [sheetOfInputs('One'), sheetOfInputs('Two')], names: new Map(), figures: [] }

/** A number that picks one of those there are at the time. */
const pick = fc.nat({ max: 1000 })
const typed = fc.constantFrom('12.5', '0.1', '', '-40', '=B2+One!B1', "=Two!B3*2", '31 °F', '5 m/s', 'words', '32')

const action = fc.oneof(
  { weight: 6, arbitrary: fc.record({ do: fc.constant('type' as const), pick, typed }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('switch' as const), pick }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('make' as const), pick }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('setIn' as const), pick, other: pick, typed }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('takeBack' as const), pick, other: pick }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('remove' as const), pick }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('makeBase' as const), pick }) },
  { weight: 3, arbitrary: fc.record({ do: fc.constant('undo' as const), pick }) },
  { weight: 2, arbitrary: fc.record({ do: fc.constant('redo' as const), pick }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constantFrom('insert' as const, 'delete' as const, 'lines' as const, 'cells' as const, 'columns' as const, 'SI' as const, 'US' as const, 'rename' as const, 'double' as const, 'role' as const, 'unit' as const, 'file' as const), pick, other: pick }) },
)
type Action = typeof action extends fc.Arbitrary<infer T> ? T : never

const at = (workbook: Workbook, edits: readonly Edit[]): Workbook => applyEdits(workbook, edits).workbook
const chosen = <T>(list: readonly T[], number: number): T => list[number % list.length] as T

interface Place { readonly sheet: string; readonly row: number; readonly column: number; readonly cell: Cell }

function placesOf(workbook: Workbook): Place[] {
  const found: Place[] = []
  for (const sheet of workbook.sheets) eachCell(sheet, (cell, row, column) => void found.push({ sheet: sheet.name, row, column, cell }))
  return found
}
const inputsOf = (workbook: Workbook): Place[] => placesOf(workbook).filter(({ cell }) => cell.role === 'input')
const idOf = ({ sheet, cell }: Place): string => `${sheet}/${cell.note}`

/** The same to each of the workbooks. */
const common = (model: Model, change: (workbook: Workbook) => readonly Edit[]): Model => ({
  ...model, base: at(model.base, change(model.base)), cases: model.cases.map((one) => ({ ...one, workbook: at(one.workbook, change(one.workbook)) })),
})

function putContent(workbook: Workbook, { sheet, row, column }: Place, content: CellContent): Workbook {
  const cell = workbook.sheets.find(({ name }) => name === sheet)?.rows[row]?.[column]
  if (!cell) return workbook
  const { restatedFrom: _before, ...rest } = cell
  return at(workbook, [{ kind: 'cells', sheet, cells: [{ row, column, cell: { ...(content === cell.content ? cell : rest), content } }] }])
}

/** What belongs to one, and to those that have nothing of their own where it is the base's. */
function put(model: Model, where: number | null, place: Place, content: CellContent, asOwn: boolean): Model {
  const id = idOf(place)
  if (where !== null && (asOwn || model.cases[where]?.own.has(id))) {
    return { ...model, cases: model.cases.map((one, index) => (index === where ? { workbook: putContent(one.workbook, place, content), own: new Set([...one.own, id]) } : one)) }
  }
  return { ...model, base: putContent(model.base, place, content), cases: model.cases.map((one) => (one.own.has(id) ? one : { ...one, workbook: putContent(one.workbook, place, content) })) }
}

interface State { readonly history: History; readonly model: Model; readonly past: readonly Model[]; readonly future: readonly Model[] }

function step(state: State, action: Action): State {
  const { history, model } = state
  const { workbook } = history
  const { list, current } = casesOf(workbook)
  const done = (edits: readonly Edit[], next: Model): State => {
    const moved = perform(history, edits, action.do).history
    return moved === history ? { ...state, model: next } : { history: moved, model: next, past: [...state.past, model], future: [] }
  }
  const all = (change: (workbook: Workbook) => readonly Edit[], next: (after: Model) => Model = (after) => after) => done(change(workbook), next(common(model, change)))
  const sheet = chosen(workbook.sheets, action.pick).name

  switch (action.do) {
    case 'undo': {
      const before = state.past.at(-1)
      return before ? { history: undo(history).history, model: before, past: state.past.slice(0, -1), future: [model, ...state.future] } : state
    }
    case 'redo': {
      const [after, ...future] = state.future
      return after ? { history: redo(history).history, model: after, past: [...state.past, model], future } : state
    }
    case 'type': {
      const place = chosen(placesOf(workbook), action.pick)
      const content = contentOf(action.typed)
      const isChange = content !== place.cell.content
      return done(setEntry(workbook, place.sheet, place, action.typed), isChange ? put(model, current, place, content, place.cell.role === 'input') : model)
    }
    case 'switch': {
      const to = chosen([null, ...list.keys()], action.pick)
      return done(switchCase(workbook, to), { ...model, current: to })
    }
    case 'make': {
      if (list.length >= 4) return state
      const from = chosen([null, ...list.keys()], action.pick)
      const of = from === null ? undefined : model.cases[from]
      return done(makeCase(workbook, `Case ${state.past.length}-${action.pick}`, from), { ...model, cases: [...model.cases, of ?? { workbook: model.base, own: new Set() }], current: list.length })
    }
    case 'setIn': {
      const inputs = inputsOf(workbook)
      if (inputs.length === 0) return state
      const place = chosen(inputs, action.other)
      const where = chosen([null, ...list.keys()], action.pick)
      const content = contentOf(action.typed)
      // In the current one it is an edit of the cell, and one that changes nothing makes nothing its own.
      const isNothing = where === current && content === place.cell.content
      return done(setInCase(workbook, where, place, content), isNothing ? model : put(model, where, place, content, true))
    }
    case 'takeBack': {
      const inputs = inputsOf(workbook)
      if (list.length === 0 || inputs.length === 0) return state
      const place = chosen(inputs, action.other)
      const where = action.pick % list.length
      if (!isOwn(workbook, where, place)) return state
      const cases = model.cases.map((one, index) => {
        if (index !== where) return one
        const cell = model.base.sheets.find(({ name }) => name === place.sheet)?.rows[place.row]?.[place.column] ?? null
        return { workbook: at(one.workbook, [{ kind: 'cells', sheet: place.sheet, cells: [{ row: place.row, column: place.column, cell }] }]), own: new Set([...one.own].filter((id) => id !== idOf(place))) }
      })
      return done(takeBack(workbook, where, place), { ...model, cases })
    }
    case 'remove': {
      if (list.length === 0) return state
      const where = action.pick % list.length
      const next = model.current === where ? null : model.current !== null && model.current > where ? model.current - 1 : model.current
      return done(removeCase(workbook, where), { ...model, cases: model.cases.toSpliced(where, 1), current: next })
    }
    case 'makeBase': {
      if (list.length === 0) return state
      const where = action.pick % list.length
      const one = model.cases[where]
      if (!one) return state
      const cases = model.cases.map((other, index) => (index === where ? { workbook: model.base, own: one.own } : { ...other, own: new Set([...other.own, ...one.own]) }))
      return done(makeBase(workbook, where), { base: one.workbook, cases, current: null })
    }
    case 'insert': return all((host) => insertLines(host, sheet, { axis: 'rows', at: action.other % ROWS, count: 1 + (action.pick % 2) }))
    case 'delete': return all((host) => deleteLines(host, sheet, { axis: 'rows', at: action.other % ROWS, count: 1 }))
    case 'columns': return all((host) => insertLines(host, sheet, { axis: 'columns', at: action.other % 3, count: 1 }))
    case 'lines': return all((host) => moveLines(host, sheet, { axis: 'rows', at: action.other % ROWS, count: 1 + (action.pick % 2) }, action.pick % ROWS))
    case 'cells': {
      const area = { top: action.other % ROWS, bottom: (action.other % ROWS) + 1, left: action.pick % 2, right: (action.pick % 2) + 1 }
      const to = chosen(workbook.sheets, action.other).name
      const change = (host: Workbook) => moveCells(host, blockOf(host, sheet, area), to, { row: action.pick % ROWS, column: action.other % 3 })
      const moved = new Set(placesOf(workbook).filter((one) => one.sheet === sheet && one.row >= area.top && one.row <= area.bottom && one.column >= area.left && one.column <= area.right).map(idOf))
      const renamed = (id: string) => (moved.has(id) ? `${to}${id.slice(sheet.length)}` : id)
      // A copy of a sheet has notes that are the same as those of the sheet: told apart by their sheets, they must not come together.
      if (to !== sheet && workbook.sheets.length > 2) return state
      return all(change, (after) => ({ ...after, cases: after.cases.map((one) => ({ ...one, own: new Set([...one.own].map(renamed)) })) }))
    }
    case 'SI': case 'US': {
      const system = action.do
      return all((host) => restate(host, system))
    }
    case 'rename': {
      const name = `Sheet ${action.other}`
      if (workbook.sheets.some((one) => one.name === name)) return state
      return all((host) => renameSheet(host, sheet, name), (after) => ({ ...after, cases: after.cases.map((one) => ({ ...one, own: new Set([...one.own].map((id) => (id.startsWith(`${sheet}/`) ? `${name}${id.slice(sheet.length)}` : id))) })) }))
    }
    case 'double': {
      if (workbook.sheets.length > 3) return state
      const { name } = duplicateSheet(workbook, sheet)
      return all((host) => duplicateSheet(host, sheet).edits, (after) => ({
        ...after, cases: after.cases.map((one) => ({ ...one, own: new Set([...one.own].flatMap((id) => (id.startsWith(`${sheet}/`) ? [id, `${name}${id.slice(sheet.length)}`] : [id]))) })),
      }))
    }
    case 'role': {
      const place = chosen(placesOf(workbook), action.other)
      return all((host) => setRole(host, place.sheet, { from: place }, action.pick % 2 === 0 ? 'input' : 'text'))
    }
    case 'unit': {
      const places = workbook.sheets.flatMap((one) => placesOf({ ...workbook, sheets: [one] }).filter(({ cell }) => cell.role === 'unit'))
      if (places.length === 0) return state
      const place = chosen(places, action.other)
      const code = chosen(['°C', 'm/s', 'barg', 'kW', 'ft'], action.pick)
      const change = (host: Workbook): Edit[] => {
        const held = host.sheets.find(({ name }) => name === place.sheet)
        const unit = held && unitPlace(held, place)
        return unit ? changeUnits(host, place.sheet, [unit], code, true) : []
      }
      return all(change)
    }
    case 'file': {
      const read = readWorkbook(writeWorkbook(workbook))
      if ('problems' in read) throw new Error(read.problems[0]?.message)
      expect(read.workbook).toEqual(workbook)
      return state
    }
  }
}

const cellsOf = (workbook: Workbook) => workbook.sheets.map((sheet) => ({ name: sheet.name, cells: placesOf({ ...workbook, sheets: [sheet] }) }))

describe('cases', () => {
  it('whatever is done, in whatever order, base and cases hold what a workbook for each of them would', () => {
    fc.assert(fc.property(fc.array(action, { minLength: 5, maxLength: 30, size: 'max' }), (actions) => {
      let state: State = { history: startHistory(start), model: { base: start, cases: [], current: null }, past: [], future: [] }
      for (const one of actions) {
        state = step(state, one)
        const { workbook } = state.history
        const { model } = state
        expect(casesOf(workbook).current).toBe(model.current)
        expect(cellsOf(at(workbook, switchCase(workbook, null)))).toEqual(cellsOf(model.base))
        expect(casesOf(workbook).list.length).toBe(model.cases.length)
        for (const [index, each] of model.cases.entries()) {
          expect(cellsOf(at(workbook, switchCase(workbook, index)))).toEqual(cellsOf(each.workbook))
          for (const place of placesOf(each.workbook)) expect(heldIn(workbook, index, place)?.content ?? null).toBe(place.cell.content)
        }
      }
    }), { numRuns: 400 })
  })

  it('switching there and back leaves the very same, and so does undoing all', () => {
    fc.assert(fc.property(fc.array(action, { minLength: 5, maxLength: 20, size: 'max' }), (actions) => {
      let state: State = { history: startHistory(start), model: { base: start, cases: [], current: null }, past: [], future: [] }
      for (const one of actions) state = step(state, one)
      const { workbook } = state.history
      const { current, list } = casesOf(workbook)
      for (const to of [null, ...list.keys()]) {
        const there = at(workbook, switchCase(workbook, to))
        expect(at(there, switchCase(there, current))).toEqual(workbook)
      }
      let { history } = state
      while (history.past.length > 0) history = undo(history).history
      expect(history.workbook).toEqual(start)
    }), { numRuns: 300 })
  })
})
