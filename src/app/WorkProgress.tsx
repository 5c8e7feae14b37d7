import { createMemo, Show, type JSX } from 'solid-js'
import type { WorkShown } from './state/long-work.ts'
import { useSession } from './state/session.ts'
import './WorkProgress.css'

/** Long work: what it is, how far it has come, and a way to stop it. */
export function WorkProgress(): JSX.Element {
  const session = useSession()
  const work = createMemo((): WorkShown | undefined => {
    const change = session.document.longChange.progress()
    return change ? { words: change.label, share: change.share, canStop: true } : session.work.shown()
  })
  const percent = () => {
    const share = work()?.share
    return share === undefined ? undefined : Math.round(share * 100)
  }
  return (
    <Show when={work()}>
      {(shown) => (
        <div class="work-progress" role="group" aria-label="Work under way">
          <span class="work-words">{shown().words}</span>
          {/* Without a value the bar says that nobody knows how long it takes. */}
          <Show when={percent() !== undefined} fallback={<progress max={100} aria-label={shown().words} />}>
            <progress max={100} value={percent()} aria-label={shown().words} />
          </Show>
          <span class="work-share">{percent() === undefined ? '' : `${percent()} %`}</span>
          <Show when={shown().canStop}>
            <button type="button" class="work-stop" title="Stop (Escape)" onClick={() => session.stop()}>Stop</button>
          </Show>
        </div>
      )}
    </Show>
  )
}
