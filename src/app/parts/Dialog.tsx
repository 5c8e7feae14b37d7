import { onCleanup, onMount, type JSX } from 'solid-js'
import { Icon } from './Icon.tsx'
import './Dialog.css'

interface Props {
  readonly title: string
  readonly onClose: () => void
  readonly class?: string
  /** Asked before Escape or a press beside it closes it; where left out it may. */
  readonly mayClose?: () => boolean
  readonly children: JSX.Element
}

/** A sheet of paper over the others, until it is put away. */
export function Dialog(props: Props): JSX.Element {
  let dialog: HTMLDialogElement | undefined
  const before = document.activeElement
  onMount(() => dialog?.showModal())
  // While the dialog is still there, nothing beneath it takes the focus.
  onCleanup(() => before instanceof HTMLElement && queueMicrotask(() => before.focus()))
  return (
    <dialog
      ref={(element) => (dialog = element)}
      class={`dialog ${props.class ?? ''}`}
      aria-label={props.title}
      onClose={() => props.onClose()}
      onCancel={(event) => event.target === dialog && props.mayClose?.() === false && event.preventDefault()}
      onClick={(event) => event.target === dialog && props.mayClose?.() !== false && dialog.close()}
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
