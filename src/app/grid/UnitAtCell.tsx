import { Show, type JSX } from 'solid-js'
import { unitPlace } from '../../workbook/unit-change.ts'
import { UnitList } from '../entry-line/UnitList.tsx'
import { useSession } from '../state/session.ts'
import { placeInView } from './cell-under.ts'
import { useGrid } from './grid-context.ts'

/** Taller and wider than the list of units is. */
const LIST = { width: 220, height: 340 } as const

/** The list of units at the cell that holds the unit. */
export function UnitAtCell(props: { readonly focusGrid: () => void }): JSX.Element {
  const session = useSession()
  const context = useGrid()
  const place = () => (session.popover() === 'unitAtCell' ? unitPlace(session.sheet(), session.selection.active()) : undefined)
  const position = () => {
    const { left, top, height } = placeInView(place()?.at ?? session.selection.active(), context)
    const size = context.viewport.size()
    return { left: Math.max(0, Math.min(left, size.width - LIST.width)), top: Math.max(0, Math.min(top + height, size.height - LIST.height)) }
  }
  const close = (backToGrid: boolean) => {
    session.setPopover(undefined)
    if (backToGrid) props.focusGrid()
  }
  return <Show when={place()}>{(at) => <UnitList place={at()} left={position().left} top={position().top} onClose={close} />}</Show>
}
