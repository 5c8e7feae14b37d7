import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { createJournal, IDLE_MS, SNAPSHOT_AFTER_ENTRIES, SNAPSHOTS_KEPT, type Journal, type KeepingState } from '../../../src/storage/journal.ts'
import { recover } from '../../../src/storage/recover.ts'
import { withTexts } from '../../../src/storage/stored.ts'
import type { FileState } from '../../../src/storage/shelf.ts'
import { emptyWorkbook, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits, type Edit } from '../../../src/workbook/edits.ts'
import { writeWorkbook } from '../../../src/workbook/file.ts'
import { memoryShelf, type MemoryShelf } from './memory-shelf.ts'

const FILE: FileState = { inFile: false, changed: true, savedAt: null }
const START = emptyWorkbook('Plant')

beforeEach(() => void vi.useFakeTimers())
afterEach(() => void vi.useRealTimers())

interface Kept {
  readonly shelf: MemoryShelf
  readonly journal: Journal
  readonly states: KeepingState['is'][]
  /** One action that puts a number into A1. */
  enter(value: number): void
  workbook(): Workbook
}

function keep(shelf = memoryShelf()): Kept {
  const states: KeepingState['is'][] = []
  const journal = createJournal({ shelf, id: 'one', workbook: START, file: FILE, number: 0, snapshots: [], cut: false }, {
    state: ({ is }) => states.push(is), written: () => undefined,
  }, () => 1)
  let workbook = START
  return {
    shelf, journal, states,
    workbook: () => workbook,
    enter(value) {
      const edits: Edit[] = [{ kind: 'cells', sheet: 'Sheet', cells: [{ row: 0, column: 0, cell: { content: value, role: 'input' } }] }]
      workbook = applyEdits(workbook, edits).workbook
      journal.append(edits, workbook, FILE)
    },
  }
}

async function recovered({ shelf }: Kept): Promise<{ readonly text: string; readonly number: number; readonly lost: number }> {
  const found = recover(await withTexts(await shelf.read('one')))
  if ('problem' in found) throw new Error(found.problem)
  return { text: writeWorkbook(found.workbook), number: found.number, lost: found.lost }
}

describe('the journal of a workbook', () => {
  it('keeps a new workbook at once, and lists it', async () => {
    const kept = keep()
    expect(await kept.journal.flush()).toBe(true)
    expect(await kept.shelf.books()).toEqual([{ id: 'one', title: 'Plant', sheets: 1, at: 1, ...FILE }])
    expect(await recovered(kept)).toEqual({ text: writeWorkbook(START), number: 0, lost: 0 })
  })

  it('says that an action is kept only after it is on disk', async () => {
    const kept = keep()
    await kept.journal.flush()
    kept.states.length = 0
    kept.enter(1)
    expect(kept.states).toEqual(['keeping'])
    expect((await recovered(kept)).number).toBe(0)
    await kept.journal.flush()
    expect(kept.states).toEqual(['keeping', 'kept'])
    expect(await recovered(kept)).toEqual({ text: writeWorkbook(kept.workbook()), number: 1, lost: 0 })
  })

  it('writes the actions of a busy moment together, in order', async () => {
    const kept = keep()
    for (let value = 1; value <= 50; value++) kept.enter(value)
    await kept.journal.flush()
    expect(kept.shelf.writings.length).toBeLessThan(5)
    expect(await recovered(kept)).toEqual({ text: writeWorkbook(kept.workbook()), number: 50, lost: 0 })
  })

  it('takes a snapshot after so many actions, or when nothing happens for a while, and keeps the last few', async () => {
    const kept = keep()
    await kept.journal.flush()
    const numbers = () => kept.shelf.held.get('one')?.snapshots.map(({ number }) => number)
    for (let value = 1; value < SNAPSHOT_AFTER_ENTRIES; value++) kept.enter(value)
    await kept.journal.flush()
    expect(numbers()).toEqual([0])
    kept.enter(-1)
    await kept.journal.flush()
    expect(numbers()).toEqual([0, SNAPSHOT_AFTER_ENTRIES])
    for (let round = 1; round <= SNAPSHOTS_KEPT; round++) {
      kept.enter(-1 - round)
      await kept.journal.flush()
      await vi.advanceTimersByTimeAsync(IDLE_MS)
      await kept.journal.flush()
    }
    const last = SNAPSHOT_AFTER_ENTRIES + SNAPSHOTS_KEPT
    expect(numbers()).toEqual([last - 2, last - 1, last])
    expect(kept.shelf.held.get('one')?.entries.map(({ number }) => number)).toEqual([last - 1, last])
    expect((await recovered(kept)).text).toBe(writeWorkbook(kept.workbook()))
  })

  it('says what cannot be kept, loses none of it, and tries again', async () => {
    const kept = keep()
    await kept.journal.flush()
    kept.shelf.refuse = () => new DOMException('full', 'QuotaExceededError')
    kept.enter(1)
    expect(await kept.journal.flush()).toBe(false)
    kept.enter(2)
    expect(await kept.journal.flush()).toBe(false)
    expect(kept.states.at(-1)).toBe('failed')
    expect((await recovered(kept)).number).toBe(0)
    kept.shelf.refuse = undefined
    await vi.advanceTimersByTimeAsync(IDLE_MS)
    await kept.journal.flush()
    expect(kept.states.at(-1)).toBe('kept')
    expect(await recovered(kept)).toEqual({ text: writeWorkbook(kept.workbook()), number: 2, lost: 0 })
  })

  it('goes on with the log where there is no room for a snapshot', async () => {
    const kept = keep()
    await kept.journal.flush()
    kept.shelf.refuse = ({ snapshot }) => (snapshot ? new DOMException('full', 'QuotaExceededError') : undefined)
    for (let value = 1; value <= SNAPSHOT_AFTER_ENTRIES + 1; value++) kept.enter(value)
    expect(await kept.journal.flush()).toBe(true)
    expect(kept.states.at(-1)).toBe('kept')
    expect(await recovered(kept)).toEqual({ text: writeWorkbook(kept.workbook()), number: SNAPSHOT_AFTER_ENTRIES + 1, lost: 0 })
  })

  it('never writes over what another has written', async () => {
    const first = keep()
    await first.journal.flush()
    const second = keep(first.shelf)
    await second.journal.flush()
    first.enter(1)
    await first.journal.flush()
    second.enter(2)
    expect(await second.journal.flush()).toBe(false)
    expect((await recovered(first)).text).toBe(writeWorkbook(first.workbook()))
  })

  it('writes nothing after it is closed', async () => {
    const kept = keep()
    await kept.journal.flush()
    kept.journal.close()
    kept.enter(1)
    await kept.journal.flush()
    expect((await recovered(kept)).number).toBe(0)
  })
})
