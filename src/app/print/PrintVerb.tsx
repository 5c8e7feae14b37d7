import { createSignal, onCleanup, onMount, Show, type JSX } from 'solid-js'
import { useSession } from '../state/session.ts'
import { PrintDialog } from './PrintDialog.tsx'
import './print.css'

/** The verb, and its key wherever the focus is. */
export function PrintVerb(): JSX.Element {
  const session = useSession()
  const [open, setOpen] = createSignal(false)
  const begin = () => {
    if (session.settle()) setOpen(true)
  }
  const onKeyDown = (event: KeyboardEvent) => {
    if (!(event.ctrlKey || event.metaKey) || event.shiftKey || event.altKey || event.key.toLowerCase() !== 'p') return
    event.preventDefault()
    if (!document.querySelector('dialog[open]')) begin()
  }
  onMount(() => {
    window.addEventListener('keydown', onKeyDown)
    onCleanup(() => window.removeEventListener('keydown', onKeyDown))
  })
  return (
    <>
      <button type="button" class="verb" aria-keyshortcuts="Control+P" onClick={begin}>Print</button>
      <Show when={open()}><PrintDialog onClose={() => setOpen(false)} /></Show>
    </>
  )
}
