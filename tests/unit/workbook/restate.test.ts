import { describe, expect, it } from 'vitest'
import { withCells } from '../../../src/workbook/cells.ts'
import { setEntry } from '../../../src/workbook/commands.ts'
import { cellAt, emptyWorkbook, type Cell, type Workbook } from '../../../src/workbook/document.ts'
import { applyEdits } from '../../../src/workbook/edits.ts'
import { parseAddress } from '../../../src/workbook/address.ts'
import { restate } from '../../../src/workbook/restate.ts'

type Cells = Readonly<Record<string, readonly [Cell['content'], Cell['role']]>>

function workbookOf(cells: Cells): Workbook {
  const start = emptyWorkbook('test', 'Drum')
  const changes = Object.entries(cells).map(([address, [content, role]]) => ({ ...place(address), cell: { content, role } }))
  return { ...start, sheets: start.sheets.map((sheet) => withCells(sheet, changes)) }
}

function place(address: string) {
  const found = parseAddress(address)
  if (!found) throw new Error(address)
  return found
}

const inUnits = (workbook: Workbook, system: 'US' | 'SI') => applyEdits(workbook, restate(workbook, system)).workbook

const contentAt = (workbook: Workbook, address: string) => cellAt(workbook, 'Drum', place(address).row, place(address).column)?.content

