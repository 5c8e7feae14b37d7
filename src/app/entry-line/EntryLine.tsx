import { createSignal, For, type JSX } from 'solid-js'
import { parseAddress, printAddress, type Area } from '../../workbook/address.ts'
import { setRole } from '../../workbook/commands.ts'
import { ROLES, type Role } from '../../workbook/document.ts'
import { actOnSelection, selectionWords } from '../state/on-selection.ts'
import { areaBetween } from '../state/selection.ts'
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
    return editing ? printAddress(editing.row, editing.column) : selectionWords(session)
  }
  const go = (text: string) => {
    const areas = text.split(/[,;]/).map(areaIn)
    const wrong = areas.indexOf(undefined)
    if (wrong >= 0) {
      const part = text.split(/[,;]/)[wrong]?.trim()
      return session.setNotice({ tone: 'problem', text: `"${part}" is no cell; accepted: an address such as C5, C5:D9 or C5, E5:E9` })
    }
    session.selection.selectAll(areas.filter((area) => area !== undefined))
    props.focusGrid()
  }
  return (
    <input
      class="entry-address"
      aria-label="Address"
      spellcheck={false}
      autocomplete="off"
      value={typed() ?? shown()}
      title={shown()}
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

/** The cells that an address, or two with a colon between them, stand for. */
function areaIn(text: string): Area | undefined {
  const [from, to = from, ...more] = text.trim().split(':').map(parseAddress)
  return from && to && more.length === 0 ? areaBetween(from, to) : undefined
}

function RoleField(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const role = () => session.activeCell()?.role
  const choose = (chosen: Role) => {
    if (!session.settle()) return
    actOnSelection(session, 'Role', (workbook, sheet, range) => setRole(workbook, sheet, range, chosen))
    props.focusGrid()
  }
  return (
    <select class="entry-role" aria-label="Role" value={role() ?? ''} onChange={(event) => choose(event.currentTarget.value as Role)}>
      <option value="" disabled>empty</option>
      <For each={ROLES}>{(name) => <option value={name} selected={name === role()}>{name}</option>}</For>
    </select>
  )
}
