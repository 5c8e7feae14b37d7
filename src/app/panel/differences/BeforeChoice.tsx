import { For, Show, type JSX } from 'solid-js'
import { OPENED_ENDINGS } from '../../files/file-actions.ts'
import { chooseFile } from '../../files/file-access.ts'
import { templates } from '../../files/library.ts'
import { useSession } from '../../state/session.ts'
import type { Choice, DifferencesState } from './differences-state.ts'

/** What the open workbook is compared with. */
export function BeforeChoice(props: { readonly state: DifferencesState }): JSX.Element {
  const session = useSession()
  const radio = (choice: Choice, words: string) => (
    <label><input type="radio" name="difference-before" checked={props.state.choice() === choice} onChange={() => props.state.choose(choice)} />{words}</label>
  )
  return (
    <fieldset class="difference-before">
      <legend>Compare with</legend>
      {radio('saved', session.document.asSaved().at === undefined ? 'the workbook as it was opened' : 'the workbook as it was saved last')}
      {radio('template', 'the template it came from')}
      <Show when={props.state.choice() === 'template'}>
        <select aria-label="Template compared with" onChange={({ currentTarget }) => props.state.setTemplate(currentTarget.value || undefined)}>
          <option value="" selected={props.state.template() === undefined}>the one that it is most like</option>
          <For each={templates}>{({ title }) => <option value={title} selected={props.state.template() === title}>{title}</option>}</For>
        </select>
      </Show>
      <div class="difference-file">
        {radio('file', props.state.file() === undefined ? 'another file' : `the file “${props.state.file()?.name}”`)}
        <button type="button" class="plain-button" onClick={() => void chooseFile(OPENED_ENDINGS).then((file) => file && props.state.setFile(file))}>Choose a file…</button>
      </div>
    </fieldset>
  )
}
