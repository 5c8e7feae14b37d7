import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { walkedFormula } from '../../src/app/panel/walked-formula.ts'
import { createTrail, type Visited } from '../../src/app/state/trail.ts'
import { Graph } from '../../src/calc/graph.ts'
import { at, workbookOf } from './workbook-of.ts'

describe('a formula in words', () => {
  const lines = (formula: string) => {
    const workbook = workbookOf({ S: { B5: ['Load', 'label'], C5: 50, D5: ['TR', 'unit'], C6: 20, D6: ['°F', 'unit'], C7: 95, D7: ['°F', 'unit'], C8: '=C5*2', D8: ['=D5', 'unit'], D9: ['lb/min', 'unit'], Z1: formula } })
    const graph = new Graph(workbook)
    const [home] = workbook.sheets
    if (home === undefined) throw new Error('a workbook has a sheet')
    return walkedFormula(formula, graph.feeds('S', at('Z1').row, at('Z1').column), workbook, home, at('Z1'))
  }
  const words = (formula: string) => lines(formula)?.equalities.join(' = ')

  it('names the arguments of our functions and puts the values in; the unit of the result is left to the result', () => {
    expect(words('=FEED.FLOW(C5:D5, C6&D6,C7:D7,D9)')).toBe('FEED.FLOW(load 50 TR, drum 20 °F, liquid 95 °F)')
    // 21.371 lb/min by the same function, which tests/published holds to its check values.
    expect(words('=FEED.FLOW(C5:D5,C6:D6,"95 °F","lb/min")*2')).toBe('21.371 lb/min × 2')
    expect(lines('=FEED.FLOW(C5:D5,C6:D6,"95 °F","lb/min")*2')?.wheres).toEqual([{ what: 'FEED.FLOW(load 50 TR, drum 20 °F, liquid 95 °F)', comes: '21.371 lb/min' }])
  })

  it('says what was converted, and knows units that are computed', () => {
    expect(lines('=UNIT.CONVERT(C8:D8,"kW")/2')).toMatchObject({ words: 'C8 / 2', equalities: ['351.69 kW / 2'], wheres: [{ what: '100 TR', comes: '351.69 kW' }] })
  })

  it('takes one branch and says why; a sign before a power stands in brackets, since it binds tighter (OpenFormula 5.5)', () => {
    expect(words('=-C5^2 - SUM(C5:C7)/"a, b"')).toBe('(−50 TR)^2 − 165 / “a, b”')
    expect(lines('=IF(C5>=C6,-1,C6)')).toMatchObject({ equalities: ['−1'], reasons: ['since Load ≥ C6: 50 TR ≥ 20 °F'] })
  })

  it('is nothing where the formula cannot be read', () => {
    expect(lines('=1+')).toBeUndefined()
  })
})

describe('the trail', () => {
  it('leads back one by one or several at once, not to a sheet that is gone', () => {
    createRoot((dispose) => {
      const [here, setHere] = createSignal<Visited>({ sheet: 'A', row: 0, column: 0 })
      const [workbook, setWorkbook] = createSignal(workbookOf({ A: {}, B: {} }))
      const trail = createTrail({ workbook, here, goTo: setHere })
      for (const [sheet, row] of [['B', 1], ['A', 2], ['A', 3]] as const) trail.follow({ sheet, row, column: 0 })
      expect(trail.visited().map(({ sheet, row }) => `${sheet}${row}`)).toEqual(['A0', 'B1', 'A2'])
      trail.back()
      expect([here().row, trail.visited().length]).toEqual([2, 2])
      setWorkbook(workbookOf({ A: {} }))
      trail.back()
      expect([here().row, trail.visited().length]).toEqual([0, 0])
      trail.back()
      expect(here().row).toBe(0)
      dispose()
    })
  })
})
