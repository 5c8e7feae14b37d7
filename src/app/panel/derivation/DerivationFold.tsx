import { createSignal, Show, type JSX } from 'solid-js'
import { isFormula } from '../../../workbook/document.ts'
import { keptState } from '../../whatif/kept-state.ts'
import { useSession } from '../../state/session.ts'
import { LateDerivation } from '../late-panels.ts'

/** Folded at first: the whole ancestry of a cell is more than a glance. Open, it stays while the walk goes on to other cells. */
export function DerivationFold(): JSX.Element {
  const session = useSession()
  const [open, setOpen] = keptState(session, 'Derivation fold', () => createSignal(false))
  return (
    <Show when={open() || isFormula(session.activeCell()?.content)}>
      <details class="derivation-fold" open={open()} onToggle={(event) => setOpen(event.currentTarget.open)}>
        <summary><h3>Derivation and hand calculation</h3></summary>
        <Show when={open()}><LateDerivation /></Show>
      </details>
    </Show>
  )
}
