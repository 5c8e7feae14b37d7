import { describe, expect, it } from 'vitest'
import { contentOf, entryOf, literalContent, meantText, textContent } from '../../../src/workbook/entry.ts'

describe('what was typed', () => {
  it.each([
    ['-3.5', -3.5], ['.5', 0.5], ['4.', 4], ['1e-5', 1e-5], ['1E-5', 1e-5], ['+4', 4], ['  85 ', 85], ['\u22123', -3], ['0.5', 0.5], ['-0', 0], ['0', 0],
    ['9007199254740992', 9007199254740992], ['3.14159265358979323846', Math.PI],
  ])('%j is the number %d', (typed, value) => {
    expect(contentOf(typed)).toBe(value)
  })

  it.each(['1,234', '5%', '31 °F', '1/2', '1-2', '12:30', '$5', '1 000', '0x10', '1e', '.', '-', 'e5', 'Infinity', 'NaN', '1e999', '--1'])('%j is text', (typed) => {
    expect(contentOf(typed)).toBe(typed)
  })

  it.each(['007', '00', '-01', '12345678901234567'])('%j stays text, for as a number it would lose digits', (typed) => {
    expect(contentOf(typed)).toBe(typed)
  })

  it.each([['TRUE', true], ['False', false], [' true ', true]])('%j is a truth value', (typed, value) => {
    expect(contentOf(typed)).toBe(value)
  })

  it('formulas and literal text are kept as typed, blanks alone are nothing', () => {
    expect(contentOf('=  a1 + 1.50 ')).toBe('=  a1 + 1.50 ')
    expect(contentOf("'5")).toBe("'5")
    expect(contentOf(' =A1')).toBe(' =A1')
    expect(contentOf(' \t')).toBeNull()
  })
})

describe('text that is meant', () => {
  it('is marked where it would read as something else', () => {
    expect(textContent('5')).toBe("'5")
    expect(textContent('true')).toBe("'true")
    expect(textContent('31 °F')).toBe('31 °F')
    expect(literalContent('=A1')).toBe("'=A1")
    expect(literalContent("'tis")).toBe("''tis")
    expect(literalContent('')).toBeNull()
  })

  it('is shown with its mark in the entry line and without it to the reader', () => {
    expect(entryOf("'5")).toBe("'5")
    expect(meantText("'5")).toBe('5')
    expect(meantText('=A1')).toBeUndefined()
    expect(meantText(5)).toBeUndefined()
  })
})
