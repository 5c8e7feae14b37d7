import { createSignal, Show, type JSX } from 'solid-js'
import { openFile } from '../files/file-actions.ts'
import { ReplaceDialog } from '../top/ReplaceDialog.tsx'
import { useSession } from '../state/session.ts'
import type { ImportSource } from './importing.ts'

/** Said of a file that Lowside exported: it can be opened as the workbook it was, with its own functions. */
export function OwnFile(props: { readonly source: ImportSource; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const [replaces, setReplaces] = createSignal(false)
  const open = () => {
    const { source: { file }, onClose } = props
    onClose()
    if (file) void openFile(session, file)
  }
  const ask = () => (session.document.unsaved() && session.keeping.problem() !== undefined ? setReplaces(true) : open())
  return (
    <div class="import-own" role="note">
      <p>Lowside exported this file. Opened instead of imported, it is the workbook it was, with its own functions in place of their workings.</p>
      <Show when={props.source.file}><button type="button" class="plain-button" onClick={ask}>Open it as that workbook</button></Show>
      <Show when={replaces()}><ReplaceDialog go={open} onClose={() => setReplaces(false)} /></Show>
    </div>
  )
}
