import { createSignal, For, Show, type JSX } from 'solid-js'
import { keepMapping, removeMapping, renameMapping, toKept } from '../../../exchange/lists/kept.ts'
import { useSession } from '../../state/session.ts'
import type { ListWizardState } from './list-wizard-state.ts'

/** The mappings that the workbook keeps: one that fits the file to begin with, and keeping this one under a name. */
export function KeptMappings(props: { readonly state: ListWizardState }): JSX.Element {
  const session = useSession()
  const [name, setName] = createSignal('')
  const [said, setSaid] = createSignal('')
  const chosen = () => props.state.keptName()
  const isTaken = () => session.document.workbook().mappings?.some((one) => one.name.toLowerCase() === name().trim().toLowerCase()) === true
  const proposed = () => name().trim() || chosen() || ''

  const keep = () => {
    const kept = proposed()
    if (kept === '') {
      setSaid('A name is needed to keep it under')
      return
    }
    const { list, source, mapping } = props.state
    session.act('Keep mapping', (workbook) => keepMapping(workbook, toKept(kept, list(), source(), mapping())))
    told(`Kept as “${kept}”, in the workbook`, kept)
  }
  const rename = () => {
    const [from, to] = [chosen(), name().trim()]
    if (from === undefined || to === '') {
      setSaid('Type the new name first')
      return
    }
    session.act('Rename mapping', (workbook) => renameMapping(workbook, from, to))
    told(`“${from}” is now “${to}”`, to)
  }
  const remove = () => {
    const gone = chosen()
    if (gone === undefined) return
    session.act('Remove mapping', (workbook) => removeMapping(workbook, gone))
    props.state.chooseKept(undefined)
    setSaid(`“${gone}” is removed from the workbook; undo brings it back`)
  }
  /** What the workbook refused, it says itself. */
  function told(words: string, kept: string): void {
    const refused = session.notice()
    if (refused?.tone === 'problem') {
      setSaid(refused.text)
      return
    }
    setSaid(words)
    setName('')
    props.state.noteKept(kept)
  }

  return (
    <div class="list-kept" role="group" aria-label="Kept mappings">
      <label>Mapping
        <select value={chosen() ?? ''} onChange={(event) => props.state.chooseKept(event.currentTarget.value === '' ? undefined : event.currentTarget.value)}>
          <option value="">as the headings suggest</option>
          <For each={props.state.fitting()}>{(kept) => <option value={kept.name} selected={kept.name === chosen()}>kept: {kept.name}</option>}</For>
        </select>
      </label>
      <label>Keep this mapping as
        <input value={name()} maxlength={100} placeholder={chosen() ?? 'a name'} onInput={(event) => setName(event.currentTarget.value)} onKeyDown={(event) => event.key === 'Enter' && (event.preventDefault(), keep())} />
      </label>
      <button type="button" class="plain-button" onClick={keep}>{isTaken() ? 'Keep in its place' : 'Keep'}</button>
      <Show when={chosen() !== undefined}>
        <button type="button" class="plain-button" onClick={rename}>Rename</button>
        <button type="button" class="plain-button" onClick={remove}>Remove</button>
      </Show>
      <p class="list-said" role="status">{said()}</p>
    </div>
  )
}
