import { createSignal, For, type JSX } from 'solid-js'
import { columnLetters, parseAddress, printAddress } from '../../workbook/address.ts'
import { setRole } from '../../workbook/commands.ts'
import { ROLES, type Role } from '../../workbook/document.ts'
import { useSession } from '../state/session.ts'
import { EntryField } from './EntryField.tsx'
import { FormatField } from './FormatField.tsx'
import { typingKey } from './typing-keys.ts'
import { UnitField } from './UnitField.tsx'
import './EntryLine.css'

/** The active cell: its address, its role, what it holds and the unit that its number has. */
export function EntryLine(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  return (
    <section class="entry-line" aria-label="Entry line">
      <AddressField focusGrid={props.focusGrid} />
      <RoleField focusGrid={props.focusGrid} />
      <div class="entry-content">
        <div class="entry-over">
          <EntryField place="line" label="Content" onKeyDown={(event) => typingKey(session, event, props.focusGrid)} />
        </div>
      </div>
      <FormatField focusGrid={props.focusGrid} />
      <UnitField focusGrid={props.focusGrid} />
    </section>
  )
}

function AddressField(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const [typed, setTyped] = createSignal<string | undefined>(undefined)
  const shown = () => {
    const editing = session.entry.editing()
    if (editing) return printAddress(editing.row, editing.column)
    const { top, left, bottom, right } = session.selection.area()
    const { size } = session
    if (top === 0 && bottom === size().rows - 1) return `${columnLetters(left)}:${columnLetters(right)}`
    if (left === 0 && right === size().columns - 1) return `${top + 1}:${bottom + 1}`
    const first = printAddress(top, left)
    return top === bottom && left === right ? first : `${first}:${printAddress(bottom, right)}`
  }
  const go = (text: string) => {
    const [first = '', last] = text.trim().split(':').map(parseAddress)
    if (first === undefined || first === '') return session.setNotice({ tone: 'problem', text: `"${text}" is no cell; accepted: an address such as C5 or C5:D9` })
    session.selection.moveTo(first)
    if (last) session.selection.moveTo(last, true)
    props.focusGrid()
  }
  return (
    <input
      class="entry-address"
      aria-label="Address"
      spellcheck={false}
      autocomplete="off"
      value={typed() ?? shown()}
      onFocus={(event) => (session.settle(), event.currentTarget.select())}
      onInput={(event) => setTyped(event.currentTarget.value)}
      onBlur={() => setTyped(undefined)}
      onKeyDown={(event) => {
        if (event.key === 'Enter') go(event.currentTarget.value)
        if (event.key === 'Escape') props.focusGrid()
      }}
    />
  )
}

function RoleField(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const role = () => session.activeCell()?.role
  const choose = (chosen: Role) => {
    if (!session.settle()) return
    const { top, left, bottom, right } = session.usedSelection()
    session.act('Role', (workbook) => setRole(workbook, session.sheet().name, { from: { row: top, column: left }, to: { row: bottom, column: right } }, chosen))
    props.focusGrid()
  }
  return (
    <select class="entry-role" aria-label="Role" value={role() ?? ''} onChange={(event) => choose(event.currentTarget.value as Role)}>
      <option value="" disabled>empty</option>
      <For each={ROLES}>{(name) => <option value={name} selected={name === role()}>{name}</option>}</For>
    </select>
  )
}
