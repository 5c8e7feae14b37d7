import { For, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import { stateWords } from './state-words.ts'
import './SheetList.css'

/** The sheets in the order of the job, each with its state. */
export function SheetList(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  return (
    <nav class="sheet-list" aria-label="Sheets">
      <ol>
        <For each={session.document.workbook().sheets.map(({ name }) => name)}>
          {(name) => {
            const state = () => stateWords(session.sheetStates().get(name))
            return (
              <li>
                <button type="button" class={`sheet ${state().kind}`} aria-current={session.sheet().name === name ? 'page' : undefined} onClick={() => {
                  session.show(name)
                  props.focusGrid()
                }}>
                  <span class="sheet-mark" aria-hidden="true" />
                  <span class="sheet-name">{name}</span>
                  <span class="sheet-state">{state().words}</span>
                </button>
              </li>
            )
          }}
        </For>
      </ol>
    </nav>
  )
}
