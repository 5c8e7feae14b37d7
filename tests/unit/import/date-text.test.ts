import { describe, expect, it } from 'vitest'
import { dateKind, dateText } from '../../../src/exchange/import/date-text.ts'

describe('day numbers of files as ISO 8601 text', () => {
  // ECMA-376, part 1, 18.17.4.1 and 18.17.4.3 (as printed again in L.2.16.9): the base dates, and the examples for the 1900 and the 1904 system.
  it.each([
    [38749, '2006-02-01'],
    [3687, '1910-02-03'],
    [2958465, '9999-12-31'],
  ])('%d of the 1900 system is %s (ECMA-376, 18.17.4.1)', (serial, text) => {
    expect(dateText(serial, 'date', 'xlsx 1900')).toBe(text)
    expect(dateText(serial, 'date', 'ods')).toBe(text)
  })

  it('day and time of the 1900 system (ECMA-376, 18.17.4.3)', () => {
    expect(dateText(3687.4207639, 'date and time', 'xlsx 1900')).toBe('1910-02-03T10:05:54')
    expect(dateText(2958465.9999884, 'date and time', 'xlsx 1900')).toBe('9999-12-31T23:59:59')
  })

  it('1.5 is noon of 1900-01-01 where 1900-01-01 is 1, as in the backward compatible system (ECMA-376, 18.17.4.1)', () => {
    expect(dateText(1.5, 'date and time', 'xlsx 1900')).toBe('1900-01-01T12:00:00')
  })

  it('of the 1904 system (ECMA-376, 18.17.4.1 and 18.17.4.3)', () => {
    expect(dateText(0, 'date', 'xlsx 1904')).toBe('1904-01-01')
    expect(dateText(0.5, 'date and time', 'xlsx 1904')).toBe('1904-01-01T12:00:00')
    expect(dateText(2225.4207639, 'date and time', 'xlsx 1904')).toBe('1910-02-03T10:05:54')
    expect(dateText(2957003.9999884, 'date and time', 'xlsx 1904')).toBe('9999-12-31T23:59:59')
  })

  it('in the 1900 system of xlsx day 60 is the 29 February that 1900 had not; before it days are one number higher than in ods', () => {
    expect([59, 60, 61].map((day) => dateText(day, 'date', 'xlsx 1900'))).toEqual(['1900-02-28', '1900-02-29', '1900-03-01'])
    expect([59, 60, 61].map((day) => dateText(day, 'date', 'ods'))).toEqual(['1900-02-27', '1900-02-28', '1900-03-01'])
    // OpenDocument counts from 1899-12-30 and has days before it.
    expect([0, 1, 2, -2338].map((day) => dateText(day, 'date', 'ods'))).toEqual(['1899-12-30', '1899-12-31', '1900-01-01', '1893-08-05'])
  })

  it('has no text for what is no day of the system', () => {
    for (const day of [0, -1, 2958466, NaN, Infinity, 1e300]) expect(dateText(day, 'date', 'xlsx 1900')).toBeUndefined()
    for (const day of [-1, 2957004]) expect(dateText(day, 'date', 'xlsx 1904')).toBeUndefined()
  })

  it('times of the day and durations', () => {
    expect(dateText(0.75, 'time', 'xlsx 1900')).toBe('18:00:00')
    expect(dateText(0, 'time', 'xlsx 1900')).toBe('00:00:00')
    expect(dateText(1.2604166666666667, 'duration', 'xlsx 1900')).toBe('PT30H15M')
    expect(dateText(0, 'duration', 'ods')).toBe('PT0S')
    expect(dateText(-0.5, 'duration', 'ods')).toBe('-PT12H')
    // Half a second before midnight is the next day.
    expect(dateText(38749.9999999, 'date and time', 'xlsx 1900')).toBe('2006-02-02T00:00:00')
  })

  it.each([
    ['yyyy-mm-dd', 'date'], ['d/m/yy', 'date'], ['mmm yyyy', 'date'], ['mmmm', 'date'], ['[$-409]d mmm yyyy;@', 'date'], ['h:mm AM/PM', 'time'], ['h:mm:ss', 'time'], ['mm:ss.0', 'time'],
    ['yyyy-mm-dd hh:mm', 'date and time'], ['d.m.yyyy h:mm:ss', 'date and time'], ['[h]:mm', 'duration'], ['[mm]:ss', 'duration'],
    ['General', undefined], ['0.00', undefined], ['#,##0', undefined], ['0.0%', undefined], ['0.00E+00', undefined], ['0.0 "days"', undefined], ['0 \\d', undefined], ['@', undefined],
    ['[Red]0.0;[Blue]-0.0', undefined], ['_-* #,##0.00_-', undefined], ['# ?/?', undefined], [undefined, undefined],
  ] as const)('the format %s shows %s', (format, kind) => {
    expect(dateKind(format)).toBe(kind)
  })
})
