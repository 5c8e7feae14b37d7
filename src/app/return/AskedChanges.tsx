import { For, Show, type JSX } from 'solid-js'
import { canBeTaken, KIND_WORDS, type AskedChange } from '../../exchange/return/changes.ts'
import { createCapped } from './capped.ts'
import { counted } from '../parts/counted.ts'

interface Props {
  readonly kind: AskedChange['kind']
  readonly changes: readonly AskedChange[]
  readonly taken: ReadonlySet<number>
  choose(changes: readonly AskedChange[], isTaken: boolean): void
}

/** Changes of a kind, each with its choice, and the choice for all of them. */
export function AskedChanges(props: Props): JSX.Element {
  const { shown, rest, more } = createCapped(() => props.changes)
  const able = () => props.changes.filter(canBeTaken)
  const count = () => able().filter(({ id }) => props.taken.has(id)).length
  const heading = () => KIND_WORDS[props.kind]
  return (
    <details class="return-part" open={props.changes.length <= FEW}>
      <summary><h3>{heading()}: {props.changes.length}</h3><span>{count() === 0 ? 'none taken over' : `${count()} taken over`}</span></summary>
      <Show when={able().length > 1}>
        <div class="return-all" role="group" aria-label={`All of: ${heading()}`}>
          <button type="button" class="plain-button" disabled={count() === able().length} onClick={() => props.choose(able(), true)}>Take all {able().length} over</button>
          <button type="button" class="plain-button" disabled={count() === 0} onClick={() => props.choose(able(), false)}>Leave all</button>
        </div>
      </Show>
      <ul class="return-asked">
        <For each={shown()}>
          {(change) => (
            <li>
              <Show when={'words' in change.taking} fallback={<p class="return-place"><strong>{change.place}</strong></p>}>
                <label class="return-place">
                  <input type="checkbox" checked={props.taken.has(change.id)} aria-describedby={`return-${change.id}`} onChange={(event) => props.choose([change], event.currentTarget.checked)} />
                  <strong>{change.place}</strong>
                </label>
              </Show>
              <dl id={`return-${change.id}`}>
                <dt>In Lowside</dt><dd class="return-content" title={change.was}>{change.was}</dd>
                <dt>In the file</dt><dd class="return-content" title={change.is}>{change.is}</dd>
                <dt>{'words' in change.taking ? 'Taken over' : 'Cannot be'}</dt><dd>{'words' in change.taking ? change.taking.words : `${change.taking.refused}.`}</dd>
              </dl>
            </li>
          )}
        </For>
      </ul>
      <Show when={rest() > 0}><button type="button" class="plain-button return-more" onClick={more}>Show more; {counted(rest(), 'is', 'are')} not shown, the choice for all holds for them too</button></Show>
    </details>
  )
}

/** So many are shown without being asked for. */
const FEW = 12
