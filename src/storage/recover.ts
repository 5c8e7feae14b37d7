import type { Workbook } from '../workbook/document.ts'
import { applyEdits } from '../workbook/edits.ts'
import { readWorkbook } from '../workbook/file.ts'
import { MIGRATIONS } from '../workbook/migrations.ts'
import { STORED_VERSION, type BookContents, type Stored } from './shelf.ts'
import { editsOf, isIntact } from './stored.ts'

export interface Recovered extends RecoveredFrom {
  readonly workbook: Workbook
}

/** How much of what is kept a workbook contains. */
export interface RecoveredFrom {
  /** The last entry that it contains. */
  readonly number: number
  /** The numbers of the snapshots that can be read. */
  readonly snapshots: readonly number[]
  /** How many of the latest changes could not be read and are not in it. */
  readonly lost: number
}

/** The workbook from its newest sound snapshot and the log after it, as far as that can be read; or why there is none. */
export function recover({ entries, snapshots }: BookContents, report?: (share: number) => void): Recovered | { readonly problem: string } {
  if ([...entries, ...snapshots].some(({ version }) => version > STORED_VERSION)) {
    return { problem: 'it was kept by a newer Lowside, which can open it; it is left as it is' }
  }
  const sound = snapshots.filter(isIntact)
  for (const snapshot of sound.toReversed()) {
    const read = readWorkbook(snapshot.text, MIGRATIONS, report)
    if ('problems' in read) continue
    const { workbook, number } = replay(read.workbook, snapshot.number, entries)
    const last = Math.max(number, ...[...entries, ...snapshots].map((one) => one.number))
    return { workbook, number, snapshots: sound.map((one) => one.number).filter((one) => one <= snapshot.number), lost: last - number }
  }
  return { problem: 'no snapshot of it can be read; what is there is left as it is' }
}

/** Ends before the first entry that is missing, damaged or does not fit. */
function replay(start: Workbook, after: number, entries: readonly Stored[]): { readonly workbook: Workbook; readonly number: number } {
  let workbook = start
  let number = after
  for (const entry of entries) {
    if (entry.number <= after) continue
    if (entry.number !== number + 1 || !isIntact(entry)) break
    try {
      workbook = applyEdits(workbook, editsOf(entry)).workbook
    } catch {
      break
    }
    number = entry.number
  }
  return { workbook, number }
}
