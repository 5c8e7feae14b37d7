import { createMemo, type Accessor } from 'solid-js'
import { NO_CASES, type HeldContent } from '../../workbook/cases.ts'
import type { Workbook } from '../../workbook/document.ts'
import { MAX_COLUMNS } from '../../workbook/limits.ts'

const NONE: ReadonlyMap<number, HeldContent> = new Map()

/** What the base has in a cell of the sheet shown in which the current case has a value of its own; undefined in all others. */
export function createCaseBases(workbook: Accessor<Workbook>, sheetName: Accessor<string>): (row: number, column: number) => HeldContent | undefined {
  const cases = createMemo(() => workbook().cases)
  const here = createMemo(() => {
    const { list, current } = cases() ?? NO_CASES
    const own = current === null ? [] : (list[current]?.aside ?? []).filter(({ sheet }) => sheet === sheetName())
    return own.length === 0 ? NONE : new Map<number, HeldContent>(own.map((value) => [value.row * MAX_COLUMNS + value.column, value]))
  })
  return (row, column) => here().get(row * MAX_COLUMNS + column)
}
