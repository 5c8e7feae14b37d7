import { describe, expect, it } from 'vitest'
import { Graph } from '../../src/calc/graph.ts'
import { printAddress } from '../../src/workbook/address.ts'
import { at, workbookOf, type Put } from './workbook-of.ts'

const AREA = { top: 0, left: 0, bottom: 1_000_000 - 1, right: 0 }

const graphOf = (sheets: Readonly<Record<string, Readonly<Record<string, Put>>>>, names: Readonly<Record<string, string>> = {}) => new Graph(workbookOf(sheets, names))

const feeds = (graph: Graph, sheet: string, address: string) => graph.feeds(sheet, at(address).row, at(address).column)
const users = (graph: Graph, sheet: string, address: string) => graph.users(sheet, at(address).row, at(address).column)
const userAddresses = (graph: Graph, sheet: string, address: string) => users(graph, sheet, address).places.map((place) => `${place.sheet}!${printAddress(place.row, place.column)}`)

describe('what feeds a cell', () => {
  const graph = graphOf({
    Duty: {
      B5: ['Load', 'label'], C5: [50, 'input'], D5: ['TR', 'unit'], B6: ['Drum', 'label'], C6: [20, 'input'], D6: ['°F', 'unit'],
      B7: ['Liquid', 'label'], C7: [95, 'input'], D7: ['°F', 'unit'], B9: ['Vapour', 'label'], C9: '=FEED.FLOW(C5:D5,C6:D6,Liquid,D9)', D9: ['lb/min', 'unit'],
      C10: '=C5*2+Away!A1+SUM(C5:C7)',
      F1: ['Width', 'heading'], F2: ['in', 'unit'], F3: [4, 'input'], G3: '=UNIT.CONVERT(F3&" "&F$2,"mm")', H3: '=Gone!A1+F3&"x"',
    },
    Away: { A1: 7 },
  }, { Liquid: 'Duty!$C$7:$D$7' })

  it('is each reference and name with its label, value and unit, a value and its unit being one quantity', () => {
    expect(feeds(graph, 'Duty', 'C9')).toEqual([
      { start: 11, end: 16, sheet: 'Duty', area: { top: 4, left: 2, bottom: 4, right: 3 }, label: 'Load', value: 50, unit: 'TR', quantity: true },
      { start: 17, end: 22, sheet: 'Duty', area: { top: 5, left: 2, bottom: 5, right: 3 }, label: 'Drum', value: 20, unit: '°F', quantity: true },
      { start: 23, end: 29, sheet: 'Duty', area: { top: 6, left: 2, bottom: 6, right: 3 }, label: 'Liquid', value: 95, unit: '°F', quantity: true },
      { start: 30, end: 32, sheet: 'Duty', area: { top: 8, left: 3, bottom: 8, right: 3 }, label: 'Vapour', value: 'lb/min', unit: undefined, quantity: false },
    ])
  })

  it('takes ranges as ranges, cells of other sheets, and the unit that stands beside a single cell', () => {
    expect(feeds(graph, 'Duty', 'C10')).toMatchObject([
      { sheet: 'Duty', value: 50, unit: 'TR', quantity: false },
      { sheet: 'Away', value: 7, unit: undefined, quantity: false },
      { sheet: 'Duty', area: { top: 4, left: 2, bottom: 6, right: 2 }, value: undefined, unit: undefined },
    ])
  })

  it('takes a value that is joined to the unit of its table as one quantity, and a sheet that is gone as nothing', () => {
    expect(feeds(graph, 'Duty', 'G3')).toMatchObject([{ start: 14, end: 24, label: 'Width', value: 4, unit: 'in', quantity: true }])
    expect(feeds(graph, 'Duty', 'H3')).toMatchObject([{ area: { top: 2, left: 5 }, value: 4, quantity: false }])
  })

  it('is nothing for a number or an empty cell', () => {
    expect([feeds(graph, 'Duty', 'C5'), feeds(graph, 'Duty', 'Z99')]).toEqual([[], []])
  })
})

describe('what uses a cell', () => {
  it('is found directly, through ranges built on ranges, names and other sheets, each once, in order', () => {
    const graph = graphOf({
      One: { A1: 1, A2: 2, A3: 3, B1: '=A1+A1', B2: '=SUM(A1:A2)', B3: '=SUM(A1:A3)', B4: '=SUM(A:A)', B5: '=Driver*2', B6: '=A2', C1: '=B1' },
      Two: { A1: '=One!A1', A2: '=Driver+SUM(One!A1:A3)' },
    }, { Driver: 'One!$A$1' })
    expect(userAddresses(graph, 'One', 'A1')).toEqual(['One!B1', 'One!B2', 'One!B3', 'One!B4', 'One!B5', 'Two!A1', 'Two!A2'])
    expect(userAddresses(graph, 'One', 'A3')).toEqual(['One!B3', 'One!B4', 'Two!A2'])
    expect(userAddresses(graph, 'One', 'C1')).toEqual([])
    expect(userAddresses(graph, 'One', 'Z99')).toEqual([])
  })

  it('follows an edit, and says what a user is called and comes to', () => {
    const graph = graphOf({ S: { A1: 5, B2: ['Twice', 'label'], C2: '=A1*2', D2: ['TR', 'unit'] } })
    expect(users(graph, 'S', 'A1')).toEqual({ places: [{ sheet: 'S', row: 1, column: 2, label: 'Twice', value: 10, unit: 'TR' }], count: 1 })
    graph.apply([{ kind: 'cells', sheet: 'S', cells: [{ row: 1, column: 2, cell: null }, { row: 4, column: 0, cell: { content: '=A1', role: 'result' } }] }])
    expect(userAddresses(graph, 'S', 'A1')).toEqual(['S!A5'])
  })

  it('counts many and lists the first', () => {
    const many = Object.fromEntries(Array.from({ length: 500 }, (_, index) => [`B${index + 1}`, '=A$1']))
    const graph = graphOf({ S: { A1: 1, ...many } })
    const found = users(graph, 'S', 'A1')
    expect([found.count, found.places.length, found.places[1]?.row]).toEqual([500, 200, 1])
  })
})

describe('what an area adds up to', () => {
  const graph = graphOf({
    S: { A1: ['Load', 'heading'], A2: ['TR', 'unit'], A3: 4, A4: '=A3*2', A5: 'none', A6: -1, B10: 1, C10: ['ft', 'unit'], B11: 2, C11: ['in', 'unit'], B12: 3, E1: 5, E2: 6 },
  })
  const total = (from: string, to: string) => graph.total('S', [{ top: at(from).row, left: at(from).column, bottom: at(to).row, right: at(to).column }])

  it('is count, sum, least and greatest, with the unit that all share', () => {
    expect(graph.total('S', [AREA])).toEqual({ count: 3, sum: 11, least: -1, greatest: 8, unit: 'TR' })
    expect(total('B10', 'C10')).toEqual({ count: 1, sum: 1, least: 1, greatest: 1, unit: 'ft' })
    expect(total('E1', 'E2')).toMatchObject({ sum: 11, unit: undefined })
  })

  it('has no unit where they differ or one has none, and is nothing without numbers', () => {
    expect(total('B10', 'C11')?.unit).toBeNull()
    expect(total('B11', 'B12')?.unit).toBeNull()
    expect([total('A1', 'A2'), total('Z90', 'Z99')]).toEqual([undefined, undefined])
  })
})
