import { createSignal, createUniqueId, For, Show, type JSX } from 'solid-js'
import { moreWords, type MarkNews, type MarkState } from '../../../workbook/review/mark-states.ts'
import { reviewPlace } from '../../../workbook/review/review-words.ts'
import { again, withdraw } from '../../review/checking.ts'
import { goToArea } from '../../review/go-to-area.ts'
import { useSession } from '../../state/session.ts'
import { ReviewerForm } from '../review/ReviewerForm.tsx'
import { CheckForm } from './CheckForm.tsx'
import { MarkSign } from './MarkSign.tsx'

/** Fewer are read at a glance; the others are asked for. */
const SHOWN = 6

/** One mark: whether it still stands, who checked it and how, what has changed since, and what can be done with it. */
export function MarkItem(props: { readonly state: MarkState; readonly focusList: () => void }): JSX.Element {
  const session = useSession()
  const [doing, setDoing] = createSignal<'again' | 'withdraw' | undefined>(undefined)
  const [all, setAll] = createSignal(false)
  const name = createUniqueId()
  let verbs: HTMLDivElement | undefined
  const mark = () => props.state.mark
  const place = () => reviewPlace(mark())
  const shown = () => (all() ? props.state.changes : props.state.changes.slice(0, SHOWN))
  const rest = () => props.state.count - shown().length
  /** The buttons come back in place of the form. */
  const end = () => {
    const done = doing()
    setDoing(undefined)
    verbs?.querySelector<HTMLButtonElement>(`[data-verb=${done}]`)?.focus()
  }
  const goTo = () => {
    const { sheet, area } = mark()
    if (area === null) session.show(sheet)
    else goToArea(session, sheet, area)
  }

  return (
    <li class="check-mark" classList={{ stale: !props.state.isGood }} data-mark={mark().id}>
      <button type="button" class="review-go" id={name} disabled={mark().gone === true} onClick={goTo}>
        <MarkSign isGood={props.state.isGood} />
        <span class="check-state">{props.state.isGood ? 'checked' : 'stale'}</span> <span class="review-place">{place()}</span> <span class="check-number">mark {mark().id}</span>
      </button>
      <p class="check-by">{mark().by}, <time datetime={mark().at}>{mark().at.slice(0, 10)}</time>, {mark().method}</p>
      <Show when={mark().note !== ''}><p class="review-note">{mark().note}</p></Show>
      <Show when={props.state.remark}>{(remark) => <p class="review-hint">{remark()}</p>}</Show>
      <Show when={!props.state.isGood}>
        <ul class="check-news" aria-label={`What has changed since mark ${mark().id}`}>
          <For each={shown()}>{(news) => <li><News news={news} /></li>}</For>
        </ul>
        <Show when={rest() > 0}>
          <Show when={!all()} fallback={<p class="review-hint">{moreWords(props.state)}</p>}>
            <button type="button" class="plain-button check-more" onClick={() => setAll(true)}>Show {rest()} more</button>
          </Show>
        </Show>
      </Show>
      <Show when={doing() === 'again'}>
        <CheckForm
          label={`Check ${place()} again`} verb="Check again" leave="Leave it" method={mark().method}
          hint="The mark is made anew for what stands there now; the record keeps the one before."
          onDo={(said) => again(session, mark().id, said)}
          onEnd={(isDone) => (isDone ? props.focusList() : end())}
        />
      </Show>
      <Show when={doing() === 'withdraw'}>
        <ReviewerForm
          label={`Withdraw the mark on ${place()}`} verb="Withdraw" leave="Leave it" noteLabel="Why, for the record (may be left out)"
          onDo={(by, why) => withdraw(session, mark().id, by, why)}
          onEnd={() => (session.document.workbook().review?.marks.some(({ id }) => id === mark().id) ? end() : props.focusList())}
        />
      </Show>
      <Show when={doing() === undefined}>
        <div ref={(element) => (verbs = element)} class="review-verbs check-verbs">
          <Show when={mark().gone !== true}><button type="button" class="plain-button" data-verb="again" aria-describedby={name} onClick={() => setDoing('again')}>Check again…</button></Show>
          <button type="button" class="plain-button" data-verb="withdraw" aria-describedby={name} onClick={() => setDoing('withdraw')}>Withdraw…</button>
        </div>
      </Show>
    </li>
  )
}

/** A sentence; where there is a cell to look at, it leads there. */
function News(props: { readonly news: MarkNews }): JSX.Element {
  const session = useSession()
  return (
    <Show when={props.news.place} fallback={<span class="check-gone">{sentence(props.news.words)}</span>}>
      {(place) => <button type="button" onClick={() => goToArea(session, place().sheet, { top: place().row, bottom: place().row, left: place().column, right: place().column })}>{sentence(props.news.words)}</button>}
    </Show>
  )
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`
