import { createRoot, createSignal } from 'solid-js'
import { describe, expect, it } from 'vitest'
import { formulaInWords } from '../../src/app/panel/formula-in-words.ts'
import { createTrail, type Visited } from '../../src/app/state/trail.ts'
import { Graph } from '../../src/calc/graph.ts'
import { at, workbookOf } from './workbook-of.ts'

describe('a formula in words', () => {
  const words = (formula: string) => {
    const graph = new Graph(workbookOf({ S: { C5: 50, D5: ['TR', 'unit'], C6: 20, D6: ['°F', 'unit'], C7: 95, D7: ['°F', 'unit'], D9: ['lb/min', 'unit'], Z1: formula } }))
    const { row, column } = at('Z1')
    return formulaInWords(formula, graph.feeds('S', row, column), ({ value, unit }) => (value === undefined ? 'a range' : [value, unit].filter(Boolean).join(' ')))
  }

  it('names the arguments of our functions and puts the values in', () => {
    expect(words('=FEED.FLOW(C5:D5, C6&D6,C7:D7,D9)')).toBe('FEED.FLOW(load 50 TR, drum 20 °F, liquid 95 °F, unit lb/min)')
    expect(words('=FEED.FLOW(C5:D5,C6:D6,"95 °F","lb/min")*2')).toBe('FEED.FLOW(load 50 TR, drum 20 °F, liquid 95 °F, unit lb/min) × 2')
  })

  it('leaves what is no reference as written, a sign close to its value', () => {
    expect(words('=-C5^2 - SUM(C5:C7)/"a, b"')).toBe('−50 TR^2 − SUM(a range) ÷ "a, b"')
    expect(words('=IF(C5>=C6,-1,C6)')).toBe('IF(50 TR ≥ 20 °F, −1, 20 °F)')
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
