import { describe, expect, it } from 'vitest'
import type { CalculationRequest } from '../../src/calc/messages.ts'
import { inOneTurn } from '../../src/calc/turns.ts'
import type { Edit } from '../../src/workbook/edits.ts'

const entry = (value: number): Edit => ({ kind: 'cells', sheet: 'Duty', cells: [{ row: 0, column: 0, cell: { content: value, role: 'input' } }] })
const apply = (id: number, ...edits: Edit[]): CalculationRequest => ({ id, method: 'apply', args: [edits] })
const states = (id: number): CalculationRequest => ({ id, method: 'states', args: [] })

describe('what came while the graph was at work', () => {
  it('entries in cells are one request, answered before what was asked between them', () => {
    expect(inOneTurn([apply(1, entry(1)), states(2), apply(3, entry(2), entry(3)), states(4)])).toEqual([
      { ids: [1, 3], request: apply(1, entry(1), entry(2), entry(3)) },
      { ids: [2], request: states(2) },
      { ids: [4], request: states(4) },
    ])
  })

  it('other edits keep their place, and no entry passes them', () => {
    const rename: Edit = { kind: 'renameSheet', sheet: 'Duty', name: 'Load' }
    const following: Edit = { ...entry(7), follow: true } as Edit
    for (const other of [rename, following]) {
      expect(inOneTurn([apply(1, entry(1)), apply(2, entry(2)), apply(3, other), apply(4, entry(3)), states(5)])).toEqual([
        { ids: [1, 2], request: apply(1, entry(1), entry(2)) },
        { ids: [3], request: apply(3, other) },
        { ids: [4], request: apply(4, entry(3)) },
        { ids: [5], request: states(5) },
      ])
    }
  })

  it('edits that were prepared stay with the ones they go with', () => {
    const prepare: CalculationRequest = { id: 2, method: 'prepare', args: [[entry(2)]] }
    expect(inOneTurn([apply(1, entry(1)), prepare, apply(3, entry(3))]).map(({ ids }) => ids)).toEqual([[1], [2], [3]])
  })

  it('nothing is nothing', () => {
    expect(inOneTurn([])).toEqual([])
  })
})
