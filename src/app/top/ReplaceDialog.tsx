import type { JSX } from 'solid-js'
import { saveWorkbook } from '../files/file-actions.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { useSession } from '../state/session.ts'

/** Asked before another workbook takes the place of one with changes that no file holds. */
export function ReplaceDialog(props: { readonly go: () => void; readonly onClose: () => void }): JSX.Element {
  const session = useSession()
  const goOn = () => {
    // Closing takes this dialog, and its props, away.
    const { go } = props
    props.onClose()
    go()
  }
  const saveFirst = async () => {
    await saveWorkbook(session)
    if (!session.document.unsaved()) goOn()
  }
  return (
    <Dialog title="Changes not saved to a file" onClose={props.onClose}>
      <p>“{session.document.workbook().title}” has changes that neither this browser nor a file holds. Another workbook takes its place.</p>
      <div class="dialog-verbs">
        <button type="button" class="main-button" onClick={() => void saveFirst()}>Save first</button>
        <button type="button" class="plain-button" onClick={goOn}>Go on without saving</button>
        <button type="button" class="plain-button" onClick={() => props.onClose()}>Stay</button>
      </div>
    </Dialog>
  )
}
