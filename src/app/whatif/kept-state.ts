import { createRoot } from 'solid-js'
import type { Session } from '../state/session.ts'

const kept = new WeakMap<Session, Map<string, { readonly opened: number; readonly state: unknown; readonly dispose: () => void }>>()

/** What a panel was told, kept while another one is open: until another workbook is opened. */
export function keptState<T>(session: Session, panel: string, make: (session: Session) => T): T {
  const panels = kept.get(session) ?? new Map()
  kept.set(session, panels)
  const before = panels.get(panel)
  // What a panel's name stands for was made by the same `make`.
  if (before?.opened === session.opened()) return before.state as T
  before?.dispose()
  return createRoot((dispose) => {
    const state = make(session)
    panels.set(panel, { opened: session.opened(), state, dispose })
    return state
  })
}
