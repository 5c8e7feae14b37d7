import { createSignal, type Accessor } from 'solid-js'
import type { FileContents } from '../../exchange/reading/contents.ts'
import type { ReturnedFile } from '../../exchange/return/messages.ts'
import type { Session } from '../state/session.ts'

/** What the screen asks about a file that came back. */
export type ReturnStage =
  | { readonly stage: 'changes'; readonly file: File; readonly returned: ReturnedFile }
  | { readonly stage: 'damaged'; readonly file: File; readonly problem: string; readonly contents: FileContents }

export interface Returning {
  readonly stage: Accessor<ReturnStage | undefined>
  setStage(stage: ReturnStage | undefined): void
}

const all = new WeakMap<Session, Returning>()

/** One file at a time for a session; whichever part of the screen opens it, the dialogs stand in one place. */
export function returningOf(session: Session): Returning {
  const known = all.get(session)
  if (known) return known
  const [stage, setStage] = createSignal<ReturnStage | undefined>(undefined)
  const returning: Returning = { stage, setStage: (next) => void setStage(() => next) }
  all.set(session, returning)
  return returning
}