describe('restate', () => {
  it('converts the input beside its unit and leaves formulas: 32 °F is 0 °C, 1 ft is 0.3048 m, 1 lb is 0.45359237 kg (exact, NIST SP 811 B.8)', () => {
    const si = inUnits(
      workbookOf({
        A1: [32, 'input'], B1: ['°F', 'unit'],
        A2: [1, 'input'], B2: ['ft', 'unit'],
        A3: [1, 'input'], B3: ['lb', 'unit'],
        A4: ['=A1+A2', 'result'], B4: ['psia', 'unit'],
      }),
      'SI',
    )
    expect([contentAt(si, 'A1'), contentAt(si, 'B1')]).toEqual([0, '°C'])
    expect([contentAt(si, 'A2'), contentAt(si, 'B2')]).toEqual([0.3048, 'm'])
    expect([contentAt(si, 'A3'), contentAt(si, 'B3')]).toEqual([0.45359237, 'kg'])
    expect([contentAt(si, 'A4'), contentAt(si, 'B4')]).toEqual(['=A1+A2', 'kPa'])
  })

  it('a difference of 9 Δ°F is 5 ΔK, not a temperature (NIST SP 811 B.8: 1 Δ°F = 5/9 K)', () => {
    const si = inUnits(workbookOf({ A1: [9, 'input'], B1: ['Δ°F', 'unit'] }), 'SI')
    expect([contentAt(si, 'A1'), contentAt(si, 'B1')]).toEqual([5, 'ΔK'])
  })

  it('gauge pressure goes by the factor alone: 0 psig is 0 kPa(g) at any site; 10 inHg vac is -33.86389 kPa(g) (inHg 3386.389 Pa, NIST SP 811 B.8)', () => {
    const start = workbookOf({ A1: [0, 'input'], B1: ['psig', 'unit'], A2: [10, 'input'], B2: ['inHg vac', 'unit'] })
    const si = inUnits(start, 'SI')
    expect([contentAt(si, 'A1'), contentAt(si, 'B1')]).toEqual([0, 'kPa(g)'])
    expect([contentAt(si, 'A2'), contentAt(si, 'B2')]).toEqual([-33.86389, 'kPa(g)'])
    expect(contentAt(inUnits(si, 'US'), 'B2')).toBe('inHg vac')
  })

  it('a unit in a table header converts the inputs below it, past text and gaps, to the first empty row', () => {
    const si = inUnits(
      workbookOf({
        A1: ['Vessel', 'heading'], B1: ['Length', 'heading'],
        B2: ['ft', 'unit'], C2: ['in', 'unit'],
        A3: ['V-1', 'label'], B3: [10, 'input'], C3: [1, 'input'],
        A4: ['V-2', 'label'], C4: [2, 'input'],
        A5: ['V-3', 'label'], B5: ['none', 'text'], C5: ['=C3', 'result'],
        A6: ['V-4', 'label'], B6: [100, 'input'],
        B8: [7, 'input'],
      }),
      'SI',
    )
    expect(['B2', 'B3', 'B6', 'B8'].map((address) => contentAt(si, address))).toEqual(['m', 3.048, 30.48, 7])
    expect(['C2', 'C3', 'C4', 'C5'].map((address) => contentAt(si, address))).toEqual(['mm', 25.4, 50.8, '=C3'])
  })

  it('a value with its own unit beside it ends the table above it', () => {
    const si = inUnits(workbookOf({ B1: ['ft', 'unit'], B2: [10, 'input'], B3: [1, 'input'], C3: ['lb', 'unit'] }), 'SI')
    expect(['B2', 'B3', 'C3'].map((address) => contentAt(si, address))).toEqual([3.048, 0.45359237, 'kg'])
  })

  it('quantities in inputs are converted, in labels and notes they are not', () => {
    const si = inUnits(workbookOf({ A1: ['32 °F', 'input'], A2: ['32 °F', 'label'], A3: ["'10 ft", 'input'] }), 'SI')
    expect(['A1', 'A2', 'A3'].map((address) => contentAt(si, address))).toEqual(['0 °C', '32 °F', '3.048 m'])
  })

  it('a K-value in ft/s comes back in ft/s, but not once its unit was typed anew', () => {
    const si = inUnits(workbookOf({ A1: [0.25, 'input'], B1: ['ft/s', 'unit'] }), 'SI')
    expect([contentAt(si, 'A1'), contentAt(si, 'B1')]).toEqual([0.0762, 'm/s'])
    const us = inUnits(si, 'US')
    expect([contentAt(us, 'A1'), contentAt(us, 'B1')]).toEqual([0.25, 'ft/s'])

    const changed = applyEdits(si, setEntry(si, 'Drum', place('B1'), 'm3/h')).workbook
    const typedAnew = applyEdits(changed, setEntry(changed, 'Drum', place('B1'), 'm/s')).workbook
    expect([contentAt(inUnits(typedAnew, 'US'), 'A1'), contentAt(inUnits(typedAnew, 'US'), 'B1')]).toEqual([15, 'ft/min'])
  })

  it('asked for the units it is in already, it changes nothing, and the other units are reached from there', () => {
    const us = workbookOf({ A1: [32, 'input'], B1: ['°F', 'unit'] })
    expect(restate(us, 'US')).toEqual([])
    expect(contentAt(inUnits(inUnits(us, 'US'), 'SI'), 'B1')).toBe('°C')
  })

  it('a stray kW among US units stays on the way to SI, and on the way back', () => {
    const us = workbookOf({ A1: [32, 'input'], B1: ['°F', 'unit'], A2: [1, 'input'], B2: ['ft', 'unit'], A3: [5, 'input'], B3: ['kW', 'unit'] })
    const si = inUnits(us, 'SI')
    expect(contentAt(si, 'B3')).toBe('kW')
    expect(inUnits(si, 'US')).toEqual(us)
  })

  it('numbers as people type them come back by themselves, nothing being remembered', () => {
    for (const unit of ['°F', 'psia', 'in', 'TR', 'lb/min', 'ft3', 'Btu/lb', 'Cv']) {
      const cells = Array.from({ length: 300 }, (_, index): [string, [number, 'input']] => [`A${index + 2}`, [(index * 7 - 350) / 10, 'input']])
      const us = workbookOf({ A1: [unit, 'unit'], ...Object.fromEntries(cells) })
      const si = inUnits(us, 'SI')
      expect(si.sheets[0]?.rows.filter((row) => row?.[0]?.restatedFrom !== undefined)).toEqual([])
      expect(inUnits(si, 'US')).toEqual(us)
    }
  })
})
