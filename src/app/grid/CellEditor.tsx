import type { JSX } from 'solid-js'
import { printAddress } from '../../workbook/address.ts'
import { EntryField } from '../entry-line/EntryField.tsx'
import { typingKey } from '../entry-line/typing-keys.ts'
import type { Editing } from '../state/entry.ts'
import { useSession } from '../state/session.ts'
import { useGrid } from './grid-context.ts'
import { MARGIN } from './layout.ts'

/** The field for typing over a cell, at the cell's place. */
export function CellEditor(props: { readonly editing: Editing; readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const { layout, viewport } = useGrid()
  const inView = (start: number, scrolled: number, isFrozen: boolean) => start - (isFrozen ? 0 : scrolled)
  const left = () => MARGIN.left + inView(layout.columnAxis().start(props.editing.column), viewport.scroll().left, props.editing.column < layout.frozen()[1])
  const top = () => MARGIN.top + inView(layout.rowAxis().start(props.editing.row), viewport.scroll().top, props.editing.row < layout.frozen()[0])
  const right = () => left() + layout.columnAxis().size(props.editing.column)
  const isRight = () => left() > viewport.size().width / 2

  return (
    <div
      class="cell-editor"
      classList={{ low: top() > viewport.size().height / 2, right: isRight() }}
      style={{
        left: `${left()}px`,
        top: `${top()}px`,
        'min-width': `${layout.columnAxis().size(props.editing.column)}px`,
        'min-height': `${layout.rowAxis().size(props.editing.row)}px`,
        '--help-room': `${isRight() ? right() : viewport.size().width - left()}px`,
        'max-width': `${Math.max(120, viewport.size().width - left() - 12)}px`,
      }}
    >
      <EntryField
        place="cell"
        label={`Content of ${printAddress(props.editing.row, props.editing.column)}`}
        onKeyDown={(event) => typingKey(session, event, props.focusGrid)}
      />
    </div>
  )
}
