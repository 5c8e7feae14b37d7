import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { contentOf, entryOf, literalContent, meantText, textContent } from '../../../src/workbook/entry.ts'
import { typedText } from './arbitraries.ts'

describe('the entry line', () => {
  it('committed unchanged gives the same content', () => {
    fc.assert(
      fc.property(typedText, (typed) => {
        const content = contentOf(typed)
        expect(contentOf(entryOf(content))).toBe(content)
      }),
      { numRuns: 2000 },
    )
  })

  it('loses nothing typed: text and formulas stay to the letter, a number keeps its value', () => {
    fc.assert(
      fc.property(typedText, (typed) => {
        const content = contentOf(typed)
        if (typeof content === 'string') expect(content).toBe(typed)
        else if (typeof content === 'number') expect(content).toBe(Number(typed.trim().replace('\u2212', '-')) + 0)
        else if (typeof content === 'boolean') expect(typed.trim().toUpperCase()).toBe(entryOf(content))
        else expect(typed.trim()).toBe('')
      }),
      { numRuns: 2000 },
    )
  })

  it('reads back every number it shows', () => {
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(contentOf(entryOf(value))).toBe(value + 0)
      }),
    )
  })

  it('any text can be meant, and is what a later reader takes', () => {
    fc.assert(
      fc.property(typedText, (text) => {
        fc.pre(text !== '')
        const content = literalContent(text)
        expect(meantText(content ?? undefined)).toBe(text)
        expect(contentOf(entryOf(content))).toBe(content)
        expect(contentOf(textContent(text))).toBe(textContent(text))
      }),
      { numRuns: 1000 },
    )
  })
})
