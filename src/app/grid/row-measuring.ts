import { batch, createComputed, createEffect, createSignal, on, onCleanup, untrack, type Accessor } from 'solid-js'
import { createSlices, nextTask } from '../../storage/next-task.ts'
import type { GridLayout } from './layout.ts'
import { ROW_HEIGHT, type RowHeights } from './row-heights.ts'
import type { Viewport } from './viewport.ts'

interface Surroundings {
  readonly layout: Pick<GridLayout, 'rowHeights' | 'layOutRows' | 'rowAxis' | 'frozen'>
  readonly viewport: Viewport
  readonly sheetName: Accessor<string>
  /** A row that is to be brought into view, if any. */
  readonly goal: Accessor<number | undefined>
  /** Moves the grid on the screen once it is laid out anew. */
  readonly scrollBy: (px: number) => void
}

/** Has the rows worked out that are in view or about to be, all others as time allows; what is in view stays where it is. */
export function keepRowsMeasured({ layout, viewport, sheetName, goal, scrollBy }: Surroundings): void {
  const [moved, move] = createSignal(undefined, { equals: false })
  let due = 0

  createComputed<string>((before) => {
    const heights = layout.rowHeights()
    const { first, last } = viewport.rows()
    const aim = goal()
    untrack(() => {
      const around = Math.ceil(viewport.size().height / ROW_HEIGHT)
      const isOther = [heights.measure(first, last), aim !== undefined && heights.measure(Math.max(0, aim - around), aim + around)]
      // Another sheet begins at its own place.
      if (!isOther.includes(true)) return
      if (before === sheetName()) layOutInPlace()
      else layout.layOutRows()
    })
    return sheetName()
  })
  createEffect(on(layout.rowHeights, (heights) => void measureRest(heights)))
  createEffect(on(moved, () => {
    scrollBy(due)
    due = 0
  }, { defer: true }))
  let isGone = false
  onCleanup(() => (isGone = true))

  async function measureRest(heights: RowHeights): Promise<void> {
    let isOther = false
    if (heights.left > 0) await nextTask()
    const slice = createSlices()
    while (heights.left > 0) {
      if (isGone || untrack(layout.rowHeights) !== heights) return
      if (heights.measureNext()) isOther = true
      await slice()
    }
    if (isOther && !isGone && untrack(layout.rowHeights) === heights) batch(layOutInPlace)
  }

  function layOutInPlace(): void {
    const [frozen] = layout.frozen()
    const top = viewport.scroll().top
    const before = layout.rowAxis()
    const anchor = before.at(top + before.start(frozen))
    layout.layOutRows()
    const after = layout.rowAxis()
    const distance = after.start(anchor) - after.start(frozen) - (before.start(anchor) - before.start(frozen))
    if (distance === 0) return
    viewport.setScroll(viewport.scroll().left, top + distance)
    due += distance
    move(undefined)
  }
}
