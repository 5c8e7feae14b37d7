import { createMemo, createSignal, onCleanup, onMount, Show, type JSX } from 'solid-js'
import type { CellAddress } from '../../workbook/address.ts'
import { misfit } from '../../workbook/misfit.ts'
import { useSession } from '../state/session.ts'
import { cellUnder, placeInView } from './cell-under.ts'
import { useGrid } from './grid-context.ts'
import './NoteTip.css'

/** Wider than the tip ever is. */
const TIP_WIDTH = 280

/** What a cell's marks stand for, in words: of the cell under the pointer, or of the active one while no Why says it. */
export function NoteTip(props: { readonly grid: () => HTMLElement }): JSX.Element {
  const session = useSession()
  const context = useGrid()
  const [hovered, setHovered] = createSignal<CellAddress | undefined>(undefined, { equals: (one, other) => one?.row === other?.row && one?.column === other?.column })
  const words = ({ row, column }: CellAddress): string =>
    [session.cell(row, column)?.note, misfit(session.sheet().rows[row], column)].filter((text) => text !== undefined).join('\n')

  onMount(() => {
    const grid = props.grid()
    const onMove = (event: PointerEvent) => setHovered(event.buttons === 0 && event.target instanceof HTMLElement && event.target.closest('.cell') ? cellUnder(event, grid, context) : undefined)
    const forget = () => setHovered(undefined)
    grid.addEventListener('pointermove', onMove)
    grid.addEventListener('pointerleave', forget)
    grid.addEventListener('keydown', forget)
    grid.addEventListener('scroll', forget)
    onCleanup(() => {
      grid.removeEventListener('pointermove', onMove)
      grid.removeEventListener('pointerleave', forget)
      grid.removeEventListener('keydown', forget)
      grid.removeEventListener('scroll', forget)
    })
  })

  const tip = createMemo(() => {
    if (session.entry.editing()) return undefined
    const at = hovered() ?? (session.panel() === 'Why' ? undefined : session.selection.active())
    const text = at && words(at)
    if (!at || !text) return undefined
    const { left, top, width, height } = placeInView(at, context)
    const isRoomOnRight = left + width + TIP_WIDTH < context.viewport.size().width
    return { text, left: isRoomOnRight ? left + width + 8 : Math.max(0, Math.min(left, context.viewport.size().width - TIP_WIDTH)), top: isRoomOnRight ? top : top + height + 4 }
  })

  return <Show when={tip()}>{(at) => <div class="note-tip" role="tooltip" style={{ left: `${at().left}px`, top: `${at().top}px` }}>{at().text}</div>}</Show>
}
