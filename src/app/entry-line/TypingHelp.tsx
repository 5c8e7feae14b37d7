import { createEffect, createMemo, For, Show, type JSX } from 'solid-js'
import { unreadableWords, type Unreadable } from '../../workbook/formula/unreadable.ts'
import { useSession } from '../state/session.ts'
import { hintAt, type HintPart } from './hint.ts'
import './TypingHelp.css'

export const HINT_ID = 'typing-hint'
export const LIST_ID = 'typing-list'
export const optionId = (index: number): string => `typing-option-${index}`

/** Beside the text being typed: what cannot be read, the function at hand, and what could be written at the caret. */
export function TypingHelp(props: { readonly problem: Unreadable | undefined }): JSX.Element {
  const { entry, completing } = useSession()
  const hint = createMemo(() => hintAt(entry.text(), entry.caret()))
  return (
    <div class="typing-help" classList={{ shown: props.problem !== undefined || hint() !== undefined || completing.completion() !== undefined }}>
      <div id={HINT_ID}>
        <Show when={props.problem}>
          {(problem) => <p class="typing-problem" role="status">{unreadableWords(entry.text(), problem())}</p>}
        </Show>
        <Show when={hint()}>
          {(at) => (
            <div class="typing-hint">
              <p class="hint-signature">
                {at().name}(
                <For each={at().parts}>
                  {({ label, optional, current }, index) => <>{index() > 0 ? ', ' : ''}<span classList={{ current }}>{optional ? `[${label}]` : label}</span></>}
                </For>)
              </p>
              <p class="hint-gives">{at().gives}</p>
              <For each={at().parts.filter(({ current }) => current)}>{(part) => <ArgumentWords part={part} />}</For>
            </div>
          )}
        </Show>
      </div>
      <Show when={completing.completion()}><SuggestionList /></Show>
    </div>
  )
}

function ArgumentWords(props: { readonly part: HintPart }): JSX.Element {
  return (
    <>
      <p class="hint-argument"><b>{props.part.label}</b>: {props.part.words ?? props.part.accepts}</p>
      <Show when={props.part.rows.length > 0} fallback={<Show when={props.part.words}><p class="hint-accepts">accepted: {props.part.accepts}</p></Show>}>
        <p class="hint-accepts">a range of {props.part.rows.length} rows, value and unit side by side:</p>
        <ol class="hint-rows">
          <For each={props.part.rows}>{({ name, accepts }) => <li><b>{name}</b> {accepts}</li>}</For>
        </ol>
      </Show>
    </>
  )
}

function SuggestionList(): JSX.Element {
  const { completing } = useSession()
  let list: HTMLUListElement | undefined
  createEffect(() => {
    const at = completing.chosen()
    if (at !== undefined) list?.children[at]?.scrollIntoView({ block: 'nearest' })
  })
  return (
    <ul ref={(element) => (list = element)} id={LIST_ID} class="suggestions" role="listbox" aria-label="Suggestions" onMouseDown={(event) => event.preventDefault()}>
      <For each={completing.completion()?.suggestions}>
        {({ label, words }, index) => (
          <li id={optionId(index())} role="option" aria-selected={completing.chosen() === index()} onClick={() => completing.take(index())}>
            <span class="suggestion-label">{label}</span><span class="suggestion-words">{words}</span>
          </li>
        )}
      </For>
    </ul>
  )
}
