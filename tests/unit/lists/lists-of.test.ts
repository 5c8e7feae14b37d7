import { describe, expect, it } from 'vitest'
import { listsOf } from '../../../src/exchange/lists/lists-of.ts'
import { readTemplate } from '../../templates/open-template.ts'
import { workbookOf } from '../workbook-of.ts'
import { inventory, listNamed } from './read-list.ts'

const namesIn = (template: string): string[] => listsOf(readTemplate(`templates/${template}.lowside.json`)).map(({ name }) => name)

describe('the lists of a workbook', () => {
  it('are known by how they are built, in every template that has tables of inputs', () => {
    expect(namesIn('charge-inventory')).toEqual(['Charge', 'Charge totals: By zone', 'Charge totals: By kind of part', 'Charge totals: By suction level'])
    expect(namesIn('zone-setpoints')).toContain('Zones')
    expect(namesIn('relief')).toEqual(['Relief'])
    expect(namesIn('plant')).toEqual(expect.arrayContaining(['Zones', 'Drums', 'Relief', 'Charge']))
  })
  it('do not take a sheet of one step a row for a list', () => {
    expect(namesIn('saturation-table')).toEqual([])
    expect(listsOf(workbookOf({ Drum: { B1: ['Step', 'heading'], C1: ['Value', 'heading'], B2: ['Load', 'label'], C2: 85 } }))).toEqual([])
  })
  it('know rows, units, choices and what the formulas need of a column', () => {
    const list = listNamed(inventory(), 'Charge')
    expect([list.headingRow, list.firstRow, list.lastRow, list.freeRows.length]).toEqual([4, 7, 64, 0])
    const column = (heading: string) => list.columns.find((one) => one.heading === heading)
    expect(column('Inside diameter')).toMatchObject({ unit: 'in', kind: 'number' })
    expect(column('Shape')?.choices.toSorted()).toEqual(['horizontal', 'pipe', 'vertical', 'volume'])
    expect(column('Heads')?.choices).toEqual(['flat', '2:1', 'hemi', 'dished 6%', 'dished 10%'])
    expect(column('Volume given')?.uses.map(({ when }) => when.map(({ texts, isOneOf }) => [isOneOf, ...texts]))).toEqual([[[true, 'volume']]])
    expect(column('Where the fill comes from')).toMatchObject({ isRemark: true })
    expect(list.models.filter(({ kind }) => kind === 'formula').map(({ column: at }) => at)).toEqual([14, 15, 16])
  })
  it('take empty rows with the same formulas for free ones, and no formula for a model that someone typed over', () => {
    const [list] = listsOf(workbookOf({ Parts: {
      A1: ['Part', 'heading'], B1: ['Mass', 'heading'], C1: ['Double', 'heading'], B2: ['kg', 'unit'],
      A3: ['one', 'input'], B3: 1, C3: '=B3*2', A4: ['two', 'input'], B4: 2, C4: '=B4*2',
      A5: ['three', 'input'], B5: 3, C5: '=B5+99', A6: [null, 'input'], B6: [null, 'input'], C6: '=B6*2',
    } }))
    expect(list).toMatchObject({ firstRow: 2, lastRow: 5, lastFilledRow: 4, freeRows: [5] })
    expect(list?.models.find(({ column }) => column === 2)?.row).not.toBe(4)
  })
})
