import { expect, it } from 'vitest'
import { Cells, expectRestated } from './cells.ts'

const open = (): Cells => new Cells('interlocks', 'Interlocks')
const check = (cells: Cells, label: string) => cells.value(`C${cells.row(label)}`)

it('without a suction accumulator the drum’s own cut-out stops the compressors (common practice, no published source)', () => {
  const cells = open()
  expect(cells.value(`E${cells.row('High-level cut-out of the suction accumulator')}`)).toBe('stop')
  expect(cells.value(`E${cells.row('High-level cut-out of the drum')}`)).toBe('–')
  cells.type('C4', 'no')
  expect(cells.value(`E${cells.row('High-level cut-out of the drum')}`)).toBe('stop')
  expect(check(cells, 'Something stops the compressors on high level')).toBe(true)
})

it.each([
  ['High-level cut-out of the suction accumulator', 'E', 'Something stops the compressors on high level'],
  ['High level in the drum (high float)', 'C', 'High level shuts the feed'],
  ['Defrost of a coil of the drum', 'F', 'Defrost holds feed and suction shut'],
  ['Power or control air lost', 'C', 'Loss of power shuts the feed'],
  ['All compressors stopped', 'C', 'Feed is shut while no compressor runs'],
])('%s without its effect is told', (cause, column, label) => {
  const cells = open()
  expect(check(cells, label)).toBe(true)
  expect(check(cells.type(`${column}${cells.row(cause)}`, '–'), label)).toBe(false)
})

it('floats stand in order, each with its differential below the next', () => {
  const cells = open()
  const float = cells.row('Operating float')
  expect(check(cells, 'Floats stand in order and apart')).toBe(true)
  expect(check(cells.type(`E${float}`, '14'), 'Floats stand in order and apart')).toBe(false)
})

it('counts the tests passed', () => {
  const cells = open()
  const record = cells.row('Record of tests') + 1
  cells.type(`H${record}`, 'yes').type(`H${record + 1}`, 'no')
  expect(check(cells, 'Tests passed')).toBe(1)
  expect(check(cells, 'Tests not yet passed')).toBe(3)
})

it('restating keeps the order of the floats', () => expectRestated('interlocks'))
