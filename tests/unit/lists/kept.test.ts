import { describe, expect, it } from 'vitest'
import { fromKept, keepMapping, keptFor, readMapping, removeMapping, renameMapping, toKept } from '../../../src/exchange/lists/kept.ts'
import { sourceFor, suggestMapping } from '../../../src/exchange/lists/suggest-mapping.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { readPrecisely } from '../../../src/workbook/file-reading.ts'
import { inventory, listNamed, sheetOfRows } from './read-list.ts'

const workbook = inventory()
const list = listNamed(workbook, 'Charge')
const source = sourceFor(list, sheetOfRows([['Tag', 'Orientation', 'ID [mm]', 'Qty', 'Constructor', '__proto__'], ['V-1', 'Vert.', 600, 1, 'x', 'y']]))
const mapping = suggestMapping(list, source)
const kept = toKept('Client A', list, source, mapping)
const withKept = applyEdits(workbook, keepMapping(workbook, kept))

describe('a mapping kept in the workbook', () => {
  it('comes back the same from the file, read quickly and precisely', () => {
    const text = writeWorkbook(withKept.workbook)
    const quick = readWorkbook(text)
    const precise = readPrecisely(text)
    expect('workbook' in quick && quick.workbook.mappings).toEqual([kept])
    expect('workbook' in precise && precise.workbook.mappings).toEqual([kept])
    expect('workbook' in quick && writeWorkbook(quick.workbook)).toBe(text)
    const { mapping: again, missing } = fromKept(kept, list, source)
    expect(missing).toEqual([])
    expect([...again.columns].map(([column, one]) => [column, one])).toEqual([...mapping.columns].map(([column, { from, unit, choices }]) => [column, { from, ...(unit === undefined ? {} : { unit }), choices }]))
  })
  it('is not in a file that has none', () => {
    expect(writeWorkbook(workbook)).not.toContain('"mappings"')
  })
  it('is offered where the headings are the same, whatever their order and case, and not where one is missing', () => {
    const other = sourceFor(list, sheetOfRows([['qty', 'TAG', 'Id [mm]', 'Orientation', 'More'], [1, 'V-9', 700, 'Vert.', '']]))
    expect(keptFor(withKept.workbook, list, other).map(({ name }) => name)).toEqual(['Client A'])
    const without = sourceFor(list, sheetOfRows([['Qty', 'Tag', 'Orientation'], [1, 'V-9', 'Vert.']]))
    expect(keptFor(withKept.workbook, list, without)).toEqual([])
    expect(fromKept(kept, list, without).missing).toEqual(['the file has no column “ID [mm]”'])
  })
  it('can be renamed, replaced and removed, and each taken back', () => {
    const renamed = applyEdits(withKept.workbook, renameMapping(withKept.workbook, 'Client A', 'Client B'))
    expect(renamed.workbook.mappings?.map(({ name }) => name)).toEqual(['Client B'])
    expect(applyEdits(renamed.workbook, renamed.inverse).workbook.mappings).toEqual([kept])
    expect(applyEdits(withKept.workbook, keepMapping(withKept.workbook, { ...kept, name: 'client a' })).workbook.mappings).toHaveLength(1)
    const removed = applyEdits(withKept.workbook, removeMapping(withKept.workbook, 'Client A'))
    expect('mappings' in removed.workbook).toBe(false)
    expect(writeWorkbook(applyEdits(removed.workbook, removed.inverse).workbook)).toBe(writeWorkbook(withKept.workbook))
  })
  it('has a name of its own', () => {
    expect(() => applyEdits(withKept.workbook, [{ kind: 'mappings', mappings: [kept, { ...kept, name: 'CLIENT A' }] }])).toThrow('taken by another mapping')
    expect(() => applyEdits(workbook, [{ kind: 'mappings', mappings: [{ ...kept, name: ' ' }] }])).toThrow('a mapping without a name')
  })
  it('that is broken in a file is refused, with its place', () => {
    const broken = readWorkbook(writeWorkbook(withKept.workbook).replace('"to": "Shape"', '"too": "Shape"').replace('"to":"Shape"', '"too":"Shape"'))
    expect('problems' in broken && broken.problems.map(({ message }) => message).join(' ')).toMatch(/unknown "too" in a column of a mapping/)
    expect(readMapping('{"name": "x"}')).toMatchObject({ problem: expect.stringContaining('list') as string })
    expect(readMapping('no')).toMatchObject({ problem: expect.stringContaining('no JSON') as string })
    expect(readMapping(JSON.stringify(kept))).toEqual(kept)
  })
})
