import { Show, type JSX } from 'solid-js'
import { STANDING_CAUTION } from '../../functions/cautions.ts'
import { useSession } from './state/session.ts'
import './StatusLine.css'

/** How the calculation fares, what the last action had to say, and the standing caution. */
export function StatusLine(): JSX.Element {
  const { recalculation, notice, keeping } = useSession()
  const problem = () => recalculation.fault() ?? (notice()?.tone === 'problem' ? notice()?.text : undefined) ?? keeping.problem()
  return (
    <footer class="status-line">
      <p class="recalculation" role="status" aria-label="Recalculation" classList={{ busy: recalculation.busy() }}>{recalculation.busy() ? 'Recalculating' : 'All values up to date'}</p>
      <p class="notice" role="alert"><Show when={problem()}>{(text) => <span class="notice-problem">{text()}</span>}</Show></p>
      <Show when={!problem() && notice()}>{(said) => <p class="notice" role="status">{said().text}</p>}</Show>
      <p class="standing-caution">{STANDING_CAUTION}</p>
    </footer>
  )
}
