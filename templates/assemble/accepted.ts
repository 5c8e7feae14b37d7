import { sheetOf } from '../../src/workbook/commands.ts'
import { usedRange, type Workbook } from '../../src/workbook/document.ts'
import { NO_REVIEW } from '../../src/workbook/review-record.ts'
import { normalAcceptances } from '../../src/workbook/review/review-edit.ts'

/** Findings of one kind that a demo lets stand, on whole sheets. */
export interface AcceptedOnSheets {
  readonly kind: string
  readonly key: string
  readonly sheets: readonly string[]
  /** Why. */
  readonly note: string
}

/** The workbook with those accepted beside what came accepted with the templates. @throws WorkbookProblem where it has no such sheet. */
export function withAccepted(workbook: Workbook, added: readonly AcceptedOnSheets[]): Workbook {
  const { marks, accepted, record } = workbook.review ?? NO_REVIEW
  const more = added.flatMap(({ kind, key, sheets, note }) => sheets.map((name) => {
    const sheet = sheetOf(workbook, name)
    const { rows, columns } = usedRange(sheet)
    return { kind, sheet: sheet.name, area: { top: 0, bottom: rows - 1, left: 0, right: columns - 1 }, key, note }
  }))
  return added.length === 0 ? workbook : { ...workbook, review: { marks, accepted: normalAcceptances([...accepted, ...more]), record } }
}
