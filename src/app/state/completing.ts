import { createMemo, createSignal, type Accessor } from 'solid-js'
import { findUnit } from '../../../functions/units/units.ts'
import { cellAt, type Workbook } from '../../workbook/document.ts'
import { meantText } from '../../workbook/entry.ts'
import { accept, completionAt, type Completion } from '../entry-line/completion.ts'
import type { Entry } from './entry.ts'

/** The list of what could be written at the caret. */
export interface Completing {
  /** What the list shows; undefined while there is none. */
  readonly completion: Accessor<Completion | undefined>
  /** The place in the list that would be taken; undefined: none, the text stands as it is. */
  readonly chosen: Accessor<number | undefined>
  /** To the next or the one before, round and round. */
  move(by: 1 | -1): void
  take(index: number): void
  /** Until something else is typed. */
  dismiss(): void
}

interface Surroundings {
  readonly entry: Entry
  readonly workbook: Accessor<Workbook>
}

export function createCompleting({ entry, workbook }: Surroundings): Completing {
  const [dismissed, setDismissed] = createSignal<string | undefined>(undefined)
  const [moved, setMoved] = createSignal<{ readonly text: string; readonly index: number } | undefined>(undefined)

  const edited = createMemo(() => {
    const at = entry.editing()
    return at && cellAt(workbook(), at.sheet, at.row, at.column)
  })
  const completion = createMemo(() => {
    if (!entry.editing() || !entry.isFresh() || dismissed() === entry.text()) return undefined
    const before = edited()?.role === 'unit' ? meantText(edited()?.content) : undefined
    return completionAt({ text: entry.text(), caret: entry.caret() }, {
      workbook: workbook(), unitCell: edited()?.role === 'unit', dimension: before === undefined ? undefined : findUnit(before)?.dimension,
    })
  })
  const chosen = (): number | undefined => {
    const shown = completion()
    const byHand = moved()
    if (!shown) return undefined
    return byHand?.text === entry.text() ? byHand.index : shown.isComplete ? undefined : 0
  }

  return {
    completion, chosen,
    move(by) {
      const count = completion()?.suggestions.length ?? 0
      const from = chosen() ?? (by === 1 ? -1 : count)
      if (count > 0) setMoved({ text: entry.text(), index: (from + by + count) % count })
    },
    take(index) {
      const shown = completion()
      const suggestion = shown?.suggestions[index]
      if (!shown || !suggestion) return
      const { text, caret } = accept(entry.text(), shown, suggestion)
      setDismissed(text)
      entry.put(text, caret)
    },
    dismiss: () => void setDismissed(entry.text()),
  }
}
