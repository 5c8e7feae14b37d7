import { createEffect, createMemo, createSignal, type Accessor } from 'solid-js'
import type { SheetState } from '../../calc/values.ts'
import type { Recalculation } from './recalculation.ts'

/** The state of each sheet, by name, read again after each change. */
export function createSheetStates({ ask, version }: Pick<Recalculation, 'ask' | 'version'>): Accessor<ReadonlyMap<string, SheetState>> {
  const [states, setStates] = createSignal<readonly SheetState[]>([])
  let reading = false

  createEffect(() => {
    if (version() > 0 && !reading) void read()
  })

  async function read(): Promise<void> {
    reading = true
    for (let readFor = -1; readFor !== version();) {
      readFor = version()
      const found = await ask((service) => service.states())
      if (found) setStates(found)
    }
    reading = false
  }

  return createMemo(() => new Map(states().map((state) => [state.sheet, state])))
}
