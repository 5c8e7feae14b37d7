import { describe, expect, it } from 'vitest'
import { formatNumber, pointParts } from '../../../src/workbook/number-format.ts'

describe('a number as a cell shows it', () => {
  it.each([
    [0, '0'], [-0, '0'], [85, '85'], [-3.5, '-3.5'], [1 / 3, '0.33333'], [2 / 3, '0.66667'], [0.1 + 0.2, '0.3'], [1234.5678, '1234.6'],
    [123456.7, '123457'], [999_999_999.4, '999999999'], [0.00001, '0.00001'], [0.0000123456, '0.000012346'],
  ])('%d is %s: five significant digits, all whole ones, no zeros at the end', (value, text) => {
    expect(formatNumber(value)).toBe(text)
  })

  it.each([[1e9, '1e9'], [1.23456e12, '1.2346e12'], [9.9e-6, '9.9e-6'], [-1e-7, '-1e-7'], [999_999_999.9, '1e9']])('%d is %s: an exponent from 1e9 on and below 1e-5', (value, text) => {
    expect(formatNumber(value)).toBe(text)
  })

  it.each([[85, 4, '85'], [1 / 3, 3, '0.333'], [1234.5, 3, '1230'], [Math.PI, 15, '3.14159265358979'], [0.1, 15, '0.1']])('%d in %i digits is %s', (value, digits, text) => {
    expect(formatNumber(value, { digits })).toBe(text)
  })

  it.each([[85, 2, '85.00'], [0, 1, '0.0'], [-0.04, 1, '0.0'], [2.5e9, 2, '2.5e9'], [1.25, 0, '1'], [1e-9, 3, '0.000']])('%d in %i decimals is %s', (value, decimals, text) => {
    expect(formatNumber(value, { decimals, digits: 3 })).toBe(text)
  })

  it('tells how far to either side of the decimal point it reaches', () => {
    expect(pointParts('-12.345')).toEqual({ before: 3, after: 4 })
    expect(pointParts('85')).toEqual({ before: 2, after: 0 })
    expect(pointParts('1e9')).toEqual({ before: 1, after: 2 })
  })
})
