import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { createEntry, type Entry } from '../../src/app/state/entry.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { emptyWorkbook } from '../../src/workbook/document.ts'
import { applyEdits } from '../../src/workbook/edits.ts'

interface Desk {
  readonly entry: Entry
  readonly moveTo: (row: number) => void
  readonly entered: string[]
}

function setUp(refusal?: string): Desk {
  const entered: string[] = []
  return createRoot(() => {
    const [workbook, setWorkbook] = createSignal(emptyWorkbook())
    const [active, setActive] = createSignal({ row: 0, column: 0 })
    const entry = createEntry({
      workbook, sheet: () => 'Sheet', active,
      put(sheet, at, typed) {
        if (refusal !== undefined) return refusal
        entered.push(typed)
        setWorkbook((before) => applyEdits(before, setEntry(before, sheet, at, typed)).workbook)
        return undefined
      },
    })
    return { entry, entered, moveTo: (row) => setActive({ row, column: 0 }) }
  })
}

describe('an entry', () => {
  it('shows what the active cell holds while nothing is typed', () => {
    const { entry, moveTo } = setUp()
    entry.begin('cell', '31')
    entry.enter()
    expect(entry.text()).toBe('31')
    moveTo(1)
    expect(entry.text()).toBe('')
  })

  it('goes to the cell it was begun at', () => {
    const { entry, moveTo } = setUp()
    entry.begin('line')
    moveTo(5)
    entry.type('=1+1', 4)
    expect(entry.editing()).toMatchObject({ row: 0, place: 'line', typedOver: false })
    entry.enter()
    moveTo(0)
    expect(entry.text()).toBe('=1+1')
  })

  it('changes nothing when left unchanged or put aside', () => {
    const { entry, entered } = setUp()
    entry.begin('cell')
    entry.enter()
    entry.begin('cell', '5')
    entry.cancel()
    expect(entered).toEqual([])
    expect(entry.text()).toBe('')
  })

  it('goes on with a message when it is refused', () => {
    const { entry } = setUp('too long')
    entry.begin('cell', 'x')
    expect(entry.enter()).toBe('too long')
    expect(entry.editing()).toBeDefined()
  })

  it('keeps its text when it goes on in the entry line', () => {
    const { entry } = setUp()
    entry.begin('cell', '4')
    entry.type('42', 2)
    entry.moveTo('line')
    expect([entry.text(), entry.editing()?.place, entry.editing()?.typedOver]).toEqual(['42', 'line', false])
  })
})
