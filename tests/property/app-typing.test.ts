import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { accept, completionAt } from '../../src/app/entry-line/completion.ts'
import { cycleReference } from '../../src/app/entry-line/cycling.ts'
import { putReference, referenceFits } from '../../src/app/entry-line/pointing.ts'
import { emptySheet } from '../../src/workbook/document.ts'
import { tokenise } from '../../src/workbook/formula/tokenise.ts'
import { unreadableAt } from '../../src/workbook/formula/unreadable.ts'
import { parseReference } from '../../src/workbook/address.ts'

const workbook = { sheets: ['Duty', 'Vertical drum', "O'Hara"].map(emptySheet), names: new Map([['load', 'Duty!$C$5']]) }

const RUNS = { numRuns: 2000 }

/** Pieces of formulas as people type them, in any order, so that many are broken. */
const piece = fc.constantFrom(
  'C5', '$C$5', 'c$7', 'A1:$B2', "'Vertical drum'!C5", 'Duty!A:C', '$3:4', 'SAT.PRESSURE(', 'sat', 'SUM(', 'lo', 'load', '"31 °F"', '"ps', '"psig"',
  "'Ver", ')', '(', ',', '+', '-', '%', '&', ' ', '\n', '1.5', '1E-5', 'TRUE', '{', '}', ';', 'Du', 'Duty!', '#REF!', '§',
)
const formula = fc.array(piece, { maxLength: 9 }).map((pieces) => `=${pieces.join('')}`)
const typed = formula.chain((text) => fc.record({ text: fc.constant(text), caret: fc.nat(text.length) }))

describe('while a formula is typed', () => {
  it('cycling a reference four times gives back the text', () => {
    fc.assert(fc.property(typed, (start) => {
      let now = start
      for (let time = 0; time < 4; time++) now = cycleReference(now) ?? now
      expect(now.text).toBe(start.text)
    }), RUNS)
  })

  it('cycling changes nothing but $ in the reference at the caret', () => {
    fc.assert(fc.property(typed, (start) => {
      const after = cycleReference(start)
      fc.pre(after !== undefined)
      expect(after.text.replaceAll('$', '')).toBe(start.text.replaceAll('$', ''))
      expect(after.text).not.toBe(start.text)
    }), RUNS)
  })

  it('taking a suggestion changes no text outside of its token', () => {
    fc.assert(fc.property(typed, fc.nat(11), (start, choice) => {
      const completion = completionAt(start, { workbook, unitCell: false, dimension: undefined })
      const suggestion = completion?.suggestions[choice % completion.suggestions.length]
      fc.pre(completion !== undefined && suggestion !== undefined)
      const { extent } = completion
      const { text, caret } = accept(start.text, completion, suggestion)
      expect(text.slice(0, extent.start)).toBe(start.text.slice(0, extent.start))
      expect(text.endsWith(start.text.slice(extent.end))).toBe(true)
      expect(text.slice(extent.start, caret)).toBe(suggestion.insert)
      // Its token is the one that the caret stood in.
      expect(tokenise(start.text).some((token) => token.start <= extent.start && extent.end <= token.end && token.start < start.caret && start.caret <= token.end)).toBe(true)
    }), RUNS)
  })

  it('a reference pointed at is one token that reads back, and points anew where it stood', () => {
    const place = fc.record({ row: fc.nat(200), column: fc.nat(40) })
    fc.assert(fc.property(typed, place, place, fc.constantFrom(null, 'Duty', 'Vertical drum', "O'Hara"), (start, one, other, sheet) => {
      fc.pre(referenceFits(start))
      const area = { top: Math.min(one.row, other.row), bottom: Math.max(one.row, other.row), left: Math.min(one.column, other.column), right: Math.max(one.column, other.column) }
      const first = putReference(start.text, { start: start.caret, end: start.caret }, { sheet, area })
      const written = first.text.slice(first.extent.start, first.extent.end)
      expect(parseReference(written)).toMatchObject({ sheet, from: { row: area.top, column: area.left } })
      const token = tokenise(first.text).find(({ end }) => end === first.caret)
      // After "A1:" it becomes the other end of that range.
      expect(token?.text.endsWith(written)).toBe(true)
      expect(putReference(first.text, first.extent, { sheet, area: { top: 0, left: 0, bottom: 0, right: 0 } }).text.length - start.text.length)
        .toBe(first.text.length - start.text.length - written.length + (sheet === null ? 2 : written.lastIndexOf('!') + 3))
    }), RUNS)
  })

  it('what is wrong is somewhere in the text', () => {
    fc.assert(fc.property(formula, (text) => {
      const problem = unreadableAt(text)
      fc.pre(problem !== undefined)
      expect(problem.start).toBeGreaterThanOrEqual(0)
      expect(problem.end).toBeLessThanOrEqual(text.length)
      expect(problem.words).not.toBe('')
    }), RUNS)
  })
})
