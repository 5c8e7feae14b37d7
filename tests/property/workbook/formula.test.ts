import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { areaOf, columnLetters, columnNumber, parseReference, printReference, type Corner, type Reference } from '../../../src/workbook/address.ts'
import { calls } from '../../../src/workbook/formula/calls.ts'
import { referencesIn, renameSheetInFormula, rewriteReferences, shiftReferences } from '../../../src/workbook/formula/references.ts'
import { mayReach } from '../../../src/workbook/formula/line-references.ts'
import { isReferenceKind, referenceExtents, tokenise } from '../../../src/workbook/formula/tokenise.ts'
import { sheetNameProblem } from '../../../src/workbook/sheet-name.ts'

const sheetName = fc
  .oneof(fc.constantFrom('Duty', 'My sheet', "It's", 'A1', 'R1C1', '2nd', 'TRUE', 'Größe', 'x!y'), fc.string({ minLength: 1, maxLength: 8 }))
  .filter((name) => sheetNameProblem(name) === undefined)

const corner = fc.record({ row: fc.nat(1_048_575), column: fc.nat(16_383), rowAbsolute: fc.boolean(), columnAbsolute: fc.boolean() })
const wholeColumn: fc.Arbitrary<Corner> = corner.map((one) => ({ ...one, row: null, rowAbsolute: false }))
const wholeRow: fc.Arbitrary<Corner> = corner.map((one) => ({ ...one, column: null, columnAbsolute: false }))
const reference: fc.Arbitrary<Reference> = fc.record({ sheet: fc.option(sheetName), ends: fc.oneof(fc.tuple(corner, fc.option(corner)), fc.tuple(wholeColumn, wholeColumn), fc.tuple(wholeRow, wholeRow)) }).map(({ sheet, ends: [from, to] }) => ({ sheet, from, to }))

const piece = fc.oneof(
  reference.map(printReference),
  fc.constantFrom('SUM(', 'SAT.PRESSURE(', ')', '(', '{', '}', ',', ';', '+', '<>', '"a,""b""("', '"', "'", '1E-5', '.5', 'TRUE', '#REF!', 'load', ' ', '%', '$', '!', ':', 'A1.5', 'LOG10(', '\u00a0'),
  fc.string({ unit: 'binary', maxLength: 4 }),
)
const formula = fc.array(piece, { maxLength: 12 }).map((pieces) => '=' + pieces.join(''))

describe('formulas', () => {
  it('the tokens, joined, are the text, one after another without a gap', () => {
    fc.assert(
      fc.property(fc.oneof(formula, fc.string({ unit: 'binary' })), (text) => {
        const tokens = tokenise(text)
        expect(tokens.map((token) => token.text).join('')).toBe(text)
        let end = 0
        for (const token of tokens) {
          expect(token.start).toBe(end)
          expect(token.end).toBeGreaterThan(end)
          end = token.end
        }
      }),
      { numRuns: 2000 },
    )
  })

  it('references are found in one pass just where the tokens have them', () => {
    fc.assert(
      fc.property(fc.oneof(formula, fc.string({ unit: 'binary' })), (text) => {
        expect(referenceExtents(text)).toEqual(tokenise(text).filter(({ kind }) => isReferenceKind(kind)).map(({ start, end }) => ({ start, end })))
      }),
      { numRuns: 3000 },
    )
  })

  it('a formula that is passed over has no reference to the lines in question', () => {
    fc.assert(
      fc.property(formula, fc.constantFrom('rows', 'columns'), fc.oneof(fc.nat(20_000), fc.nat(1_100_000)), (text, axis, first) => {
        const lines = referencesIn(tokenise(text)).flatMap(({ reference: { from, to } }) => [from, to ?? from].map(({ row, column }) => (axis === 'rows' ? row : column) ?? -1))
        if (!mayReach(text, axis, first)) expect(Math.max(-1, ...lines)).toBeLessThan(first)
      }),
      { numRuns: 3000 },
    )
  })

  it('every printed reference is read back the same, alone and in a formula', () => {
    fc.assert(
      fc.property(reference, (one) => {
        expect(parseReference(printReference(one))).toEqual(one)
        expect(referencesIn(tokenise(`=1+${printReference(one)}*2`)).map((found) => found.reference)).toEqual([one])
      }),
      { numRuns: 1000 },
    )
  })

  it('column letters and numbers are inverse', () => {
    fc.assert(
      fc.property(fc.nat(16_383), (column) => {
        expect(columnNumber(columnLetters(column))).toBe(column)
      }),
    )
  })

  it('arguments and the commas between them fill each closed call', () => {
    fc.assert(
      fc.property(formula, (text) => {
        for (const call of calls(tokenise(text))) {
          expect(text.slice(call.start, call.start + call.name.length)).toBe(call.name)
          const body = text.slice(call.start + call.name.length + 1, call.closed ? call.end - 1 : call.end)
          const parts = call.arguments.map(({ start, end }) => text.slice(start, end))
          if (parts.length > 0) expect(body.replaceAll(';', ',')).toBe(parts.join(',').replaceAll(';', ','))
          else expect(body.trim()).toBe('')
        }
      }),
      { numRuns: 1000 },
    )
  })

  it('rewriting nothing leaves the formula as typed', () => {
    fc.assert(
      fc.property(formula, (text) => {
        expect(rewriteReferences(text, (one) => one)).toBe(text)
      }),
    )
  })

  it('a shift moves relative parts only, and the shift back undoes it', () => {
    const inner = corner.map((one) => ({ ...one, row: (one.row % 1000) + 1000, column: (one.column % 1000) + 1000 }))
    fc.assert(
      fc.property(inner, fc.integer({ min: -1000, max: 1000 }), fc.integer({ min: -1000, max: 1000 }), (from, rows, columns) => {
        const text = `=2*${printReference({ sheet: 'Duty', from, to: null })}`
        const shifted = shiftReferences(text, rows, columns)
        const area = areaOf(referencesIn(tokenise(shifted))[0]?.reference ?? { sheet: null, from, to: null })
        expect(area.top).toBe(from.rowAbsolute ? from.row : from.row + rows)
        expect(area.left).toBe(from.columnAbsolute ? from.column : from.column + columns)
        expect(shiftReferences(shifted, -rows, -columns)).toBe(text)
      }),
    )
  })

  it('a sheet renamed there and back gives the same formula', () => {
    fc.assert(
      fc.property(fc.array(reference, { minLength: 1, maxLength: 4 }), sheetName, (references, to) => {
        const before = '=' + references.map((one) => printReference({ ...one, sheet: one.sheet === null ? null : 'Drum' })).join('+')
        const renamed = renameSheetInFormula(before, 'DRUM', to)
        expect(referencesIn(tokenise(renamed)).map((found) => found.reference.sheet)).toEqual(references.map(({ sheet }) => (sheet === null ? null : to)))
        expect(renameSheetInFormula(renamed, to, 'Drum')).toBe(before)
      }),
    )
  })
})
