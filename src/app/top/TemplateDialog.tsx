import { For, type JSX } from 'solid-js'
import { emptyWorkbook } from '../../workbook/document.ts'
import { openOwn } from '../files/file-actions.ts'
import { templates } from '../files/library.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'

/** The templates with what each is for; the one chosen takes the place of the open workbook. */
export function TemplateDialog(props: { readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const start = (open: () => void) => {
    props.onClose()
    open()
  }
  return (
    <Dialog title="Start from a template" onClose={props.onClose}>
      <ul class="choice-list">
        <For each={templates}>
          {(template) => (
            <li><button type="button" onClick={() => start(() => void openOwn(session, template))}><strong>{template.title}</strong><span>{template.purpose}</span></button></li>
          )}
        </For>
        <li><button type="button" onClick={() => start(() => session.open(emptyWorkbook(), false))}><strong>Empty workbook</strong><span>One sheet without any cell.</span></button></li>
      </ul>
    </Dialog>
  )
}
