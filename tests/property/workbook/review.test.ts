import fc from 'fast-check'
import { expect, it } from 'vitest'
import { areaOf } from '../../../src/workbook/address.ts'
import { eachCell, withCells } from '../../../src/workbook/cells.ts'
import { renameSheet } from '../../../src/workbook/commands.ts'
import { emptySheet, foldCase, isFormula, sheetByName, type Cell, type CellContent, type Role, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { rewriteReferences } from '../../../src/workbook/formula/references.ts'
import { perform, redo, startHistory, undo } from '../../../src/workbook/history.ts'
import { deleteLines, insertLines, moveLines } from '../../../src/workbook/line-commands.ts'
import { blockOf, moveCells } from '../../../src/workbook/move-cells.ts'
import { WorkbookProblem } from '../../../src/workbook/problem.ts'
import { restate } from '../../../src/workbook/restate.ts'
import { NO_REVIEW, type CheckMark, type RecordEntry, type Review } from '../../../src/workbook/review-record.ts'
import { markStates } from '../../../src/workbook/review/mark-states.ts'
import { acceptFinding, markChecked, withdrawMark } from '../../../src/workbook/review/review-commands.ts'
import { verifyRecord } from '../../../src/workbook/review/verify-record.ts'
import { unitOfValue } from '../../../src/workbook/unit-scope.ts'

/**
 * The model: cells are told apart by their notes, which go where the cells go. What was checked is described by what each cell upstream holds, its
 * references put as the notes of the cells that they reach; a mark is to be stale exactly when that description is another one.
 */

const AT = '2026-03-02T14:05:00Z'
const reviewer = { by: 'R. Smith', at: AT, method: 'by hand', note: '' } as const

const cellOf = (content: CellContent, role: Role, note: string): Cell => ({ content, role, note })

const start: Workbook = {
  title: 't', purpose: '', names: new Map(), figures: [],
  sheets: [
    withCells(emptySheet('One'), [
      { row: 0, column: 0, cell: cellOf(31, 'input', 'a') }, { row: 0, column: 1, cell: cellOf('°F', 'unit', 'au') },
      { row: 1, column: 0, cell: cellOf(12, 'input', 'b') }, { row: 1, column: 1, cell: cellOf('ft', 'unit', 'bu') },
      { row: 3, column: 0, cell: cellOf('=A1*2+A2', 'result', 'c') },
      { row: 4, column: 0, cell: cellOf('=SUM(A1:A4)', 'result', 'd') },
      { row: 5, column: 2, cell: cellOf('=Two!B2+A3', 'result', 'e') },
    ]),
    withCells(emptySheet('Two'), [
      { row: 0, column: 1, cell: cellOf('psig', 'unit', 'fu') },
      { row: 1, column: 1, cell: cellOf(20, 'input', 'f') },
      { row: 2, column: 1, cell: cellOf('=B2*One!A4', 'result', 'g') },
      { row: 3, column: 1, cell: cellOf('=SUM(B2:B3)+COUNT(One!A1:B3)', 'result', 'h') },
    ]),
  ],
}

interface Noted { readonly note: string; readonly sheet: string; readonly row: number; readonly column: number; readonly cell: Cell }

function cellsOf(workbook: Workbook): Noted[] {
  const found: Noted[] = []
  for (const { name, ...sheet } of workbook.sheets) eachCell({ name, ...sheet }, (cell, row, column) => void (cell.content !== null && found.push({ note: cell.note ?? '?', sheet: name, row, column, cell })))
  return found
}

/** What the notes' cells and all upstream of them hold, by note. @param units brings the units of numbers too, by where they stand */
function upstream(workbook: Workbook, notes: readonly string[], units: boolean): ReadonlyMap<string, string> {
  const cells = cellsOf(workbook)
  const byNote = new Map(cells.map((one) => [one.note, one]))
  const found = new Map<string, string>()
  const open = [...notes]
  for (let note = open.pop(); note !== undefined; note = open.pop()) {
    if (found.has(note)) continue
    const one = byNote.get(note)
    if (!one) {
      found.set(note, 'gone')
      continue
    }
    const reach: string[] = []
    const text = isFormula(one.cell.content) ? rewriteReferences(one.cell.content, (reference) => {
      const { top, left, bottom, right } = areaOf(reference)
      const sheet = reference.sheet ?? one.sheet
      const inside = cells.filter(({ row, column, ...other }) => foldCase(other.sheet) === foldCase(sheet) && row >= top && row <= bottom && column >= left && column <= right)
      reach.push(`[${inside.map((other) => other.note).toSorted().join(' ')}]`)
      open.push(...inside.map((other) => other.note))
      return { ...reference, sheet: null, from: { row: 0, column: 0, rowAbsolute: false, columnAbsolute: false }, to: null }
    }) : ''
    const sheet = sheetByName(workbook, one.sheet)
    const at = units && isValue(one) && sheet ? unitOfValue(sheet, one) : undefined
    const unit = at && sheet?.rows[at.row]?.[at.column]
    if (unit?.content != null) open.push(unit.note ?? '?')
    found.set(note, isFormula(one.cell.content) ? `${text} ${reach.join('')}` : JSON.stringify(one.cell.content))
  }
  return found
}

const isValue = ({ cell: { content } }: Noted): boolean => typeof content === 'number' || isFormula(content)

const textOf = (found: ReadonlyMap<string, string>): string => JSON.stringify([...found].toSorted(([one], [other]) => (one < other ? -1 : 1)))

interface Checked {
  readonly notes: readonly string[]
  readonly text: string
}

function checkedNow(workbook: Workbook, { sheet, area }: CheckMark): Checked {
  const marked = cellsOf(workbook).filter(({ row, column, ...cell }) => cell.sheet === sheet && (area === null || (row === area.top && column === area.left))).map(({ note }) => note)
  const notes = [...upstream(workbook, marked, true).keys()]
  return { notes, text: textOf(upstream(workbook, notes, false)) }
}

function isStale(workbook: Workbook, { sheet, area, gone }: CheckMark, { notes, text }: Checked): boolean {
  const cells = cellsOf(workbook)
  const known = new Set(notes)
  const joined = !gone && cells.some(({ row, column, ...cell }) =>
    cell.sheet === sheet && (area === null || (row >= area.top && row <= area.bottom && column >= area.left && column <= area.right)) && !known.has(cell.note))
  const newUnit = cells.filter((one) => known.has(one.note) && isValue(one)).some((one) => cells.some((other) => other.cell.role === 'unit' && other.sheet === one.sheet && other.row === one.row && other.column === one.column + 1 && !known.has(other.note)))
  return joined || newUnit || textOf(upstream(workbook, notes, false)) !== text
}

const pick = fc.nat({ max: 1000 })
const action = fc.oneof(
  { weight: 6, arbitrary: fc.record({ do: fc.constant('type' as const), pick, content: fc.constantFrom<CellContent>(1, 2, 31, '=A1', '=SUM(A1:B2)', '=Two!B2', 'words', null) }) },
  { weight: 5, arbitrary: fc.record({ do: fc.constant('new' as const), pick, content: fc.constantFrom<CellContent>(5, '=A1+One!A2', 'text') }) },
  { weight: 6, arbitrary: fc.record({ do: fc.constant('mark' as const), pick, content: fc.constantFrom<CellContent>(null) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constant('mark sheet' as const), pick, content: fc.constantFrom<CellContent>(null) }) },
  { weight: 1, arbitrary: fc.record({ do: fc.constantFrom('withdraw' as const, 'accept' as const, 'rename' as const, 'file' as const), pick, content: fc.constantFrom<CellContent>(null) }) },
  { weight: 10, arbitrary: fc.record({ do: fc.constantFrom('insert' as const, 'delete' as const, 'lines' as const, 'cells' as const, 'undo' as const, 'redo' as const), pick, content: fc.constantFrom<CellContent>(null) }) },
)

const MOVING: ReadonlySet<string> = new Set(['insert', 'delete', 'lines', 'cells'])

const chosen = <T>(list: readonly T[], number: number): T => list[number % list.length] as T

it('a mark is stale exactly when something upstream of it is not what it was, whatever moves; and the record tells of every mark there is', () => {
  fc.assert(fc.property(fc.array(action, { maxLength: 25 }), (actions) => {
    let history = startHistory(start)
    let count = 0
    const checked = new Map<string, Checked>()
    const torn = new Set<string>()
    for (const one of actions) {
      const { workbook } = history
      const review = workbook.review ?? NO_REVIEW
      const sheet = chosen(workbook.sheets, one.pick).name
      const lines = { axis: one.pick % 3 === 0 ? 'columns' as const : 'rows' as const, at: one.pick % 5, count: 1 + (one.pick % 2) }
      let edits: readonly Edit[] = []
      try {
        if (one.do === 'undo' || one.do === 'redo') {
          const before = review
          const moved = one.do === 'undo' ? undo(history, AT) : redo(history, AT)
          history = moved.history
          const grown = history.workbook.review?.record.length ?? 0
          expect(grown).toBeGreaterThanOrEqual(before.record.length)
          expect(history.workbook.review?.record.slice(0, before.record.length) ?? []).toEqual(before.record)
          // The calculation and other tabs follow the very edits.
          expect(applyEdits(workbook, JSON.parse(JSON.stringify(moved.edits)) as Edit[]).workbook).toEqual(history.workbook)
        }
        if (one.do === 'type') {
          const at = chosen(cellsOf(workbook), one.pick)
          edits = at ? [{ kind: 'cells', sheet: at.sheet, cells: [{ ...at, cell: one.content === null ? null : { ...at.cell, content: one.content } }] }] : []
        }
        if (one.do === 'new') {
          const at = { row: one.pick % 7, column: one.pick % 3 }
          const before = sheetByName(workbook, sheet)?.rows[at.row]?.[at.column]
          if (!before) edits = [{ kind: 'cells', sheet, cells: [{ ...at, cell: cellOf(one.content, 'input', `new${count++}`) }] }]
        }
        if (one.do === 'mark') {
          const at = chosen(cellsOf(workbook), one.pick)
          if (at) edits = markChecked(workbook, { ...reviewer, by: `R. Smith ${count++}`, sheet: at.sheet, area: { top: at.row, bottom: at.row, left: at.column, right: at.column } }, () => null)
        }
        if (one.do === 'mark sheet') edits = markChecked(workbook, { ...reviewer, by: `R. Smith ${count++}`, sheet, area: null }, () => null)
        if (one.do === 'withdraw' && review.marks.length > 0) edits = withdrawMark(workbook, chosen(review.marks, one.pick).id, { by: 'R. Smith', at: AT })
        if (one.do === 'accept') edits = acceptFinding(workbook, { kind: 'x', sheet, area: { top: one.pick % 4, bottom: 3, left: 0, right: 1 }, key: 'k' }, `note ${count++}`, 'R. Smith', AT)
        if (one.do === 'rename') edits = renameSheet(workbook, sheet, `S${count++}`)
        if (one.do === 'insert') edits = insertLines(workbook, sheet, lines)
        if (one.do === 'delete') edits = deleteLines(workbook, sheet, lines)
        if (one.do === 'lines') edits = moveLines(workbook, sheet, lines, (one.pick >> 3) % 6)
        if (one.do === 'cells') edits = moveCells(workbook, blockOf(workbook, sheet, { top: one.pick % 5, bottom: (one.pick % 5) + (one.pick % 2), left: one.pick % 2, right: one.pick % 2 }), chosen(workbook.sheets, one.pick >> 2).name, { row: (one.pick >> 3) % 7, column: (one.pick >> 4) % 3 })
        if (one.do === 'file') {
          const read = readWorkbook(writeWorkbook(workbook))
          if (!('workbook' in read)) throw new Error(JSON.stringify(read.problems))
          expect(writeWorkbook(read.workbook)).toBe(writeWorkbook(workbook))
          expect(markStates(read.workbook).map(({ mark, isGood }) => [mark.id, isGood])).toEqual(markStates(workbook).map(({ mark, isGood }) => [mark.id, isGood]))
          expect(verifyRecord(read.workbook.review)).toEqual(verifyRecord(workbook.review))
        }
        history = perform(history, edits, one.do).history
      } catch (error) {
        if (!(error instanceof WorkbookProblem)) throw error
      }
      // A number is given once in a history that goes on; after Undo another mark may have it.
      const made = one.do === 'mark' || one.do === 'mark sheet' ? edits.flatMap((edit) => (edit.kind === 'review' ? (edit.marks ?? []) : [])) : []
      for (const { mark } of made) {
        if (!mark || !history.workbook.review?.marks.includes(mark)) continue
        checked.set(mark.id, checkedNow(history.workbook, mark))
        torn.delete(mark.id)
      }
      for (const { mark, isGood, changes } of markStates(history.workbook)) {
        const then = checked.get(mark.id)
        if (!then) throw new Error('a mark from nowhere')
        const stale = isStale(history.workbook, mark, then)
        // What moving has torn apart may be told for good, even if more moving brings it together again; and a formula typed anew may mean the same in other words.
        if ((stale && MOVING.has(one.do)) || (one.do === 'type' && isFormula(one.content))) torn.add(mark.id)
        if (stale || !torn.has(mark.id)) expect({ isGood, changes }).toEqual({ isGood: !stale, changes })
        expect(changes.length > 0).toBe(!isGood)
      }
      expect(verifyRecord(history.workbook.review)).toMatchObject({ brokenAt: undefined, unrecorded: [] })
    }
  }), { numRuns: 500, examples: [[[{ do: 'mark sheet', pick: 0, content: null }, { do: 'lines', pick: 422, content: null }, { do: 'cells', pick: 538, content: null }]]] })
})

it('rows and columns that are inserted never make a mark stale, nor does restating there and back', () => {
  const marked = applyEdits(start, cellsOf(start).reduce<Edit[]>((edits, { sheet, row, column }) => [
    ...edits, ...markChecked(applyEdits(start, edits).workbook, { ...reviewer, sheet, area: { top: row, bottom: row, left: column, right: column } }, () => null)], [])).workbook
  const step = fc.record({ axis: fc.constantFrom('rows' as const, 'columns' as const), at: fc.nat(8), count: fc.integer({ min: 1, max: 3 }), sheet: fc.constantFrom('One', 'Two'), restate: fc.constantFrom(undefined, 'SI' as const, 'US' as const) })
  fc.assert(fc.property(fc.array(step, { maxLength: 6 }), (steps) => {
    const after = steps.reduce((workbook, { sheet, restate: system, ...lines }) => applyEdits(workbook, system ? restate(workbook, system) : insertLines(workbook, sheet, lines)).workbook, marked)
    expect(markStates(after).filter(({ isGood }) => !isGood).flatMap(({ changes }) => changes)).toEqual([])
    expect(verifyRecord(after.review)).toMatchObject({ brokenAt: undefined, unrecorded: [] })
  }), { numRuns: 200 })
})

/** A review of some length, as `markChecked`, `withdrawMark` and `acceptFinding` leave it. */
const reviewed = (): Review => {
  const all = cellsOf(start).reduce((workbook, { sheet, row, column, note }, index) => {
    const area = { top: row, bottom: row, left: column, right: column }
    const marked = applyEdits(workbook, markChecked(workbook, { ...reviewer, note, sheet, area }, () => index)).workbook
    return index % 3 === 0 ? applyEdits(marked, acceptFinding(marked, { kind: 'error-cells', sheet, area, key: note }, 'as drawn', 'R. Smith', AT)).workbook : index % 4 === 1 ? applyEdits(marked, withdrawMark(marked, String(index + 1), { by: 'A. Jones', at: AT, why: 'wrong drum' })).workbook : marked
  }, start)
  return all.review ?? NO_REVIEW
}

it('one character changed anywhere in a line of the record shows, and so do lines in another order, put in, or taken out but for the last ones', () => {
  const review = reviewed()
  expect(verifyRecord(review)).toMatchObject({ brokenAt: undefined, unrecorded: [], lastHash: review.record.at(-1)?.hash })
  const fields = ['what', 'of', 'place', 'by', 'at', 'words', 'holds', 'hash'] as const satisfies readonly (keyof RecordEntry)[]
  fc.assert(fc.property(fc.nat(review.record.length - 1), fc.constantFrom(...fields), fc.nat(100), fc.constantFrom('x', '0', ' ', 'é', '"'), fc.constantFrom('replace', 'insert', 'remove'), (line, field, at, character, how) => {
    const entry = review.record[line] as RecordEntry
    const text: string = entry[field]
    const position = at % (text.length + 1)
    const changed = text.slice(0, position) + (how === 'remove' ? '' : character) + text.slice(position + (how === 'insert' ? 0 : 1))
    fc.pre(changed !== text)
    const record = review.record.with(line, { ...entry, [field]: changed } as RecordEntry)
    expect(verifyRecord({ ...review, record }).brokenAt).toBe(line)
  }), { numRuns: 500 })
  fc.assert(fc.property(fc.nat(review.record.length - 2), fc.nat(review.record.length - 1), (line, to) => {
    const without = review.record.toSpliced(line, 1)
    expect(verifyRecord({ ...review, record: without }).brokenAt).toBe(line)
    fc.pre(to !== line)
    expect(verifyRecord({ ...review, record: without.toSpliced(to, 0, review.record[line] as RecordEntry) }).brokenAt).toBe(Math.min(line, to))
  }))
})

it('lines taken off the end show where marks or acceptances are left over, and by the last hash', () => {
  const review = reviewed()
  for (let kept = 0; kept < review.record.length; kept++) {
    const cut = verifyRecord({ ...review, record: review.record.slice(0, kept) })
    expect(cut.brokenAt).toBeUndefined()
    expect(cut.lastHash).not.toBe(review.record.at(-1)?.hash)
    if (kept < review.record.length - 2) expect(cut.unrecorded.length).toBeGreaterThan(0)
  }
})

it('a mark or an acceptance that says something else than when it was made is not on the record as it is', () => {
  const review = reviewed()
  const change = fc.constantFrom<(mark: CheckMark) => CheckMark>(
    (mark) => ({ ...mark, by: `${mark.by}x` }), (mark) => ({ ...mark, at: '2026-03-02T14:05:01Z' }), (mark) => ({ ...mark, note: `${mark.note}.` }), (mark) => ({ ...mark, method: 'inspection' }),
    (mark) => ({ ...mark, inCase: 'Winter' }), (mark) => ({ ...mark, covers: mark.covers.slice(1) }), (mark) => ({ ...mark, covers: mark.covers.map((cell, index) => (index === 0 ? { ...cell, content: `${cell.content}+1` } : cell)) }),
    (mark) => ({ ...mark, values: [{ sheet: 'One', row: 0, column: 0, value: 999 }] }), (mark) => ({ ...mark, id: '77' }),
  )
  fc.assert(fc.property(fc.nat(review.marks.length - 1), change, (index, other) => {
    const marks = review.marks.with(index, other(review.marks[index] as CheckMark))
    expect(verifyRecord({ ...review, marks }).unrecorded.length).toBeGreaterThan(0)
  }))
  for (const other of [{ note: 'no' }, { by: 'X' }, { key: 'q' }, { kind: 'y' }]) {
    expect(verifyRecord({ ...review, accepted: review.accepted.map((one, index) => (index === 0 ? { ...one, ...other } : one)) }).unrecorded).toHaveLength(2)
  }
})
