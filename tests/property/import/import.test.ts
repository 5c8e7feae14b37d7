import fc from 'fast-check'
import { DetailedCellError, HyperFormula } from 'hyperformula'
import { utils, write, type CellObject } from 'xlsx'
import { describe, expect, it } from 'vitest'
import { Graph } from '../../../src/calc/graph.ts'
import { isCellError } from '../../../src/calc/values.ts'
import { dateText } from '../../../src/exchange/import/date-text.ts'
import { translateFormula } from '../../../src/exchange/import/foreign-formula.ts'
import { importedWorkbook } from '../../../src/exchange/import/import-edits.ts'
import { importSheets } from '../../../src/exchange/import/import-sheets.ts'
import { acceptableName, acceptableSheetName } from '../../../src/exchange/import/imported-names.ts'
import { numberLook } from '../../../src/exchange/import/number-look.ts'
import type { FileContents, ReadCell } from '../../../src/exchange/reading/contents.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import { definedNameProblem } from '../../../src/workbook/defined-name.ts'
import { meantText } from '../../../src/workbook/entry.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { sheetNameProblem } from '../../../src/workbook/sheet-name.ts'

// The other library writes neither control characters nor lone halves of characters in a way that all formats bring back.
const text = fc.oneof(fc.constantFrom('007', '1,5', '=1+1', "'quoted", 'TRUE', '31 °F', ' a', '-', '5%', '"'), fc.string({ minLength: 1, maxLength: 12 })).filter((one) => one.trim() === one && /^[\x20-\x7e°]+$/.test(one) && !one.includes('_x'))
const plain = fc.oneof(fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e12, max: 1e12 }).map((value) => value + 0), fc.boolean(), text)

/** Formulas in the spelling of a file, and in that of the plain engine. */
interface Both {
  readonly file: string
  readonly engine: string
}

const both = (file: string, engine = file): Both => ({ file, engine })
const number = fc.oneof(
  fc.constantFrom(both('1E-5', '0.00001'), both('2.50', '2.5'), both('.5', '0.5'), both('1E+3', '1000'), both('7'), both('12%')),
  fc.nat(1000).map((value) => both(String(value))),
)
const leaf = fc.oneof(number, fc.constantFrom(both('A1'), both('$A$2'), both('a3', 'A3'), both("'Duty: a'!A1", 'Other!A1'), both('load', 'A2'), both('TRUE', 'TRUE()'), both('"x"'), both('MAX($A$1:A3)'), both('SUM(A:A)')))
const { tree: formula } = fc.letrec<{ tree: Both }>((tie) => ({
  tree: fc.oneof(
    { maxDepth: 4 }, leaf,
    fc.tuple(tie('tree'), fc.constantFrom('+', '-', '*', '/', '^', '&', '<', '>=', '='), tie('tree')).map(([one, operator, other]) => both(`(${one.file}${operator}${other.file})`, `(${one.engine}${operator}${other.engine})`)),
    fc.tuple(fc.constantFrom('ABS', 'SQRT', 'EXP', 'LN', 'SIN', 'ISNUMBER', 'LEN', 'INT'), tie('tree')).map(([name, one]) => both(`${name}(${one.file})`, `${name}(${one.engine})`)),
    fc.tuple(fc.constantFrom('IF', '_xlfn.IFS', '_xlfn.CONCAT', 'sum', '_xlfn.XOR'), fc.array(tie('tree'), { minLength: 2, maxLength: 3 })).map(([name, parts]) => {
      const even = name === '_xlfn.IFS' ? parts.slice(0, 2) : parts
      const called = name === '_xlfn.CONCAT' ? 'CONCATENATE' : name.replace('_xlfn.', '').toUpperCase()
      return both(`${name}(${even.map((one) => one.file).join(',')})`, `${called}(${even.map((one) => one.engine).join(',')})`)
    }),
  ),
}))

