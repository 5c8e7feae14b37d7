import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { createCutting } from '../../src/app/state/cutting.ts'
import { applyEdits } from '../../src/workbook/edits.ts'
import { insertLines } from '../../src/workbook/line-commands.ts'
import { setEntry } from '../../src/workbook/commands.ts'
import { blockOf } from '../../src/workbook/move-cells.ts'
import { workbookOf } from './workbook-of.ts'

describe('what is cut', () => {
  it('stays cut while other cells change, and no longer once one of its own does', () => {
    createRoot((dispose) => {
      const [workbook, setWorkbook] = createSignal(workbookOf({ S: { A1: 1, A2: 2, C1: 3 }, T: {} }))
      const [sheet, setSheet] = createSignal('S')
      const cutting = createCutting(workbook, sheet)
      const change = (edits: ReturnType<typeof setEntry>) => setWorkbook((before) => applyEdits(before, edits).workbook)
      const take = () => cutting.take(blockOf(workbook(), 'S', { top: 0, left: 0, bottom: 1, right: 0 }))
      take()
      change(setEntry(workbook(), 'S', { row: 0, column: 2 }, '4'))
      expect([cutting.includes(1, 0), cutting.includes(0, 2)]).toEqual([true, false])
      setSheet('T')
      expect([cutting.includes(1, 0), cutting.block() !== undefined]).toEqual([false, true])
      setSheet('S')
      change(setEntry(workbook(), 'S', { row: 1, column: 0 }, '5'))
      expect(cutting.block()).toBeUndefined()
      take()
      change(insertLines(workbook(), 'S', { axis: 'rows', at: 0, count: 1 }))
      expect(cutting.block()).toBeUndefined()
      take()
      expect([cutting.end(), cutting.includes(0, 0), cutting.end()]).toEqual([true, false, false])
      dispose()
    })
  })
})
