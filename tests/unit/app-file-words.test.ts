import { describe, expect, it } from 'vitest'
import { fileWords } from '../../src/app/top/file-words.ts'

const NOON = new Date(2026, 4, 20, 12, 0)
const at = (hour: number, day = 20, year = 2026) => new Date(year, 4, day, hour, 5).getTime()

describe('how a workbook stands to its file, in words', () => {
  it('says that there is none, whatever has changed', () => {
    expect(fileWords({ inFile: false, changed: false, savedAt: null }, NOON)).toBe('Not in a file yet')
    expect(fileWords({ inFile: false, changed: true, savedAt: null }, NOON)).toBe('Not in a file yet')
  })

  it('says whether it is as its file was when opened', () => {
    expect(fileWords({ inFile: true, changed: false, savedAt: null }, NOON)).toBe('As in its file')
    expect(fileWords({ inFile: true, changed: true, savedAt: null }, NOON)).toBe('Changed since its file was opened')
  })

  it('says when it was saved, with the day unless it is today, and whether it has changed since', () => {
    expect(fileWords({ inFile: true, changed: false, savedAt: at(9) }, NOON)).toMatch(/^Saved to a file at \D*0?9\D05/)
    expect(fileWords({ inFile: true, changed: true, savedAt: at(9) }, NOON)).toMatch(/^Changed since it was saved to a file at \D*0?9\D05/)
    expect(fileWords({ inFile: true, changed: false, savedAt: at(9, 19) }, NOON)).toMatch(/^Saved to a file on .*19.* at /)
    expect(fileWords({ inFile: true, changed: false, savedAt: at(9, 19, 2025) }, NOON)).toMatch(/2025/)
  })
})
