import fc from 'fast-check'
import { withCells } from '../../../src/workbook/cells.ts'
import { ROLES, type Cell, type CellContent, type Sheet, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdit, type CellChange, type Edit } from '../../../src/workbook/edits.ts'
import { contentOf } from '../../../src/workbook/entry.ts'
import { normalFigure, type Figure } from '../../../src/workbook/figure.ts'
import type { GivenTolerance, Tolerance } from '../../../src/workbook/given-tolerances.ts'
import { figureKind, figureKinds } from '../../../src/workbook/figure-kinds.ts'
import { PAPERS, type ReportSettings } from '../../../src/workbook/report-settings.ts'
import { WorkbookProblem } from '../../../src/workbook/problem.ts'

/** Text as people type it: numbers, formulas, quotes, blanks, other alphabets, half characters. */
export const typedText: fc.Arbitrary<string> = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.string({ unit: fc.constantFrom(...`0123456789.,+-eE'"=%°F TRUEfalse\u2212\u00a0`), maxLength: 10 }),
  fc.constantFrom('', ' ', "'", '=', "'=A1", '=SUM(A1:B2)&" x"', 'TRUE', ' false ', '007', '1,234', '5%', '31 °F', '-0', '1e999', '12345678901234567', '0.1'),
  fc.double({ noNaN: true, noDefaultInfinity: true }).map(String),
)

/** Content as the entry line makes it. */
export const content: fc.Arbitrary<CellContent> = typedText.map(contentOf)

export const cell: fc.Arbitrary<Cell> = fc.record(
  {
    content,
    role: fc.constantFrom(...ROLES),
    digits: fc.integer({ min: 1, max: 15 }),
    decimals: fc.integer({ min: 0, max: 12 }),
    wrap: fc.constant<true>(true),
    note: fc.string({ unit: 'binary', maxLength: 8 }),
    restatedFrom: fc.oneof(fc.constantFrom('ft/s', 'kW'), fc.double({ noNaN: true, noDefaultInfinity: true }).map((one) => one + 0)),
  },
  { requiredKeys: ['content', 'role'] },
)

/** Mostly near A1, where changes meet; now and then far out, where lists are sparse. */
const row = fc.oneof({ weight: 29, arbitrary: fc.nat(6) }, { weight: 1, arbitrary: fc.constantFrom(1_500, 1_048_575) })
const column = fc.oneof({ weight: 9, arbitrary: fc.nat(5) }, { weight: 1, arbitrary: fc.constantFrom(27, 16_383) })

const changes: fc.Arbitrary<CellChange[]> = fc.array(
  fc.record({ row, column, cell: fc.option(cell) }),
  { maxLength: 6 },
)

const sheetName = fc.constantFrom('Duty', 'duty', 'Drum', "It's", 'My sheet', 'A1', 'Größe')

const columns = fc.array(fc.integer({ min: 1, max: 400 }), { maxLength: 4 })
const frozen = fc.tuple(fc.nat(4), fc.nat(2))

const sheet: fc.Arbitrary<Sheet> = fc
  .record({ name: sheetName, columns, frozen, changes })
  .map(({ changes: cells, ...rest }) => withCells({ ...rest, rows: [] }, cells))

const names = fc
  .array(fc.tuple(fc.constantFrom('load', 'vapour_flow', 'K.value', 'Größe1x'), fc.constantFrom('Duty!$C$5', "'My sheet'!$A$1:$B$2")), { maxLength: 3 })
  .map((entries) => new Map(entries))

const binding = fc.constantFrom('Duty!$C$5:$D$5', "'My sheet'!$A$1:$B$2", "'It''s'!B3", 'load', '#REF!', 'Drum!#REF!', 'no reference at all')

/** Of kinds with options and without, bound in any order to what is there and what is not. */
const figure: fc.Arbitrary<Figure> = fc
  .constantFrom(...figureKinds)
  .chain((kind) => {
    const { parts, options } = figureKind(kind)
    return fc.record(
      {
        kind: fc.constant(kind),
        title: fc.string({ unit: 'binary', maxLength: 8 }),
        sheet: sheetName,
        options: fc.constantFrom({}, ...Object.entries(options).map(([name, { accepted }]) => ({ [name]: accepted.at(-1) ?? '' }))),
        bindings: fc.uniqueArray(fc.tuple(fc.constantFrom(...Object.keys(parts)), binding), { maxLength: 4, selector: ([name]) => name }).map((list) => Object.fromEntries(list)),
      },
      { requiredKeys: ['kind', 'title', 'options', 'bindings'] },
    )
  })
  .map(normalFigure)

