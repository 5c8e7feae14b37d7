import { describe, expect, it } from 'vitest'
import { hiddenValues } from '../../../../src/review/kinds/hidden-values.ts'
import type { Cell, Workbook } from '../../../../src/workbook/document.ts'
import { applyEdits } from '../../../../src/workbook/edits.ts'
import { withCells } from '../../../../src/workbook/cells.ts'
import { at, workbookOf } from '../../workbook-of.ts'
import { findOf, surveyOfWorkbook } from '../survey-of.ts'

function workbook(cells: Readonly<Record<string, Cell>>, columns: readonly number[] = []): Workbook {
  const before = workbookOf({ Drum: {} })
  return { ...before, sheets: before.sheets.map((sheet) => ({ ...withCells(sheet, Object.entries(cells).map(([address, cell]) => ({ ...at(address), cell }))), columns })) }
}
const found = (one: Workbook) => findOf(hiddenValues, surveyOfWorkbook(one))
const input = (content: Cell['content'], rest: Partial<Cell> = {}): Cell => ({ content, role: 'input', ...rest })

describe('values that do not show', () => {
  it('stand in columns too narrow for their numbers', () => {
    const narrow = workbook({ A1: input(123_456.5), A2: input(7), A3: input(98_765.25), B1: input(1) }, [24])
    const [only, ...others] = found(narrow)
    expect(others).toEqual([])
    expect(only).toMatchObject({ severity: 'warning', area: { top: 0, bottom: 2, left: 0, right: 0 }, reason: 'Column A is 24 px wide: 2 numbers in it do not show whole, such as 123457.', key: 'too narrow for 2 numbers' })
    expect(found(applyEdits(narrow, only?.mend?.edits ?? []).workbook)).toEqual([])
  })

  it('are texts of which nothing is left, unless they run on over an empty cell', () => {
    const text = { content: '="closed"', role: 'result' } as const
    expect(found(workbook({ A1: text, B1: input(1) }, [16])).map(({ severity }) => severity)).toEqual(['remark'])
    expect(found(workbook({ A1: text }, [16]))).toEqual([])
    expect(found(workbook({ A1: text, B1: input(1) }, [40]))).toEqual([])
  })

  it('are numbers that read as nothing, or as others', () => {
    const coarse = found(workbook({ A1: input(0.004, { decimals: 1 }), A3: input(1.4, { decimals: 0 }), A5: input(1449, { digits: 1 }) }))
    expect(coarse.map(({ severity, reason }) => [severity, reason])).toEqual([
      ['remark', 'Shows 0.0, and is 0.004.'], ['remark', 'Shows 1, and is 1.4: 29 % off.'], ['remark', 'Shows 1000, and is 1449: 31 % off.'],
    ])
  })

  it('are none with usual widths and digits, nor where a part of the number means nothing', () => {
    expect(found(workbook({ A1: input(123_456.5), A2: input(0.004), A3: input(12.34, { decimals: 1 }), A4: input(0, { decimals: 0 }), A5: input(1e-14, { decimals: 2 }) }))).toEqual([])
    expect(found(workbook({ A1: input(0.4, { decimals: 0 }), B1: { content: 'psig', role: 'unit' }, A2: input(0.4, { decimals: 0 }), B2: { content: '°F', role: 'unit' }, A3: input(0.04, { decimals: 1 }), B3: { content: '%', role: 'unit' } }))).toEqual([])
  })
})
