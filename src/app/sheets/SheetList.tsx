import { For, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import { add } from './sheet-actions.ts'
import { CurrentCase } from './CurrentCase.tsx'
import { SheetItem } from './SheetItem.tsx'
import './SheetList.css'

/** The sheets in the order of the job, each with its state. */
export function SheetList(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  let list: HTMLElement | undefined
  const focusSheet = (name: string) => list?.querySelector<HTMLElement>(`[data-sheet="${CSS.escape(name)}"]`)?.focus()
  return (
    <nav ref={(element) => (list = element)} class="sheet-list" aria-label="Sheets">
      <CurrentCase />
      <ol>
        <For each={session.document.workbook().sheets.map(({ name }) => name)}>
          {(name) => <SheetItem name={name} focusGrid={props.focusGrid} focusSheet={focusSheet} />}
        </For>
      </ol>
      <button type="button" class="sheet-add" onClick={() => focusSheet(add(session))}>Add a sheet</button>
    </nav>
  )
}
