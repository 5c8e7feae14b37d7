import { Show, type JSX } from 'solid-js'
import type { Difference } from '../../../review/differences/difference.ts'
import { printCellPlace } from '../../../workbook/cell-place.ts'
import { keyOf, type DifferencesState } from './differences-state.ts'

/** One difference: what it was and what it is; the current one also with a way to take the other side. */
export function DifferenceItem(props: { readonly difference: Difference; readonly state: DifferencesState }): JSX.Element {
  const one = () => props.difference
  const isCurrent = () => props.state.current() === keyOf(one())
  const place = () => one().now ?? one().before
  return (
    <li class="review-item" classList={{ current: isCurrent() }} data-walked={keyOf(one())}>
      <button type="button" class="review-go" aria-current={isCurrent()} onClick={() => props.state.goTo(one())}>
        <span class="review-word">{one().kind}</span> <Show when={place()}>{(at) => <span class="review-place"><Show when={!one().now}>was at </Show>{printCellPlace(at())}</span>}</Show> <span class="review-label">{one().label}</span>
      </button>
      <p class="difference-sides">
        <span class="difference-was"><span class="unseen">was </span>{one().was}</span> <span class="difference-arrow" aria-hidden="true">→</span> <span class="difference-is"><span class="unseen">is </span>{one().is}</span>
      </p>
      <Show when={isCurrent()}>
        <div class="review-doing"><Taking difference={one()} state={props.state} /></div>
      </Show>
    </li>
  )
}

function Taking(props: { readonly difference: Difference; readonly state: DifferencesState }): JSX.Element {
  const words = () => ('words' in props.difference.accept ? props.difference.accept.words : undefined)
  return (
    <Show when={words()} fallback={<p class="review-hint">{'refused' in props.difference.accept ? props.difference.accept.refused : ''}</p>}>
      {(does) => (
        <>
          <p class="review-hint">{does()}</p>
          <div class="review-verbs">
            <button type="button" class="plain-button" aria-disabled={props.state.isOld()} onClick={() => props.state.isOld() || void props.state.takeBack([props.difference], TAKE_BACK)}>{TAKE_BACK}</button>
          </div>
        </>
      )}
    </Show>
  )
}

const TAKE_BACK = 'Take this back'
