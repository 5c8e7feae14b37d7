import { createMemo, Show, type JSX } from 'solid-js'
import { unitPlace } from '../../workbook/unit-change.ts'
import { useSession } from '../state/session.ts'
import { UnitList } from './UnitList.tsx'

/** The unit of the active cell; pressed, it lists those that could stand there instead. */
export function UnitField(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const place = createMemo(() => unitPlace(session.sheet(), session.selection.active()))
  const isOpen = () => session.popover() === 'unitInLine'
  const close = (backToGrid: boolean) => {
    session.setPopover(undefined)
    if (backToGrid) props.focusGrid()
  }
  return (
    <div class="entry-unit">
      <Show when={place()}>
        {(at) => (
          <button
            type="button" class="entry-button" aria-haspopup="dialog" aria-expanded={isOpen()} aria-label={`Unit: ${at().text ?? 'none'}`}
            onClick={() => session.settle() && session.setPopover(isOpen() ? undefined : 'unitInLine')}
          >{at().text ?? 'unit'}</button>
        )}
      </Show>
      <Show when={isOpen() && place()}>{(at) => <UnitList place={at()} onClose={close} />}</Show>
    </div>
  )
}
