import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { createSelection, type Selection } from '../../src/app/state/selection.ts'

/** Filled: B2:B4 and B7. */
const FILLED = new Set(['1:1', '2:1', '3:1', '6:1'])

function select(use: (selection: Selection, showSheet: (name: string) => void) => void): void {
  createRoot((dispose) => {
    const [sheet, setSheet] = createSignal('Duty')
    const selection = createSelection({
      sheet, size: () => ({ rows: 10, columns: 5 }), isFilled: (row, column) => FILLED.has(`${row}:${column}`), start: () => ({ row: 1, column: 1 }),
    })
    use(selection, setSheet)
    dispose()
  })
}

describe('the selection', () => {
  it('begins where work on the sheet begins', () => {
    select((selection) => expect(selection.active()).toEqual({ row: 1, column: 1 }))
  })

  it('steps, and stops at the ends of the sheet', () => {
    select((selection) => {
      selection.step(1, 1)
      expect(selection.active()).toEqual({ row: 2, column: 2 })
      selection.step(-9, 99)
      expect(selection.active()).toEqual({ row: 0, column: 4 })
    })
  })

  it('stretches from the cell it began at, in any direction', () => {
    select((selection) => {
      selection.step(2, 1, true)
      expect(selection.area()).toEqual({ top: 1, left: 1, bottom: 3, right: 2 })
      selection.step(-3, -2, true)
      expect(selection.area()).toEqual({ top: 0, left: 0, bottom: 1, right: 1 })
      expect(selection.active()).toEqual({ row: 1, column: 1 })
      expect(selection.corner()).toEqual({ row: 0, column: 0 })
    })
  })

  it('leaps to the end of a run, then to the next run, then to the end of the sheet', () => {
    select((selection) => {
      const rows = [0, 1, 2].map(() => {
        selection.leap(1, 0)
        return selection.active().row
      })
      expect(rows).toEqual([3, 6, 9])
    })
  })

  it('is kept for each sheet', () => {
    select((selection, showSheet) => {
      selection.moveTo({ row: 5, column: 3 })
      showSheet('Drum')
      expect(selection.active()).toEqual({ row: 1, column: 1 })
      showSheet('Duty')
      expect(selection.active()).toEqual({ row: 5, column: 3 })
    })
  })

  it('begins anew everywhere when it is told to forget', () => {
    select((selection) => {
      selection.moveTo({ row: 5, column: 3 })
      selection.forget()
      expect(selection.active()).toEqual({ row: 1, column: 1 })
    })
  })

  it('takes a rectangle with its first cell active', () => {
    select((selection) => {
      selection.select({ top: 2, left: 1, bottom: 4, right: 99 })
      expect(selection.area()).toEqual({ top: 2, left: 1, bottom: 4, right: 4 })
      expect(selection.active()).toEqual({ row: 2, column: 1 })
    })
  })

  it('holds several rectangles, of which the last is the active one and the one that is stretched', () => {
    select((selection) => {
      selection.moveTo({ row: 0, column: 0 })
      selection.moveTo({ row: 2, column: 0 }, true)
      selection.add({ row: 4, column: 3 })
      selection.moveTo({ row: 5, column: 2 }, true)
      expect(selection.areas()).toEqual([{ top: 0, left: 0, bottom: 2, right: 0 }, { top: 4, left: 2, bottom: 5, right: 3 }])
      expect(selection.active()).toEqual({ row: 4, column: 3 })
      expect([[1, 0], [5, 2], [3, 0], [4, 1]].map(([row = 0, column = 0]) => selection.includes(row, column))).toEqual([true, true, false, false])
      selection.moveTo({ row: 7, column: 1 })
      expect(selection.areas()).toEqual([{ top: 7, left: 1, bottom: 7, right: 1 }])
    })
  })

  it('kept by key, stays while keys lead to the next rectangle, and until that one is stretched', () => {
    select((selection) => {
      selection.moveTo({ row: 0, column: 0 })
      selection.step(1, 0, true)
      selection.keep()
      selection.step(0, 2)
      selection.step(1, 0)
      selection.step(1, 0, true)
      expect(selection.areas()).toEqual([{ top: 0, left: 0, bottom: 1, right: 0 }, { top: 1, left: 2, bottom: 2, right: 2 }])
      selection.step(1, 0)
      expect(selection.areas()).toEqual([{ top: 2, left: 2, bottom: 2, right: 2 }])
    })
  })

  it('is left for the active rectangle alone', () => {
    select((selection) => {
      selection.selectAll([{ top: 0, left: 0, bottom: 1, right: 0 }, { top: 3, left: 1, bottom: 4, right: 1 }])
      expect(selection.active()).toEqual({ row: 3, column: 1 })
      expect(selection.leaveOne()).toBe(true)
      expect(selection.areas()).toEqual([{ top: 3, left: 1, bottom: 4, right: 1 }])
      expect(selection.leaveOne()).toBe(false)
    })
  })
})
