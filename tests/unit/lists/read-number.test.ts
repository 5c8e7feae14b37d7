import { describe, expect, it } from 'vitest'
import { commaIn, readNumber } from '../../../src/exchange/lists/read-number.ts'
import { headingParts, unitOfTrade } from '../../../src/exchange/lists/source-units.ts'

const value = (text: string, comma: 'decimal' | 'thousands' | 'unknown' = 'unknown') => {
  const read = readNumber(text, comma)
  return 'why' in read ? read.why : [read.value, read.unit?.code, read.mark !== undefined]
}

describe('numbers as lists have them', () => {
  it.each([
    ['24', [24, undefined, false]], ['-40.5', [-40.5, undefined, false]], ['−40', [-40, undefined, false]], ['1e3', [1000, undefined, false]],
    ['24"', [24, 'in', false]], ['600 mm', [600, 'mm', false]], ['-10 °C', [-10, '°C', false]], ['12 lbs', [12, 'lb', false]],
    ['1 1/2', [1.5, undefined, true]], ['1-1/2"', [1.5, 'in', true]], ['3/4', [0.75, undefined, true]], ['2½ in', [2.5, 'in', true]],
    ['12 ft 6 in', [150, 'in', true]], ["6'-3\"", [75, 'in', true]],
    ['2,5', [2.5, undefined, false]], ['1.234,5', [1234.5, undefined, false]], ['1,234.5', [1234.5, undefined, false]], ['1 250', [1250, undefined, false]],
    ['1,234', [1234, undefined, true]], ['0,125', [0.125, undefined, false]],
  ])('%s', (text, expected) => expect(value(text)).toEqual(expected))

  it('take a comma for the decimal mark where the rest of the column does', () => {
    expect(commaIn(['2,5', '1,234'], false)).toBe('decimal')
    expect(value('1,234', 'decimal')).toEqual([1.234, undefined, false])
    expect(commaIn(['12,345.6'], false)).toBe('thousands')
  })
  it.each(['abc', 'see note', '24 foo', '1/0', '12..5', '', '1,2,3'])('refuse “%s” in words', (text) => expect(typeof value(text)).toBe('string'))
})

describe('units of headings', () => {
  it.each([
    ['Inside diameter (in)', 'Inside diameter', 'in'], ['ID [mm]', 'ID', 'mm'], ['Length, ft', 'Length', 'ft'], ['Temp °F', 'Temp', '°F'],
    ['Volume (cu. ft)', 'Volume', 'ft3'], ['Dia. in inches', 'Dia.', 'in'], ['Max fill %', 'Max fill', '%'], ['Design pressure psig', 'Design pressure', 'psig'], ['Length_mm', 'Length', 'mm'],
  ])('%s', (heading, words, unit) => {
    const parts = headingParts(heading)
    expect([parts.words, parts.unit?.code]).toEqual([words, unit])
  })
  it('are none where the last word only looks like one', () => {
    expect(headingParts('Part (tag)')).toMatchObject({ words: 'Part', aside: 'tag', unit: undefined })
    expect(headingParts('Room C').unit).toBeUndefined()
    expect(unitOfTrade('furlong')).toBeUndefined()
  })
})
