import { onCleanup, onMount, type JSX } from 'solid-js'
import { Icon } from './Icon.tsx'
import './Dialog.css'

/** A sheet of paper over the others, until it is put away. */
export function Dialog(props: { readonly title: string; readonly onClose: () => void; readonly children: JSX.Element }): JSX.Element {
  let dialog: HTMLDialogElement | undefined
  const before = document.activeElement
  onMount(() => dialog?.showModal())
  onCleanup(() => before instanceof HTMLElement && before.focus())
  return (
    <dialog
      ref={(element) => (dialog = element)}
      class="dialog"
      aria-label={props.title}
      onClose={() => props.onClose()}
      onClick={(event) => event.target === dialog && dialog.close()}
    >
      <div class="dialog-paper">
        <div class="dialog-head">
          <h2>{props.title}</h2>
          <button type="button" class="quiet-button" aria-label="Close" onClick={() => dialog?.close()}><Icon name="close" /></button>
        </div>
        {props.children}
      </div>
    </dialog>
  )
}
