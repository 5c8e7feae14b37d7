import { formatNumber } from '../../../../functions/units/format.ts'
import type { CellContent } from '../../../workbook/document.ts'
import { entryOf } from '../../../workbook/entry.ts'

/** What a cell will hold, numbers to six digits. */
export const contentWords = (content: CellContent | undefined): string => (typeof content === 'number' ? formatNumber(content) : entryOf(content ?? null))
