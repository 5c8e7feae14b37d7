import { For, type JSX } from 'solid-js'
import type { ReadingFailure } from '../files/file-actions.ts'
import { Dialog } from '../parts/Dialog.tsx'

/** Everything that is wrong with a file, place by place. */
export const ReadingFailureDialog = (props: { readonly failure: ReadingFailure; readonly onClose: () => void }): JSX.Element => (
  <Dialog title={`${props.failure.fileName} cannot be read`} onClose={props.onClose}>
    <p>The file is as it was, and so is the workbook that is open.</p>
    <ol class="problem-list"><For each={props.failure.messages}>{(message) => <li>{message}</li>}</For></ol>
  </Dialog>
)
