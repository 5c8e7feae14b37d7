import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { acceptDifferences } from '../../src/review/differences/accept.ts'
import { compareWorkbooks } from '../../src/review/differences/compare-workbooks.ts'
import type { Comparison, Difference, DifferenceKind } from '../../src/review/differences/difference.ts'
import { cellAt, usedRange, type Cell, type Workbook } from '../../src/workbook/document.ts'
import { eachCell } from '../../src/workbook/cells.ts'
import { applyEdits, type Edit } from '../../src/workbook/edits.ts'
import { deleteLines, deleteLinesAtOnce, insertLines, insertLinesAtOnce } from '../../src/workbook/line-commands.ts'
import { removeSheet, renameSheet } from '../../src/workbook/commands.ts'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { WorkbookProblem } from '../../src/workbook/problem.ts'
import { restate } from '../../src/workbook/restate.ts'
import { readTemplate } from '../templates/open-template.ts'
import { edit, fitting, workbook as anyWorkbook } from './workbook/arbitraries.ts'
import { cellOf, sheetOf, type Put } from '../unit/workbook-of.ts'

/** Without what reviewers left, which no difference takes over. */
const unreviewed = ({ title, purpose, sheets, names, figures }: Workbook): Workbook => ({ title, purpose, sheets, names, figures })
const TEMPLATES = ['plant', 'vessel-sizing', 'charge-inventory', 'relief', 'basis'].map((name) => unreviewed(readTemplate(`templates/${name}.lowside.json`)))
const AREAS = new Map()
const compared = (before: Workbook, now: Workbook): Comparison => compareWorkbooks({ workbook: before, areas: AREAS }, { workbook: now, areas: AREAS })
const done = (workbook: Workbook, edits: readonly Edit[]): Workbook => applyEdits(workbook, edits).workbook

/** All that a comparison looks at, as plain text; formulas whatever their capitals and blanks. */
function contents({ title, purpose, sheets, names, figures, tolerances, cases, report }: Workbook): unknown {
  const cellText = ({ content, role, digits, decimals, wrap, note }: Cell) => [typeof content === 'string' ? content.replace(/\s/g, '').replace(/^'(?![='0-9])/, '').toUpperCase() : content, role, digits, decimals, wrap, note || undefined]
  return {
    title, purpose, tolerances, figures: JSON.stringify(figures).toLowerCase(), cases, by: [report?.preparedBy ?? '', report?.checkedBy ?? ''], names: [...names].map(([name, refersTo]) => [name, refersTo.toLowerCase()]).toSorted(),
    sheets: sheets.map((sheet) => {
      const cells: unknown[] = []
      eachCell(sheet, (cell, row, column) => void cells.push([row, column, ...cellText(cell)]))
      return [sheet.name, cells]
    }),
  }
}

