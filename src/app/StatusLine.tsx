import { Show, type JSX } from 'solid-js'
import { STANDING_CAUTION } from '../../functions/cautions.ts'
import { useSession } from './state/session.ts'
import { WorkProgress } from './WorkProgress.tsx'
import './StatusLine.css'

/** How the calculation fares, long work, what the last action had to say, and the standing caution. */
export function StatusLine(): JSX.Element {
  const { recalculation, notice, keeping, document } = useSession()
  const problem = () => recalculation.fault() ?? (notice()?.tone === 'problem' ? notice()?.text : undefined) ?? keeping.problem()
  const state = () => (recalculation.stopped() ? 'Recalculation stopped: values may be out of date' : recalculation.busy() ? 'Recalculating' : 'All values up to date')
  return (
    <footer class="status-line">
      <p class="recalculation" role="status" aria-label="Recalculation" classList={{ busy: recalculation.busy(), stopped: recalculation.stopped() }}>{state()}</p>
      <Show when={recalculation.stopped()}>
        <button type="button" class="recalculate" onClick={() => recalculation.again(document.workbook())}>Recalculate</button>
      </Show>
      <WorkProgress />
      <p class="notice" role="alert"><Show when={problem()}>{(text) => <span class="notice-problem">{text()}</span>}</Show></p>
      <Show when={!problem() && notice()}>{(said) => <p class="notice" role="status">{said().text}</p>}</Show>
      <p class="standing-caution">{STANDING_CAUTION}</p>
    </footer>
  )
}
