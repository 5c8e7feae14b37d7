import { createRoot } from 'solid-js'
import { describe, expect, it } from 'vitest'
import type { Part } from '../../src/app/state/long-change.ts'
import { createWorkbookState, type WorkbookState } from '../../src/app/state/workbook-state.ts'
import type { Edit } from '../../src/workbook/edits.ts'
import { emptyWorkbook } from '../../src/workbook/document.ts'

const put = (row: number, content: number): Edit => ({ kind: 'cells', sheet: 'Sheet', cells: [{ row, column: 0, cell: { content, role: 'input' } }] })

/** Long enough that a slice of time holds one part only. */
function* slow(count: number): Generator<Part> {
  for (let row = 0; row < count; row++) {
    const end = performance.now() + 20
    while (performance.now() < end);
    yield { edits: [put(row, row + 1)], share: (row + 1) / count }
  }
}

function withState(use: (state: WorkbookState, heard: Edit[][]) => Promise<void>, refusal?: () => string | undefined): Promise<void> {
  return createRoot(async (dispose) => {
    const heard: Edit[][] = []
    const state = createWorkbookState([{ opened: () => undefined, edited: (edits) => void heard.push([...edits]) }], refusal)
    state.replace(emptyWorkbook(), false)
    await use(state, heard)
    dispose()
  })
}

const column = (state: WorkbookState) => state.workbook().sheets[0]?.rows.map((row) => row?.[0]?.content)
const ends = (state: WorkbookState, parts: Iterable<Part>): Promise<string | undefined> => new Promise((done) => state.changeInParts({ label: 'Paste', make: () => parts, done }))

describe('an action in parts', () => {
  it('is seen whole or not at all, and is one step', () => withState(async (state, heard) => {
    const end = ends(state, slow(4))
    expect(column(state)).toEqual([])
    expect(state.longChange.isUnderWay()).toBe(true)
    expect(await end).toBeUndefined()
    expect(column(state)).toEqual([1, 2, 3, 4])
    expect(heard.length).toBe(1)
    state.undo()
    expect(column(state)).toEqual([])
    state.redo()
    expect(column(state)).toEqual([1, 2, 3, 4])
  }))

  it('comes before what the user does meanwhile', () => withState(async (state) => {
    const end = ends(state, slow(4))
    state.change('Entry', () => [put(0, 100)])
    expect(column(state)).toEqual([100, 2, 3, 4])
    await end
    state.undo()
    expect(column(state)).toEqual([1, 2, 3, 4])
  }))

  it('is what an undo meanwhile takes back', () => withState(async (state) => {
    state.change('Entry', () => [put(0, 100)])
    void ends(state, slow(4))
    state.undo()
    expect(column(state)).toEqual([100])
    state.redo()
    expect(column(state)).toEqual([1, 2, 3, 4])
  }))

  it('leaves nothing behind where it is stopped', () => withState(async (state, heard) => {
    let told = false
    state.changeInParts({ label: 'Paste', make: () => slow(4), done: () => (told = true) })
    expect(state.longChange.stop()).toBe(true)
    await new Promise((resolve) => setTimeout(resolve, 60))
    expect([column(state), heard, told, state.longChange.isUnderWay(), state.longChange.stop()]).toEqual([[], [], false, false, false])
  }))

  it('a short one is done on return; one that does not fit says why and changes nothing', () => withState(async (state) => {
    let problem: string | undefined
    state.changeInParts({ label: 'Paste', make: () => [{ edits: [put(0, 1)], share: 1 }], done: () => undefined })
    expect(column(state)).toEqual([1])
    state.changeInParts({ label: 'Paste', make: () => [{ edits: [put(1, 2)], share: 0.5 }, { edits: [put(-1, 3)], share: 1 }], done: (found) => (problem = found) })
    expect(problem).toContain('off the sheet')
    expect(column(state)).toEqual([1])
  }))

  it('is not taken where another tab has come to write meanwhile', () => {
    let refused: string | undefined
    return withState(async (state) => {
      const end = ends(state, slow(3))
      refused = 'another tab writes'
      expect(await end).toBe('another tab writes')
      expect(column(state)).toEqual([])
    }, () => refused)
  })
})
