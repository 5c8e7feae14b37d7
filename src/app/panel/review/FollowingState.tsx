import { Show, type JSX } from 'solid-js'
import type { Following } from '../../review/following.ts'
import { useSession } from '../../state/session.ts'

interface Props {
  readonly following: Following
  /** "Looking for findings" */
  readonly doing: string
  /** "looking again", while what came of it before still stands. */
  readonly doingAgain: string
  /** "Look again" */
  readonly again: string
  /** What came of it so far, in words; undefined where nothing has. */
  readonly outcome: string | undefined
  /** Whether the workbook has changed since. */
  readonly isOld: boolean
}

/** How far work on the workbook is, with a way to stop it; what came of it; and why not all did. */
export function FollowingState(props: Props): JSX.Element {
  const session = useSession()
  const percent = () => {
    const share = props.following.share()
    return share === undefined ? undefined : Math.round(share * 100)
  }
  const words = () => {
    if (props.outcome === undefined) return props.following.stopped() || props.following.problem() ? '' : `${props.doing}…`
    if (!props.isOld) return props.outcome
    return `${props.outcome}; ${props.following.stopped() || session.recalculation.stopped() ? 'the workbook has changed since' : props.doingAgain}`
  }
  return (
    <div class="review-state">
      <p role="status">{words()}</p>
      <Show when={props.following.busy()}>
        <div class="review-progress">
          <Show when={percent() !== undefined} fallback={<progress max={100} aria-label={props.doing} />}>
            <progress max={100} value={percent()} aria-label={props.doing} />
          </Show>
          <button type="button" class="plain-button" title="Stop (Escape)" onClick={({ currentTarget }) => {
            focusHead(currentTarget)
            props.following.stop()
          }}>Stop</button>
        </div>
      </Show>
      <Show when={session.recalculation.stopped()}>
        <p class="review-problem">The recalculation was stopped. Recalculate (at the bottom) comes first.</p>
      </Show>
      <Show when={props.following.problem()}>{(problem) => <p class="review-problem" role="alert">{problem()}</p>}</Show>
      <Show when={props.following.stopped() || props.following.problem()}>
        <div class="review-verbs">
          <Show when={props.following.stopped()}><span>Stopped.</span></Show>
          <button type="button" class="plain-button" onClick={({ currentTarget }) => {
            focusHead(currentTarget)
            props.following.again()
          }}>{props.again}</button>
        </div>
      </Show>
    </div>
  )
}

/** The button goes with what it did: the focus stays in the panel. */
const focusHead = (button: HTMLElement): void => button.closest('.review-panel')?.querySelector<HTMLElement>('h2')?.focus()
