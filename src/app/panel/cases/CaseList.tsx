import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { freeName } from '../../../workbook/case-commands.ts'
import { BASE, casesOf, ownValues } from '../../../workbook/cases.ts'
import { MAX_CASE_NAME } from '../../../workbook/limits.ts'
import { ContextMenu, type ContextItem } from '../../parts/ContextMenu.tsx'
import { useSession } from '../../state/session.ts'
import { becomeBase, make, note, remove, rename, switchTo } from './case-actions.ts'

/** The base and the cases, of which one is current; a menu of what can be done with each. */
export function CaseList(): JSX.Element {
  const session = useSession()
  const cases = createMemo(() => casesOf(session.document.workbook()))
  let list: HTMLUListElement | undefined
  const focusCase = (at: number | null) => list?.querySelector<HTMLElement>(`[data-case="${at ?? 'base'}"]`)?.focus()
  return (
    <ul ref={(element) => (list = element)} class="case-list" aria-label="Cases">
      <li>
        <button type="button" class="case-name" data-case="base" aria-current={cases().current === null} onClick={() => switchTo(session, null)}>
          <span class="case-mark" aria-hidden="true" /><span>{BASE}</span><Show when={cases().current === null}><small>current</small></Show>
        </button>
      </li>
      <For each={[...cases().list.keys()]}>{(at) => <CaseItem at={at} focusCase={focusCase} />}</For>
    </ul>
  )
}

function CaseItem(props: { readonly at: number; readonly focusCase: (at: number | null) => void }): JSX.Element {
  const session = useSession()
  const [menuAt, setMenuAt] = createSignal<{ readonly x: number; readonly y: number } | undefined>(undefined)
  const [field, setField] = createSignal<'name' | 'note' | undefined>(undefined)
  let item: HTMLLIElement | undefined
  const cases = () => casesOf(session.document.workbook())
  const one = () => cases().list[props.at]
  const name = () => one()?.name ?? ''
  const isCurrent = () => cases().current === props.at
  const countWords = () => {
    const count = ownValues(session.document.workbook(), props.at).length
    return count === 0 ? 'no input of its own' : count === 1 ? '1 input of its own' : `${count} inputs of its own`
  }
  const openMenu = () => {
    const { left, bottom } = item?.getBoundingClientRect() ?? { left: 0, bottom: 0 }
    if (session.settle()) setMenuAt({ x: left + 20, y: bottom - 4 })
  }
  const items = (): ContextItem[] => [
    { words: 'Rename', keys: 'F2', choose: () => setField('name') },
    { words: one()?.note === undefined ? 'Write a note' : 'Change the note', choose: () => setField('note') },
    { words: 'Copy', choose: () => make(session, freeName(session.document.workbook(), `${name()} copy`), props.at) },
    { words: 'Make this the base', choose: () => becomeBase(session, props.at) && props.focusCase(null) },
    { words: 'Delete', apart: true, choose: () => remove(session, props.at) && props.focusCase(null) },
  ]
  const end = () => {
    setField(undefined)
    queueMicrotask(() => props.focusCase(props.at))
  }
  return (
    <li ref={(element) => (item = element)} class="case-item" onContextMenu={(event) => {
      event.preventDefault()
      openMenu()
    }}>
      <Show when={field() !== 'name'} fallback={<Field class="case-name-field" label={`New name of case ${name()}`} value={name()} most={MAX_CASE_NAME} onEnd={(text) => (text === undefined || rename(session, props.at, text.trim())) && (end(), true)} />}>
        <button type="button" class="case-name" data-case={props.at} aria-current={isCurrent()} aria-haspopup="menu" onClick={() => switchTo(session, props.at)} onKeyDown={(event) => {
          if (event.key === 'F2') setField('name')
          else if (event.key === 'ContextMenu' || (event.key === 'F10' && event.shiftKey)) openMenu()
          else return
          event.preventDefault()
        }}>
          <span class="case-mark" aria-hidden="true" /><span>{name()}</span><small>{isCurrent() ? `current, ${countWords()}` : countWords()}</small>
        </button>
      </Show>
      <button type="button" class="case-more" aria-label={`Case ${name()}: rename, note, copy, make the base, delete`} aria-haspopup="menu" aria-expanded={menuAt() !== undefined} onClick={openMenu}><span aria-hidden="true">⋯</span></button>
      <Show when={field() === 'note'} fallback={<Show when={one()?.note}>{(text) => <p class="case-note">{text()}</p>}</Show>}>
        <Field class="case-note-field" label={`Note on case ${name()}`} value={one()?.note ?? ''} long onEnd={(text) => (text === undefined || note(session, props.at, text)) && (end(), true)} />
      </Show>
      <Show when={menuAt()}>
        {(at) => <ContextMenu label={`Case ${name()}`} items={items()} at={at()} onClose={() => {
          setMenuAt(undefined)
          props.focusCase(props.at)
        }} />}
      </Show>
    </li>
  )
}

interface FieldProps {
  readonly class: string
  readonly label: string
  readonly value: string
  readonly most?: number
  /** Of several lines. */
  readonly long?: boolean
  /** Undefined: it stays as it is; false keeps the field open. */
  readonly onEnd: (text: string | undefined) => boolean
}

function Field(props: FieldProps): JSX.Element {
  let isOver = false
  const end = (text: string | undefined): void => {
    if (isOver) return
    // Leaving the page, the field loses the focus, which must not end it once more.
    isOver = true
    isOver = props.onEnd(text)
  }
  const take = (element: HTMLInputElement | HTMLTextAreaElement) => queueMicrotask(() => {
    element.focus()
    element.select()
  })
  const onKeyDown = (event: KeyboardEvent & { readonly currentTarget: HTMLInputElement | HTMLTextAreaElement }) => {
    event.stopPropagation()
    if (event.key === 'Enter' && !event.shiftKey) {
      event.preventDefault()
      end(event.currentTarget.value)
    } else if (event.key === 'Escape') end(undefined)
  }
  return (
    <Show when={props.long} fallback={<input ref={take} class={props.class} aria-label={props.label} value={props.value} maxLength={props.most} onKeyDown={onKeyDown} onBlur={({ currentTarget }) => end(currentTarget.value)} />}>
      <textarea ref={take} class={props.class} rows={3} aria-label={props.label} onKeyDown={onKeyDown} onBlur={({ currentTarget }) => end(currentTarget.value)}>{props.value}</textarea>
    </Show>
  )
}