const fileOf = (rows: readonly (readonly (ReadCell | undefined)[])[], rest: Partial<FileContents> = {}): FileContents => ({
  kind: 'xlsx', sheets: [{ name: 'Main', hidden: false, widthsPx: [], rows }], names: new Map(), remarks: [], ...rest,
})

describe('import', () => {
  it.each(['xlsx', 'ods'] as const)('what another library wrote as values into %s is what comes in', async (bookType) => {
    await fc.assert(
      fc.asyncProperty(fc.array(fc.array(fc.option(plain, { nil: null }), { minLength: 1, maxLength: 4 }), { minLength: 1, maxLength: 4 }), async (values) => {
        const book = utils.book_new(utils.aoa_to_sheet(values.map((row) => row.map((value): CellObject | null => (value === null ? null : typeof value === 'string' ? { t: 's', v: value } : { t: typeof value === 'number' ? 'n' : 'b', v: value })))), 'Main')
        const contents = await readFileContents(new Uint8Array(write(book, { type: 'array', bookType }) as ArrayBuffer), `x.${bookType}`)
        if ('problem' in contents) throw new Error(contents.problem)
        const rows = importSheets(contents).sheets[0]?.sheet.rows ?? []
        for (const [row, cells] of values.entries()) {
          for (const [column, value] of cells.entries()) {
            const content = rows[row]?.[column]?.content ?? null
            const meant = meantText(content) ?? content
            // A decimal fraction of 15 digits is what files keep of a number.
            if (typeof value === 'number' && typeof meant === 'number') expect(Math.abs(meant - value)).toBeLessThanOrEqual(1e-14 * Math.abs(value))
            else expect(meant).toEqual(value)
          }
        }
      }),
      { numRuns: 60 },
    )
  })

  it('formulas of standard functions come to the values that a plain engine gives', () => {
    const engine = HyperFormula.buildFromSheets({ Main: [[3], [4], [-5]], Other: [[2]] }, { licenseKey: 'gpl-v3', useArrayArithmetic: true, precisionRounding: 14, dateFormats: [], timeFormats: [] })
    fc.assert(
      fc.property(fc.array(formula, { minLength: 1, maxLength: 12 }), (formulas) => {
        const contents = fileOf([[{ value: 3 }], [{ value: 4 }], [{ value: -5 }]], {
          sheets: [
            { name: 'Main', hidden: false, widthsPx: [], rows: [3, 4, -5].map((value, row) => [{ value }, ...(row === 0 ? formulas.map(({ file }): ReadCell => ({ value: null, formula: file })) : [])]) },
            { name: 'Duty: a', hidden: false, widthsPx: [], rows: [[{ value: 2 }]] },
          ],
          names: new Map([['Load', 'Main!$A$2']]),
        })
        const imported = importSheets(contents)
        const graph = new Graph(importedWorkbook('x', imported))
        for (const [index, { file, engine: spelled }] of formulas.entries()) {
          const kept = imported.sheets[0]?.sheet.rows[0]?.[index + 1]?.content
          expect(typeof kept === 'string' && kept.startsWith('='), `${file}: ${String(kept)}`).toBe(true)
          const [value, expected] = [graph.value('Main', 0, index + 1), engine.calculateFormula(`=${spelled}`, engine.getSheetId('Main') ?? 0)]
          if (isCellError(value)) expect(expected instanceof DetailedCellError ? expected.value : expected, file).toBe(value.error)
          else if (typeof value === 'number' && Number.isFinite(expected)) expect(Math.abs(value - Number(expected)), file).toBeLessThanOrEqual(1e-12 * Math.abs(value))
          else if (typeof value !== 'number') expect(value, file).toEqual(expected)
        }
      }),
      { numRuns: 60 },
    )
  })

  it('whatever a file holds, what comes of it is a workbook that is read back the same, and nothing throws', () => {
    const piece = fc.constantFrom('SUM(', ')', '(', '{', '}', ',', ';', '+', '"a"', '"', "'", 'A1', 'A1:B2', 'Main!A1', "'x y'!A1", '[1]S!A1', 'T[c]', '@', '#', '#REF!', 'cmd|', 'LET(', '_xlfn.', 'load', 'δ!A1', ' ', ':', '1E5', '5%', '\u0000', '💧')
    const cell: fc.Arbitrary<ReadCell> = fc.record({
      value: fc.oneof(fc.double(), fc.string(), fc.boolean(), fc.constant(null), fc.constantFrom({ error: '#N/A' }, { error: '#DIV/0!' })),
      formula: fc.oneof(fc.array(piece, { maxLength: 8 }).map((pieces) => pieces.join('')), fc.string()),
      format: fc.oneof(fc.constantFrom('0.00', 'yyyy-mm-dd', '0%', '[h]:mm', '"kW" 0', '0;0;;@'), fc.string()),
      note: fc.string(), array: fc.constantFrom('A1:B2', 'A1', 'x'),
    }, { requiredKeys: ['value'] })
    const sheet = fc.record({ name: fc.oneof(fc.constantFrom('Main', 'main', '', '__proto__', "'", 'x y'), fc.string({ maxLength: 40 })), hidden: fc.constant(false), widthsPx: fc.array(fc.double({ noNaN: true, min: -10, max: 1e6 }), { maxLength: 3 }), rows: fc.array(fc.option(fc.array(fc.option(cell, { nil: undefined }), { maxLength: 4 }), { nil: undefined }), { maxLength: 5 }) })
    const names = fc.array(fc.tuple(fc.oneof(fc.constantFrom('load', 'Load', 'c', 'A1', '__proto__', 'δp'), fc.string({ minLength: 1 })), fc.oneof(fc.constantFrom('Main!$A$1', "'x y'!A1:B2", '9.81', '[1]X!A1'), fc.string())), { maxLength: 4 })
    fc.assert(
      fc.property(fc.array(sheet, { minLength: 1, maxLength: 3 }), names, (sheets, pairs) => {
        const workbook = importedWorkbook('x', importSheets({ kind: 'xlsx', sheets, names: new Map(pairs), remarks: [] }))
        const read = readWorkbook(writeWorkbook(workbook))
        if ('problems' in read) throw new Error(read.problems[0]?.message)
        expect(writeWorkbook(read.workbook)).toBe(writeWorkbook(workbook))
      }),
      { numRuns: 1500 },
    )
  })

  it('names are acceptable, and no two the same', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'binary', maxLength: 40 }), { maxLength: 6 }), (wanted) => {
        const [sheets, names]: [string[], string[]] = [[], []]
        for (const one of wanted) {
          const [sheet, name] = [acceptableSheetName(one, sheets), acceptableName(one, names)]
          expect(sheetNameProblem(sheet, sheets)).toBeUndefined()
          expect(definedNameProblem(name, names)).toBeUndefined()
          expect(names).not.toContain(name)
          sheets.push(sheet)
          names.push(name)
        }
      }),
      { numRuns: 500 },
    )
  })

  it('day numbers go up with the days, day after day, in all systems', () => {
    fc.assert(
      fc.property(fc.integer({ min: 61, max: 2_900_000 }), fc.constantFrom('xlsx 1900', 'xlsx 1904', 'ods'), (day, system) => {
        const [one, next] = [day, day + 1].map((serial) => Date.parse(dateText(serial, 'date', system) ?? ''))
        expect((next ?? NaN) - (one ?? NaN)).toBe(86_400_000)
      }),
    )
  })

  it('no format is too odd', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary' }), fc.string(), (format, written) => {
        const { decimals = 0, digits = 1 } = numberLook(format)
        expect(decimals >= 0 && decimals <= 12 && digits >= 1 && digits <= 15).toBe(true)
        expect(translateFormula(written, { sheets: new Map(), otherSheets: new Set(), names: new Map(), lostNames: new Map() })).toBeDefined()
      }),
      { numRuns: 2000 },
    )
  })
})
