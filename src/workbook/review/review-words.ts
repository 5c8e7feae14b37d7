import { printReference, type Area } from '../address.ts'
import type { AcceptedFinding, CheckMark } from '../review-record.ts'

/** Where a mark or an acceptance stands: `Duty!C5:C9`, `Duty!C5`, or the sheet. */
export function reviewPlace({ sheet, area }: { readonly sheet: string; readonly area: Area | null }): string {
  if (area === null) return sheet
  const corner = (row: number, column: number) => ({ row, column, rowAbsolute: false, columnAbsolute: false })
  const one = area.top === area.bottom && area.left === area.right
  return printReference({ sheet, from: corner(area.top, area.left), to: one ? null : corner(area.bottom, area.right) })
}

/** How it was checked, and what was said of it. */
export function markWords({ method, note, inCase }: Pick<CheckMark, 'method' | 'note' | 'inCase'>): string {
  return [method, ...(inCase === undefined ? [] : [`in the case ${inCase}`])].join(', ') + (note === '' ? '' : `: ${note}`)
}

/** What is accepted of which kind of finding, with the reason. */
export const acceptanceWords = ({ key, note }: Pick<AcceptedFinding, 'key' | 'note'>): string => (note === '' ? key : `${note} (${key})`)
