import { createResource, For, Show, type JSX } from 'solid-js'
import { emptyWorkbook } from '../../workbook/document.ts'
import { templates } from '../files/library.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'

/** The templates with what each is for; the one chosen takes the place of the open workbook. */
export function TemplateDialog(props: { readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const [list] = createResource(templates)
  const start = (workbook = emptyWorkbook()) => {
    session.open(workbook, false)
    props.onClose()
  }
  return (
    <Dialog title="Start from a template" onClose={props.onClose}>
      <Show when={!list.error} fallback={<p role="alert">{String(list.error)}</p>}>
        <ul class="choice-list">
          <For each={list() ?? []}>
            {({ title, purpose, workbook }) => <li><button type="button" onClick={() => start(workbook)}><strong>{title}</strong><span>{purpose}</span></button></li>}
          </For>
          <li><button type="button" onClick={() => start()}><strong>Empty workbook</strong><span>One sheet without any cell.</span></button></li>
        </ul>
      </Show>
    </Dialog>
  )
}
