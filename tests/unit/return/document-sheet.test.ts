import { describe, expect, it } from 'vitest'
import type { FileContents, ReadCell } from '../../../src/exchange/reading/contents.ts'
import { DOCUMENT_HEAD_ROWS, documentSheet } from '../../../src/exchange/return/document-sheet.ts'
import { ownWorkbook } from '../../../src/exchange/return/own-workbook.ts'
import { packed, unpacked } from '../../../src/exchange/return/packed-text.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { contentsOfExport } from './edited-contents.ts'
import { workbookOf } from '../workbook-of.ts'

const workbook = readTemplate('templates/vessel-sizing.lowside.json')
const contents = await contentsOfExport(workbook)

/** The file with a cell of its last sheet, which holds the document, changed. */
function damaged(row: number, column: number, change: (text: string) => ReadCell['value'] | undefined): FileContents {
  const sheet = contents.sheets.at(-1) ?? expect.fail('no sheets')
  const rows = sheet.rows.map((cells, index) => (index !== row ? cells : cells?.map((cell, at) => {
    const value = at === column ? change(String(cell?.value)) : cell?.value
    return value === undefined ? undefined : { ...cell, value }
  })))
  return { ...contents, sheets: contents.sheets.with(-1, { ...sheet, rows }) }
}

const problemOf = async (file: FileContents): Promise<string> => {
  const found = await ownWorkbook(file)
  return found !== undefined && 'problem' in found ? found.problem : expect.fail('it is not refused')
}

describe('the sheet that holds the document', () => {
  it('is the last one, hidden, with words on it that say what it is', () => {
    expect(contents.sheets.at(-1)).toMatchObject({ name: 'Lowside workbook', hidden: true })
    expect(String(contents.sheets.at(-1)?.rows[0]?.[0]?.value)).toMatch(/^This sheet holds the Lowside workbook/)
    expect(contents.sheets.filter(({ hidden }) => hidden)).toHaveLength(1)
  })

  it('has no cell longer than a cell of a file may be', async () => {
    const sheet = await documentSheet(readTemplate('demo-data/tallowmere.lowside.json'), 'Lowside workbook', new Date(0), {})
    const lengths = [...sheet.rows].flatMap(({ cells }) => cells.map((cell) => String(cell?.value ?? '').length))
    expect(Math.max(...lengths)).toBeLessThanOrEqual(32_767)
    expect(lengths.length).toBeGreaterThan(DOCUMENT_HEAD_ROWS)
  })

  it('is known by what stands on it, whatever it is called and wherever it is', async () => {
    const moved = { ...contents, sheets: [{ ...contents.sheets.at(-1)!, name: 'x', hidden: false }, ...contents.sheets.slice(0, -1)] }
    expect(await ownWorkbook(moved)).toMatchObject({ workbook: { title: workbook.title } })
  })

  it('stands aside where a sheet of the workbook has its name', async () => {
    const other = await contentsOfExport(workbookOf({ 'Lowside workbook': { A1: 1 } }))
    expect(other.sheets.at(-1)?.name).toBe('Lowside workbook 2')
    expect(await ownWorkbook(other)).toMatchObject({ workbook: { sheets: [{ name: 'Lowside workbook' }] } })
  })

  it('is none in a file of anyone else', async () => {
    expect(await ownWorkbook({ ...contents, sheets: contents.sheets.slice(0, -1) })).toBeUndefined()
    expect(await ownWorkbook({ kind: 'csv', sheets: [], names: new Map(), remarks: [] })).toBeUndefined()
  })
})

describe('a damaged one is refused with words, and the sheets can still be brought in', () => {
  it.each([
    ['a piece is missing', DOCUMENT_HEAD_ROWS, 0, () => undefined, /piece 1 of \d+ is missing/],
    ['a piece is cut off', DOCUMENT_HEAD_ROWS, 0, (text: string) => text.slice(0, 4000), /damaged|differs|no Base64/],
    ['a character is another', DOCUMENT_HEAD_ROWS, 0, (text: string) => text.slice(0, 500) + (text[500] === 'A' ? 'B' : 'A') + text.slice(501), /damaged|differs|grows/],
    ['a piece is no Base64', DOCUMENT_HEAD_ROWS, 0, () => 'piece 1: ???', /piece 1 is no Base64/],
    ['the length is another', 4, 1, (text: string) => Number(text) + 1, /characters/],
    ['the length is none', 4, 1, () => 'many', /damaged/],
    ['the length is huge', 4, 1, () => 1e15, /damaged/],
    ['the length says less than there is', 4, 1, () => 10, /grows beyond 30 bytes/],
    ['the hash is another', 5, 1, () => 'ab'.repeat(32), /SHA-256 differs/],
    ['the number of pieces is huge', 6, 1, () => 1e9, /damaged/],
    ['the version is a later one', 1, 1, () => 2, /version 2/],
  ] as const)('%s', async (_, row, column, change, words) => {
    const problem = await problemOf(damaged(row, column, change))
    expect(problem).toMatch(words)
    expect(problem).toContain('can still be brought in')
  })

  it('there are two', async () => {
    expect(await problemOf({ ...contents, sheets: [...contents.sheets, { ...contents.sheets.at(-1)!, name: 'Copy' }] })).toContain('there is another one on "Copy"')
  })

  it('what is packed is no workbook', async () => {
    const foreign = await packed(['{"lowside": 1, "title": 5}'])
    const file = damaged(DOCUMENT_HEAD_ROWS, 0, () => `piece 1: ${foreign.pieces[0]}`)
    const sheet = file.sheets.at(-1)!
    const facts = new Map<number, string | number>([[4, foreign.characters], [5, foreign.hash], [6, 1]])
    const whole = { ...file, sheets: file.sheets.with(-1, { ...sheet, rows: sheet.rows.map((cells, row) => (facts.has(row) ? [cells?.[0], { value: facts.get(row) ?? null }] : cells)) }) }
    expect(await problemOf(whole)).toMatch(/title/)
  })
})

describe('a text packed', () => {
  it.each(['', 'a', 'ä€😀\ud800', 'x'.repeat(200_000)])('is the same unpacked: %#', async (text) => {
    const plain = new TextDecoder().decode(new TextEncoder().encode(text))
    expect(await unpacked(await packed([plain]))).toEqual({ text: plain })
  })

  it('of a hundred million equal characters is not unpacked beyond the length given', async () => {
    const bomb = await packed(Array.from({ length: 100 }, () => '0'.repeat(1_000_000)))
    expect(await unpacked({ ...bomb, characters: 1000 })).toEqual({ problem: 'unpacked it grows beyond 3000 bytes, more than was written' })
  })
})
