import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { eachCell } from '../../../src/workbook/cells.ts'
import type { Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { entryOf } from '../../../src/workbook/entry.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { findIn, replace, stretchesOf, type FindQuery } from '../../../src/workbook/find.ts'
import { workbook } from './arbitraries.ts'

const query = fc.record({
  text: fc.oneof(fc.constantFrom('A', 'a', '1', 'A1', '=', '.', '(', '$', 'SUM', 'µ', ' '), fc.string({ maxLength: 3 })),
  place: fc.constantFrom('contents' as const, 'notes' as const), whole: fc.boolean(), matchCase: fc.boolean(),
})

const texts = (book: Workbook, place: 'contents' | 'notes'): string[] =>
  book.sheets.flatMap((sheet) => {
    const all: string[] = []
    eachCell(sheet, (cell) => all.push(place === 'notes' ? (cell.note ?? '') : entryOf(cell.content)))
    return all
  })

/** The same said without a pattern; capitals folded one way only where letters have one other form. */
const fits = (text: string, { text: sought, whole, matchCase }: FindQuery): boolean => {
  const [one, other] = matchCase ? [text, sought] : [text.toLowerCase(), sought.toLowerCase()]
  return sought !== '' && (whole ? one === other : one.includes(other))
}

/** All that is found, stretch by stretch. */
const find = (book: Workbook, query: FindQuery) => [...stretchesOf(book, query)].flatMap((stretch) => findIn(stretch, query))

describe('find and replace', () => {
  it('finds each cell whose text has the text, and no other', () => {
    fc.assert(fc.property(workbook, query, (book, asked) => {
      // Surrogate halves and letters with three forms are compared by the pattern's own rules.
      fc.pre(/^[\x20-\x7e]*$/.test(asked.text) && texts(book, asked.place).every((text) => /^[\x20-\x7e]*$/.test(text) || asked.matchCase))
      expect(find(book, asked)).toHaveLength(texts(book, asked.place).filter((text) => text !== '' && fits(text, asked)).length)
    }))
  })

  it('undone gives back the document', () => {
    fc.assert(fc.property(workbook, query, fc.string({ maxLength: 4 }), (book, asked, replacement) => {
      const done = applyEdits(book, replace(book, asked, replacement, find(book, asked)))
      expect(writeWorkbook(applyEdits(done.workbook, done.inverse).workbook)).toBe(writeWorkbook(book))
    }))
  })

  it('of a text by itself changes nothing', () => {
    fc.assert(fc.property(workbook, query, (book, asked) => {
      const same = { ...asked, matchCase: true }
      expect(applyEdits(book, replace(book, same, asked.text, find(book, same))).workbook).toBe(book)
    }))
  })

  it('leaves none to be found where the replacement has nothing of the text', () => {
    fc.assert(fc.property(workbook, (book) => {
      const asked = { text: 'A', place: 'contents' as const, whole: false, matchCase: false }
      const after = applyEdits(book, replace(book, asked, '7', find(book, asked))).workbook
      expect(find(after, asked).filter(({ text }) => /^[\x20-\x7e]*$/.test(text))).toEqual([])
    }))
  })
})
