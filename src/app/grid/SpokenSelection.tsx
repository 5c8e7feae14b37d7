import type { JSX } from 'solid-js'
import { isOneCell, selectionWords } from '../state/on-selection.ts'
import { useSession } from '../state/session.ts'

/** Says what is selected as soon as it is more than the active cell, which does not move as the selection is stretched. */
export function SpokenSelection(): JSX.Element {
  const session = useSession()
  return <p class="unseen" aria-live="polite">{isOneCell(session) ? '' : `${selectionWords(session)} selected`}</p>
}
