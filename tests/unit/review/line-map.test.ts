import { describe, expect, it } from 'vitest'
import { lineMap } from '../../../src/review/line-map.ts'
import { slid, slidesOf } from '../../../src/review/row-slides.ts'

/** A template of ten lines: two came in before its fourth, and its seventh and eighth are gone. */
const runs = [{ old: 0, now: 0, count: 3 }, { old: 3, now: 5, count: 3 }, { old: 8, now: 8, count: 2 }]
const map = lineMap({ runs }, 10)

describe('lines of a template and of a workbook', () => {
  it('are found in one for the other', () => {
    expect([0, 2, 3, 4, 5, 7, 8, 9, 10].map((line) => map.toTemplate(line))).toEqual([0, 2, undefined, undefined, 3, 5, 8, 9, undefined])
    expect([[0, 0], [2, 3], [3, 9], [5, 6], [7, 8]].map(([first = 0, last = 0]) => map.toWorkbook(first, last))).toEqual([[0, 0], [2, 5], [5, 9], [7, 7], [8, 8]])
    expect(map.toWorkbook(6, 7)).toBeNull()
    expect(map.toWorkbook(12, 14)).toEqual([12, 14])
  })

  it('have those that both have nearest on either side', () => {
    expect([3, 4, 5, 12].map((line) => [map.nearest(line, -1), map.nearest(line, 1)])).toEqual([[2, 5], [2, 5], [5, 5], [9, undefined]])
  })
})

it('rows that came among others alike may have come before any of them', () => {
  const [only] = slidesOf([{ old: 0, now: 0, count: 4 }, { old: 4, now: 6, count: 6 }], (old, now) => old >= 2 && old <= 6 && now >= 2 && now <= 8)
  expect(only).toEqual({ run: 0, up: 2, down: 3 })
  expect(only && slid([{ old: 0, now: 0, count: 4 }, { old: 4, now: 6, count: 6 }], only, 2)).toEqual([{ old: 0, now: 0, count: 6 }, { old: 6, now: 8, count: 4 }])
})
