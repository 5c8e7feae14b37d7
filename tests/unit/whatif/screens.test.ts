import { describe, expect, it } from 'vitest'
import { findUnit } from '../../../functions/units/units.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { readWorkbook, writeWorkbook } from '../../../src/workbook/file.ts'
import { checksDownstream } from '../../../src/whatif/downstream.ts'
import { heldInputs } from '../../../src/whatif/held-inputs.ts'
import type { SweepBegun } from '../../../src/whatif/messages.ts'
import { printCellPlace } from '../../../src/workbook/cell-place.ts'
import { runSweep, sweep, type Swept } from '../../../src/whatif/sweep.ts'
import { keepSweep } from '../../../src/whatif/sweep-sheet.ts'
import { failuresInOrder, sweepWords } from '../../../src/whatif/sweep-words.ts'
import { usualSweep } from '../../../src/whatif/usual-sweep.ts'
import { at, workbookOf } from '../workbook-of.ts'

const place = (address: string, sheet = 'Duty') => ({ sheet, ...at(address) })
const book = () => workbookOf({
  Duty: {
    A1: ['load', 'label'], B1: 5, C1: ['TR', 'unit'], A2: ['other', 'label'], B2: 2, A3: ['product', 'label'], B3: '=B1*B2', A4: ['small', 'label'], B4: ['=B3<=20', 'check'],
    A5: ['by name', 'label'], B5: ['=given<8.5', 'check'], A6: ['alone', 'label'], B6: ['=B2>0', 'check'],
  },
  Elsewhere: { A1: ['far', 'label'], B1: ['=SUM(Duty!B1:B3)>0', 'check'], A2: ['whole column', 'label'], B2: ['=COUNT(Duty!B:B)>0', 'check'] },
}, { given: 'Duty!$B$1' })

const swept = async (): Promise<{ readonly found: Swept; readonly begun: SweepBegun }> => {
  const ready = sweep(book(), { vary: [{ place: place('B1'), spacing: { from: 0, to: 20, step: 2 } }], watch: [place('B3'), place('B4'), place('B5'), place('B6')] })
  const found = await runSweep(ready)
  return { found, begun: { axes: found.axes.map((axis) => ({ ...axis, inCell: axis.numbers })), watched: found.watched, count: ready.count, held: heldInputs(book(), [place('B3')], [place('B1')]), unwatched: 0 } }
}

describe('checks downstream', () => {
  it('are found through other cells, names, ranges and whole columns, and those that do not hang on it are not', () => {
    expect(checksDownstream(book(), [place('B1')]).map(printCellPlace)).toEqual(['Duty!B4', 'Duty!B5', 'Elsewhere!B1', 'Elsewhere!B2'])
  })
})

describe('the words of a sweep', () => {
  it('name the check that fails first before all others, as the sweep itself has it', async () => {
    const { found, begun } = await swept()
    const words = sweepWords(begun, found.points, found.limits)
    // 8.5 by its formula; 20 / 2 = 10.
    expect(words).toEqual(['First to fail: by name (Duty!B5) turns from met to not met at 8.5 TR.', 'small (Duty!B4) turns from met to not met at 10 TR.', '1 check is met at every point.'])
    const [axis] = begun.axes
    expect(axis && failuresInOrder(axis, found.limits)[0]).toMatchObject({ watched: 2 })
  })
})

describe('a sweep kept as a sheet', () => {
  it('has its heading, the day in words, units, every point and the inputs held, and goes through a file', async () => {
    const { found, begun } = await swept()
    const { name, edits } = keepSweep(book(), { begun, ...found }, new Date(2026, 10, 27))
    const after = applyEdits(book(), edits).workbook
    const sheet = after.sheets.at(-1)
    expect([name, sheet?.name]).toEqual(['Sweep', 'Sweep'])
    const texts = (sheet?.rows ?? []).map((row) => (row ?? []).map((cell) => cell?.content))
    expect(texts[0]?.[1]).toBe('Sweep of load')
    expect(texts[1]?.[1]).toContain('27 November 2026')
    expect(texts).toContainEqual([undefined, 'TR'])
    expect(texts).toContainEqual([undefined, 4, 8, 'met', 'met', 'met'])
    expect(texts).toContainEqual([undefined, 20, 40, 'not met', 'not met', 'met'])
    expect(texts).toContainEqual([undefined, 'other', 2, undefined, 'Duty!B2'])
    const read = readWorkbook(writeWorkbook(after))
    expect('workbook' in read && read.workbook.sheets.at(-1)).toEqual(sheet)
    expect(keepSweep(after, { begun, ...found }, new Date()).name).toBe('Sweep 2')
  })
})

describe('the usual range of a sweep', () => {
  it('is round what the input holds', () => {
    // 10 K are 18 Δ°F.
    expect(usualSweep(22, findUnit('°F'))).toMatchObject({ from: 4, to: 40 })
    expect(usualSweep(42, findUnit('TR'))).toMatchObject({ from: 21, to: 84 })
    expect(usualSweep(-3, undefined)).toMatchObject({ from: -6, to: -1.5 })
    expect(usualSweep(0, undefined)).toMatchObject({ from: -10, to: 10 })
  })
})
