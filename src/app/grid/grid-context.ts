import { createContext, useContext, type Accessor } from 'solid-js'
import type { createAlignment } from './alignment-store.ts'
import type { GridLayout } from './layout.ts'
import type { TextWidth } from './text-width.ts'
import type { Viewport } from './viewport.ts'

/** What the parts of the grid share beside the session. */
export interface GridContext {
  readonly layout: GridLayout
  readonly viewport: Viewport
  readonly textWidth: TextWidth
  readonly alignment: ReturnType<typeof createAlignment>
  /** Scrolled to the right, so that cells beside the frozen columns are others than their neighbours. */
  readonly isScrolledAside: Accessor<boolean>
  readonly frozenColumns: Accessor<readonly number[]>
  /** The slots of the columns right of the frozen ones: what each shows at the moment. */
  readonly columns: Accessor<readonly Accessor<number | undefined>[]>
}

const Context = createContext<GridContext>()
export const GridProvider = Context.Provider

export function useGrid(): GridContext {
  const grid = useContext(Context)
  if (!grid) throw new Error('useGrid outside of GridProvider')
  return grid
}
