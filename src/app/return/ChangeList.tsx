import { For, Show, type JSX } from 'solid-js'
import type { Change } from '../../exchange/return/changes.ts'
import { createCapped } from './capped.ts'
import { counted } from '../parts/counted.ts'

/** Changes as a table: where, what stands in Lowside, what in the file; of many, some at first. */
export function ChangeList(props: { readonly changes: readonly Change[]; readonly label: string }): JSX.Element {
  const { shown, rest, more } = createCapped(() => props.changes)
  return (
    <>
      <table class="return-table" aria-label={props.label}>
        <thead><tr><th scope="col">Place</th><th scope="col">In Lowside</th><th scope="col">In the file</th></tr></thead>
        <tbody>
          <For each={shown()}>
            {(change) => (
              <tr>
                <th scope="row">{change.place}<Show when={detailOf(change)}>{(detail) => <small>{detail()}</small>}</Show></th>
                <td><span class="return-content" title={change.was}>{change.was}</span></td>
                <td><span class="return-content" title={change.is}>{change.is}</span></td>
              </tr>
            )}
          </For>
        </tbody>
      </table>
      <Show when={rest() > 0}><button type="button" class="plain-button return-more" onClick={more}>Show more; {counted(rest(), 'is', 'are')} not shown</button></Show>
    </>
  )
}

function detailOf(change: Change): string {
  if (change.kind !== 'workings') return ''
  return [change.of, change.step === '' ? '' : `step “${change.step}”`, change.firstCalledIn === '' ? '' : `first called in ${change.firstCalledIn}`].filter((part) => part !== '').join(', ')
}
