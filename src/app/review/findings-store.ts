import { createRoot, createSignal, type Accessor } from 'solid-js'
import type { Finding } from '../../review/finding.ts'
import type { LookedFor } from '../../review/messages.ts'
import type { Workbook } from '../../workbook/document.ts'
import type { Session } from '../state/session.ts'

/** What was found when it was last looked for. */
export interface FindingsFound {
  readonly findings: readonly Finding[]
  readonly lookedFor: readonly LookedFor[]
  /** The title of the template that the workbook is like. */
  readonly template: string | undefined
  /** The workbook as it was then. */
  readonly of: Workbook
}

export interface FindingsStore {
  /** Undefined until the findings of the open workbook have been looked for. */
  readonly found: Accessor<FindingsFound | undefined>
  setFound(found: FindingsFound): void
  /** How many findings of a sheet nobody has accepted; undefined until they have been looked for. */
  openOn(sheet: string): number | undefined
  /** Whether the workbook has changed since. */
  readonly isOld: Accessor<boolean>
}

const stores = new WeakMap<Session, FindingsStore>()

/** The findings of the open workbook: for the panel that looks for them, and for the sheet list. */
export function findingsOf(session: Session): FindingsStore {
  const known = stores.get(session)
  if (known) return known
  const store = createRoot(() => createStore(session))
  stores.set(session, store)
  return store
}

function createStore({ opened, document }: Pick<Session, 'opened' | 'document'>): FindingsStore {
  const [kept, setKept] = createSignal<{ readonly found: FindingsFound; readonly counts: ReadonlyMap<string, number>; readonly opened: number } | undefined>(undefined)
  const current = () => (kept()?.opened === opened() ? kept() : undefined)
  return {
    found: () => current()?.found,
    setFound: (found) => void setKept({ found, counts: openBySheet(found), opened: opened() }),
    openOn: (sheet) => current() && (current()?.counts.get(sheet) ?? 0),
    isOld: () => current() !== undefined && current()?.found.of !== document.workbook(),
  }
}

function openBySheet({ findings }: FindingsFound): ReadonlyMap<string, number> {
  const counts = new Map<string, number>()
  for (const { sheet, accepted } of findings) if (accepted === undefined) counts.set(sheet, (counts.get(sheet) ?? 0) + 1)
  return counts
}