/** Workbooks whose formulas refer to each other by every kind of reference, with a table, units, names, cases and tolerances. */
const corner = fc.tuple(fc.constantFrom('', '$'), fc.nat(4), fc.constantFrom('', '$'), fc.nat(8)).map(([c, column, r, row]) => `${c}${'ABCDE'[column]}${r}${row + 1}`)
const reference = fc.tuple(fc.constantFrom('', '', 'Main!', "'Two 2'!"), corner).map((parts) => parts.join(''))
const range = fc.tuple(fc.constantFrom('', 'Main!'), fc.nat(4), fc.nat(6), fc.nat(2), fc.nat(4)).map(([sheet, left, top, width, height]) => `${sheet}${'ABCDEFG'[left]}${top + 1}:${'ABCDEFG'[left + width]}${top + height + 1}`)
const formula = fc.oneof(fc.tuple(reference, fc.constantFrom('+', '*'), reference).map((parts) => `=${parts.join('')}`), fc.tuple(reference, fc.constantFrom('first', 'second')).map(([one, name]) => `=${one}+${name}`), range.map((area) => `=SUM(${area})`))
const put: fc.Arbitrary<Put> = fc.oneof({ weight: 3, arbitrary: fc.integer({ min: -50, max: 50 }) }, { weight: 2, arbitrary: formula }, { weight: 2, arbitrary: fc.constantFrom('Load', 'Area', 'Zone 1', 'Zone 2', 'Total') })
const cellsOf = fc.array(fc.tuple(fc.nat(8), fc.nat(4), put), { minLength: 3, maxLength: 30 }).map((list) => Object.fromEntries(list.map(([row, column, one]): [string, Put] => [`${'ABCDE'[column]}${row + 1}`, one])))
const place = fc.record({ sheet: fc.constantFrom('Main', 'Two 2'), row: fc.nat(8), column: fc.nat(4) })
const aside = fc.uniqueArray(fc.tuple(place, fc.integer({ min: 0, max: 9 })), { maxLength: 4, selector: ([one]) => JSON.stringify(one) }).map((list) => list.map(([one, content]) => ({ ...one, content })))
const cases = fc.option(fc.record({ list: fc.tuple(fc.record({ name: fc.constant('Hot day'), aside }), fc.record({ name: fc.constant('Cold day'), note: fc.constant('at night'), aside })), current: fc.constantFrom(null, 0, 1), compared: fc.uniqueArray(place, { maxLength: 2, selector: (one) => JSON.stringify(one) }) }))
const tolerances = fc.uniqueArray(place, { maxLength: 3, selector: (one) => JSON.stringify(one) }).map((places) => places.map((one) => ({ place: one, tolerance: { kind: 'share', share: 0.05 } as const })))
/** Cases have values of their own in inputs. */
const linkedBook: fc.Arbitrary<Workbook> = fc.tuple(cellsOf, cellsOf, cases, tolerances).map(([one, two, some, given]) => [done({
  title: 'Plant', purpose: '', sheets: [sheetOf('Main', one), sheetOf('Two 2', two)], names: new Map([['first', 'Main!$B$2'], ['second', "'Two 2'!$A$1:$B$3"]]), figures: [],
}, [{ kind: 'tolerances', tolerances: given }]), some] as const).map(([book, some]) => done(book, [{ kind: 'cases', cases: some && { ...some, list: some.list.map((one) => ({ ...one, aside: one.aside.filter(({ sheet, row, column }) => cellAt(book, sheet, row, column)?.role === 'input') })) } }]))

/** What a user does, references following. */
const lines = fc.record({ axis: fc.constantFrom('rows' as const, 'columns' as const), at: fc.nat(8), count: fc.integer({ min: 1, max: 2 }) })
type Act = (workbook: Workbook) => Edit[]
const act: fc.Arbitrary<Act> = fc.oneof(
  fc.tuple(fc.constantFrom('Main', 'Two 2'), lines).map(([sheet, line]): Act => (workbook) => insertLines(workbook, sheet, line)),
  fc.tuple(fc.constantFrom('Main', 'Two 2'), lines).map(([sheet, line]): Act => (workbook) => deleteLines(workbook, sheet, line)),
  fc.tuple(fc.constantFrom('Main', 'Two 2'), fc.constantFrom('Other', 'Main', 'Two 2')).map(([from, to]): Act => (workbook) => renameSheet(workbook, from, to)),
  fc.tuple(fc.constantFrom('Main', 'Two 2'), fc.nat(9), fc.nat(5), fc.oneof(put, fc.constant(null))).map(([sheet, row, column, one]): Act => () =>
    [{ kind: 'cells', sheet, cells: [{ row, column, cell: one === null ? null : cellOf(one) }] }]),
  fc.constantFrom('first', 'third').map((name): Act => () => [{ kind: 'name', name, refersTo: 'Main!$C$3' }]),
  fc.constant<Act>((workbook) => removeSheet(workbook, workbook.sheets.at(-1)?.name ?? '')),
  fc.constant<Act>(() => [{ kind: 'moveSheet', sheet: 'Two 2', to: 0 }]),
  fc.constant<Act>((workbook) => restate(workbook, 'SI')),
)

function acted(workbook: Workbook, acts: readonly Act[]): Workbook {
  return acts.reduce((current, one) => {
    try {
      return done(current, one(current))
    } catch (fault) {
      if (fault instanceof WorkbookProblem) return current
      throw fault
    }
  }, workbook)
}

