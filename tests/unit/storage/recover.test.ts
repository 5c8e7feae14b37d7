import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { recover } from '../../../src/storage/recover.ts'
import { STORED_VERSION, type BookContents, type Stored } from '../../../src/storage/shelf.ts'
import { editsOf, isIntact, storedEdits, storedWorkbook, withText } from '../../../src/storage/stored.ts'
import { emptyWorkbook, type Sheet, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'

const put = (value: number): Edit[] => [{ kind: 'cells', sheet: 'Sheet', cells: [{ row: value % 3, column: 0, cell: { content: value, role: 'input' } }] }]

/** A log of so many actions, with snapshots at these numbers, and the workbook after each. */
async function logOf(length: number, snapshotsAt: readonly number[]): Promise<{ readonly contents: BookContents; readonly after: readonly Workbook[] }> {
  const after = [emptyWorkbook()]
  const entries: Stored[] = []
  for (let number = 1; number <= length; number++) {
    const before = after[number - 1] ?? emptyWorkbook()
    after.push(applyEdits(before, put(number)).workbook)
    entries.push(storedEdits('one', number, put(number)))
  }
  const snapshots = await Promise.all(snapshotsAt.map(async (at) => withText(await storedWorkbook('one', at, after[at] ?? emptyWorkbook()))))
  return { contents: { entries, snapshots }, after }
}

const damaged = (one: Stored): Stored => ({ ...one, text: one.text.replace(/\d/, '8') + ' ' })

function textOf(contents: BookContents): { readonly text: string; readonly number: number; readonly lost: number } {
  const found = recover(contents)
  if ('problem' in found) throw new Error(found.problem)
  return { text: writeWorkbook(found.workbook), number: found.number, lost: found.lost }
}

describe('recovering a workbook', () => {
  it('replays the log after the newest snapshot', async () => {
    const { contents, after } = await logOf(7, [0, 4])
    expect(textOf(contents)).toEqual({ text: writeWorkbook(after[7] ?? emptyWorkbook()), number: 7, lost: 0 })
  })

  it('falls back to an older snapshot where the newest is damaged, and loses nothing', async () => {
    const { contents, after } = await logOf(7, [0, 4])
    const snapshots = contents.snapshots.map((one, index) => (index === 1 ? damaged(one) : one))
    expect(textOf({ ...contents, snapshots })).toEqual({ text: writeWorkbook(after[7] ?? emptyWorkbook()), number: 7, lost: 0 })
  })

  it('ends at the last good entry before any damage or gap, and says how many are lost', async () => {
    await fc.assert(fc.asyncProperty(fc.integer({ min: 1, max: 12 }), fc.integer({ min: 1, max: 12 }), fc.boolean(), async (length, at, gap) => {
      fc.pre(at <= length)
      const { contents, after } = await logOf(length, [0])
      const entries = contents.entries.flatMap((one) => (one.number !== at ? [one] : gap ? [] : [damaged(one)]))
      const last = gap && at === length ? at - 1 : length
      expect(textOf({ ...contents, entries })).toEqual({ text: writeWorkbook(after[at - 1] ?? emptyWorkbook()), number: at - 1, lost: last - (at - 1) })
    }))
  })

  it('ends before an entry that is intact but does not fit', async () => {
    const { contents } = await logOf(2, [0])
    const misfit = storedEdits('one', 3, [{ kind: 'removeSheet', sheet: 'Nowhere' }])
    expect(textOf({ ...contents, entries: [...contents.entries, misfit] })).toMatchObject({ number: 2, lost: 1 })
  })

  it('leaves alone what a newer Lowside kept, and what has no sound snapshot', async () => {
    const { contents } = await logOf(2, [0])
    const newer = contents.entries.map((one) => ({ ...one, version: STORED_VERSION + 1 }))
    expect(recover({ ...contents, entries: newer })).toEqual({ problem: expect.stringContaining('newer Lowside') })
    expect(recover({ ...contents, snapshots: contents.snapshots.map(damaged) })).toEqual({ problem: expect.stringContaining('no snapshot') })
  })
})

describe('a snapshot', () => {
  it('of a large workbook goes to the shelf as a blob, and comes back intact', async () => {
    const rows = Array.from({ length: 20_000 }, (_, row): Sheet['rows'][number] => [{ content: `°F ½ row ${row}`, role: 'label' }])
    const workbook: Workbook = { ...emptyWorkbook('Plant'), sheets: [{ name: 'Long', columns: [], frozen: [0, 0], rows }] }
    const snapshot = await storedWorkbook('one', 3, workbook)
    expect(snapshot.text).toBeInstanceOf(Blob)
    const back = await withText(snapshot)
    expect(back.text).toBe(writeWorkbook(workbook))
    expect(isIntact(back)).toBe(true)
  })
})

describe('an entry of the log', () => {
  it('gives back the edits, gaps in a sheet that is put back included', () => {
    const rows: Sheet['rows'] = [undefined, [undefined, { content: '=A1', role: 'result' }], undefined, [{ content: null, role: 'note', note: 'kept' }]]
    const edits: Edit[] = [{ kind: 'addSheet', at: 1, sheet: { name: 'Gaps', columns: [80], frozen: [1, 0], rows } }]
    const [edit] = editsOf(storedEdits('one', 1, edits))
    expect(edit).toStrictEqual(edits[0])
  })

  it('is no longer intact whatever becomes of its text, its number or its workbook', () => {
    fc.assert(fc.property(fc.string({ minLength: 1 }), fc.nat(), (title, at) => {
      const one = storedEdits('one', 1, [{ kind: 'title', title }])
      expect(isIntact(one)).toBe(true)
      const place = at % one.text.length
      const flipped = String.fromCharCode(one.text.charCodeAt(place) ^ 1)
      expect(isIntact({ ...one, text: one.text.slice(0, place) + flipped + one.text.slice(place + 1) })).toBe(false)
      expect(isIntact({ ...one, number: 2 })).toBe(false)
      expect(isIntact({ ...one, book: 'other' })).toBe(false)
    }))
  })
})
