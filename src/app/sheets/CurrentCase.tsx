import { createMemo, Show, type JSX } from 'solid-js'
import { casesOf, currentName } from '../../workbook/cases.ts'
import { useSession } from '../state/session.ts'
import './CurrentCase.css'

/** Which case the cells hold, over all sheets; it leads to the panel of cases. Nothing where there are no cases. */
export function CurrentCase(): JSX.Element {
  const session = useSession()
  const cases = createMemo(() => casesOf(session.document.workbook()))
  return (
    <Show when={cases().list.length > 0}>
      <button type="button" class="current-case" classList={{ other: cases().current !== null }} onClick={() => session.setPanel('Cases')}>
        <small>Case shown</small> <span>{currentName(session.document.workbook())}</span>
      </button>
    </Show>
  )
}