/** No line comes back into a sheet whose last one is in use: that is refused, and no case of these. */
function unlessFull<Made>(make: () => Made): Made {
  try {
    return make()
  } catch (fault) {
    if (fault instanceof WorkbookProblem && fault.message.includes('off the sheet')) fc.pre(false)
    throw fault
  }
}

/** Accepts one after the other, whichever `choose` says, until nothing differs. */
function acceptOneByOne(before: Workbook, now: Workbook, choose: (count: number) => number): Workbook {
  let current = now
  const first = compared(before, now).differences.length
  for (let step = 0; step < 3 * first + 60; step++) {
    const comparison = compared(before, current)
    const possible = comparison.differences.filter(({ accept }) => 'words' in accept)
    if (possible.length === 0) return current
    const one = possible[choose(possible.length)]
    const after = unlessFull(() => done(current, acceptDifferences(before, current, comparison, [one?.id ?? -1])))
    if (after === current) expect.fail(`accepting changed nothing: ${JSON.stringify(one)}`)
    current = after
  }
  return expect.fail(`no end: ${compared(before, current).differences.map(({ kind, was, is }) => `${kind} ${was} ${is}`).join('\n')}`)
}

function acceptAll(before: Workbook, now: Workbook): Workbook {
  let current = now
  for (let round = 0; round < 8; round++) {
    const comparison = compared(before, current)
    if (comparison.differences.length === 0) return current
    current = unlessFull(() => done(current, acceptDifferences(before, current, comparison, comparison.differences.map(({ id }) => id))))
  }
  return expect.fail(`not the same after all: ${compared(before, current).differences.map(({ kind, was, is }) => `${kind} ${was} ${is}`).join('\n')}`)
}

/** As commands leave it: primitive edits may leave tolerances of sheets that are gone. */
const tidy = (workbook: Workbook): Workbook => done(workbook, [{ kind: 'tolerances', tolerances: (workbook.tolerances ?? []).filter(({ place: { sheet } }) => workbook.sheets.some(({ name }) => name === sheet)) }])

const pairOfAny = fc.tuple(anyWorkbook, fc.array(edit, { maxLength: 8 })).map(([before, edits]) => ({ before, now: tidy(done(before, fitting(before, edits))) }))
const pairOfLinked = fc.tuple(linkedBook, fc.array(act, { maxLength: 8 })).map(([before, acts]) => ({ before, now: acted(before, acts) }))
const pairs = fc.oneof(pairOfAny, { weight: 3, arbitrary: pairOfLinked })

describe('accepting every difference', () => {
  it('one after the other, in any order, gives the workbook before', () => {
    fc.assert(fc.property(pairs, fc.infiniteStream(fc.nat()), ({ before, now }, numbers) => {
      const after = acceptOneByOne(before, now, (count) => (numbers.next().value ?? 0) % count)
      expect(compared(before, after).differences).toEqual([])
      expect(contents(after)).toEqual(contents(before))
    }), { numRuns: 60 })
  })

  it('at once gives the workbook before', () => {
    fc.assert(fc.property(pairs, ({ before, now }) => {
      const after = acceptAll(before, now)
      expect(contents(after)).toEqual(contents(before))
    }), { numRuns: 60 })
  })
})

describe('lines at several places at once', () => {
  it('come and go as one after the other', () => {
    const stretches = fc.array(fc.record({ at: fc.nat(10), count: fc.integer({ min: 1, max: 3 }) }), { maxLength: 5 })
    fc.assert(fc.property(linkedBook, fc.constantFrom('rows' as const, 'columns' as const), stretches, fc.constantFrom([insertLines, insertLinesAtOnce] as const, [deleteLines, deleteLinesAtOnce] as const), (book, axis, list, [single, atOnce]) => {
      const oneByOne = list.reduce((current, one) => done(current, single(current, 'Main', { axis, ...one })), book)
      expect(contents(done(book, atOnce(book, 'Main', axis, list)))).toEqual(contents(oneByOne))
    }), { numRuns: 200 })
  })
})

