import { createMemo, For, Show, type JSX } from 'solid-js'
import { BASE, casesOf } from '../../../workbook/cases.ts'
import { useSession } from '../../state/session.ts'

/** The head of a table with a column for the base and one for each case. */
export function CaseHeads(props: { readonly first: string }): JSX.Element {
  const session = useSession()
  const cases = createMemo(() => casesOf(session.document.workbook()))
  const names = () => [BASE, ...cases().list.map(({ name }) => name)]
  return (
    <thead>
      <tr>
        <th scope="col">{props.first}</th>
        <For each={names()}>
          {(name, index) => <th scope="col">{name}<Show when={index() === (cases().current ?? -1) + 1}><small>current</small></Show></th>}
        </For>
      </tr>
    </thead>
  )
}
