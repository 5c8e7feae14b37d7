import { formatNumber } from '../../../../functions/units/format.ts'
import type { CellContent } from '../../../workbook/document.ts'
import { entryOf } from '../../../workbook/entry.ts'

/** "1 row", "12 000 rows" */
export const countOf = (count: number, what: string): string => `${String(count).replace(/\B(?=(\d{3})+$)/g, ' ')} ${what}${count === 1 ? '' : 's'}`

/** What a cell will hold, numbers to six digits. */
export const contentWords = (content: CellContent | undefined): string => (typeof content === 'number' ? formatNumber(content) : entryOf(content ?? null))