const MIRROR: Readonly<Partial<Record<DifferenceKind, DifferenceKind>>> = {
  'sheet added': 'sheet gone', 'sheet gone': 'sheet added', 'rows inserted': 'rows gone', 'rows gone': 'rows inserted', 'columns inserted': 'columns gone', 'columns gone': 'columns inserted',
  'cell new': 'cell gone', 'cell gone': 'cell new', 'formula overwritten': 'formula entered', 'formula entered': 'formula overwritten',
}
const AS_IN_EITHER: ReadonlySet<DifferenceKind> = new Set<DifferenceKind>(['input', 'text', 'note', 'role', 'format', 'title', 'tolerance'])

/** What a difference says, or what it would say from the other side. */
const said = ({ kind, before, now, was, is, subject }: Difference, isMirrored: boolean): string => {
  const [first, second, one, other] = isMirrored ? [now, before, is, was] : [before, now, was, is]
  const lines = subject.of === 'lines' ? [subject.axis, (subject.side === 'before') !== isMirrored, subject.at, subject.count, subject.beyond] : []
  return JSON.stringify([isMirrored ? (MIRROR[kind] ?? kind) : kind, first ?? null, second ?? null, ...lines, ...(AS_IN_EITHER.has(kind) ? [one, other] : [])])
}

describe('comparing', () => {
  it('a workbook with itself finds nothing, whatever the file it was read from', () => {
    fc.assert(fc.property(fc.oneof(anyWorkbook, linkedBook), (book) => {
      const read = readWorkbook(writeWorkbook(book))
      expect(compared(book, 'workbook' in read ? read.workbook : expect.fail()).differences).toEqual([])
    }), { numRuns: 60 })
  })

  it('the other way round gives the mirror image', () => {
    fc.assert(fc.property(pairs, ({ before, now }) => {
      // What is written of a sheet that is not there means the same on both sides only while sheets have their names.
      fc.pre(now.sheets.every(({ name }) => before.sheets.some((sheet) => sheet.name === name)))
      const [one, other] = [compared(before, now).differences, compared(now, before).differences]
      expect(one.map((difference) => said(difference, true)).toSorted()).toEqual(other.map((difference) => said(difference, false)).toSorted())
    }), { numRuns: 100 })
  })

  it('a workbook restated in the other units finds units alone, and accepting them restates it back', () => {
    fc.assert(fc.property(fc.constantFrom(...TEMPLATES), (template) => {
      const restated = done(template, restate(template, 'SI'))
      const { differences } = compared(template, restated)
      expect(differences.filter(({ kind }) => kind !== 'unit')).toEqual([])
      expect(contents(acceptAll(template, restated))).toEqual(contents(template))
    }), { numRuns: 4 })
  })
})

describe('a line inserted anywhere in the template of the plant', () => {
  const plant = unreviewed(readTemplate('templates/plant.lowside.json'))
  const somewhere = fc.constantFrom(...plant.sheets).chain((sheet) => fc.record({ sheet: fc.constant(sheet.name), axis: fc.constantFrom('rows' as const, 'columns' as const), share: fc.double({ min: 0, max: 1, maxExcluded: true, noNaN: true }), count: fc.integer({ min: 1, max: 3 }) })
    .map(({ share, ...rest }) => ({ ...rest, at: Math.floor(share * usedRange(sheet)[rest.axis]) })))

  it('is one difference, and accepting it takes the line away and leaves nothing else', () => {
    fc.assert(fc.property(somewhere, ({ sheet, ...line }) => {
      const now = done(plant, insertLines(plant, sheet, line))
      const comparison = compared(plant, now)
      expect(comparison.differences.map(({ kind }) => kind)).toEqual([`${line.axis} inserted`])
      expect(contents(done(now, acceptDifferences(plant, now, comparison, [0])))).toEqual(contents(plant))
    }), { numRuns: 40 })
  })

  it('or taken away is told as gone and nothing else, and accepting it gives back the line with what referred to it', () => {
    fc.assert(fc.property(somewhere, ({ sheet, ...line }) => {
      const now = done(plant, deleteLines(plant, sheet, line))
      const comparison = compared(plant, now)
      expect(comparison.differences.filter(({ kind }) => !kind.endsWith('gone'))).toEqual([])
      expect(contents(acceptAll(plant, now))).toEqual(contents(plant))
    }), { numRuns: 15 })
  })
})