const figures = fc.array(figure, { maxLength: 3 })

const report: fc.Arbitrary<ReportSettings> = fc.record({
  preparedBy: fc.string({ unit: 'binary', maxLength: 8 }), checkedBy: fc.string({ maxLength: 8 }), paper: fc.constantFrom(...PAPERS),
})

const tolerance: fc.Arbitrary<Tolerance> = fc.oneof(
  fc.record({ kind: fc.constant('share' as const), share: fc.double({ min: 0, max: 2, noNaN: true }) }),
  fc.record({ kind: fc.constant('size' as const), size: fc.double({ min: 0, max: 1e6, noNaN: true }), restatedFrom: fc.double({ min: 0, max: 9, noNaN: true }) }, { requiredKeys: ['kind', 'size'] }),
)

const tolerances = (sheet: fc.Arbitrary<string>): fc.Arbitrary<GivenTolerance[]> => fc.array(fc.record({ place: fc.record({ sheet, row, column }), tolerance }), { maxLength: 4 })

const workbookWithoutTolerances: fc.Arbitrary<Workbook> = fc.record(
  {
    title: fc.string({ maxLength: 8 }),
    purpose: fc.string({ unit: 'binary', maxLength: 8 }),
    sheets: fc.uniqueArray(sheet, { minLength: 1, maxLength: 3, selector: ({ name }) => name.toLowerCase() }),
    names,
    figures,
    report,
  },
  { requiredKeys: ['title', 'purpose', 'sheets', 'names', 'figures'] },
)

export const workbook: fc.Arbitrary<Workbook> = workbookWithoutTolerances.chain((start) =>
  tolerances(fc.constantFrom(...start.sheets.map(({ name }) => name))).map((given) => fitting(start, [{ kind: 'tolerances', tolerances: given }]).reduce((current, one) => applyEdit(current, one).workbook, start)))

const axis = fc.constantFrom('rows' as const, 'columns' as const)
const line = fc.oneof({ weight: 9, arbitrary: fc.nat(7) }, { weight: 1, arbitrary: fc.constantFrom(1_499, 16_383, 1_048_575) })
const lineCount = fc.oneof({ weight: 9, arbitrary: fc.integer({ min: 1, max: 4 }) }, { weight: 1, arbitrary: fc.constantFrom(0, 2_000, 16_000) })

/** An edit that may or may not fit the workbook it meets. */
export const edit: fc.Arbitrary<Edit> = fc.oneof(
  { weight: 6, arbitrary: fc.record({ kind: fc.constant('cells' as const), sheet: sheetName, cells: changes }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('insertLines' as const), sheet: sheetName, axis, at: line, count: lineCount }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('deleteLines' as const), sheet: sheetName, axis, at: line, count: lineCount }) },
  { weight: 2, arbitrary: fc.record({ kind: fc.constant('moveLines' as const), sheet: sheetName, axis, at: line, count: lineCount, to: line }) },
  fc.record({ kind: fc.constant('columnWidths' as const), sheet: sheetName, columns }),
  fc.record({ kind: fc.constant('frozen' as const), sheet: sheetName, frozen }),
  fc.record({ kind: fc.constant('addSheet' as const), at: fc.nat(3), sheet }),
  fc.record({ kind: fc.constant('removeSheet' as const), sheet: sheetName }),
  fc.record({ kind: fc.constant('moveSheet' as const), sheet: sheetName, to: fc.nat(3) }),
  fc.record({ kind: fc.constant('renameSheet' as const), sheet: sheetName, name: sheetName }),
  fc.record({ kind: fc.constant('title' as const), title: fc.string({ maxLength: 4 }) }),
  fc.record({ kind: fc.constant('purpose' as const), purpose: fc.string({ maxLength: 4 }) }),
  fc.record({ kind: fc.constant('figures' as const), figures }),
  fc.record({ kind: fc.constant('report' as const), report: fc.option(report) }),
  fc.record({ kind: fc.constant('tolerances' as const), tolerances: tolerances(sheetName) }),
  fc.record({ kind: fc.constant('name' as const), name: fc.constantFrom('load', 'K.value', 'Load'), refersTo: fc.option(fc.constantFrom('Duty!$C$5', 'Drum!$A$1')) }),
)

/** The edits of a list that fit, one after another, from that workbook on. */
export function fitting(start: Workbook, edits: readonly Edit[]): Edit[] {
  let current = start
  return edits.filter((one) => {
    try {
      current = applyEdit(current, one).workbook
      return true
    } catch (error) {
      if (error instanceof WorkbookProblem) return false
      throw error
    }
  })
}

