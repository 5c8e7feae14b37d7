import { batch, createSignal, type Accessor } from 'solid-js'
import type { CellAddress } from '../../workbook/address.ts'
import { cellAt, type Workbook } from '../../workbook/document.ts'
import { entryOf } from '../../workbook/entry.ts'

/** Where the text is being typed: over the cell, or in the entry line. */
export type EntryPlace = 'cell' | 'line'

export interface Editing extends CellAddress {
  readonly sheet: string
  readonly place: EntryPlace
  /** Begun by typing over the cell: arrow keys then enter and move on, as long as the text is no formula. */
  readonly typedOver: boolean
}

export interface Entry {
  readonly editing: Accessor<Editing | undefined>
  /** What is being typed, or what the active cell holds as it would be typed. */
  readonly text: Accessor<string>
  /** Where the caret stands in the text. */
  readonly caret: Accessor<number>
  /** The caret stands where it does because something was typed there, not because it was moved there. */
  readonly isFresh: Accessor<boolean>
  /** The caret after a text was put in place by other means than the field's own; a new object each time. */
  readonly placed: Accessor<{ readonly caret: number }>
  /** Begins with what the cell holds, or with the text that typing began with. */
  begin(place: EntryPlace, typed?: string): void
  /** Goes on in another place with the same text. */
  moveTo(place: EntryPlace): void
  /** What the text field holds by now, and where its caret is. */
  type(text: string, caret: number): void
  /** Puts another text in place, as if it had been typed. */
  put(text: string, caret: number): void
  /** Ends typing; gives the message if what was typed is not accepted, and goes on then. `into`: what takes the text in place of the cell alone. */
  enter(into?: (at: Editing, typed: string) => string | undefined): string | undefined
  cancel(): void
  /** What is being typed is what the cell holds. */
  isAsBefore(): boolean
}

interface Surroundings {
  readonly workbook: Accessor<Workbook>
  readonly sheet: Accessor<string>
  readonly active: Accessor<CellAddress>
  readonly put: (sheet: string, at: CellAddress, typed: string) => string | undefined
}

/** The text of one cell while it is typed. */
export function createEntry({ workbook, sheet, active, put }: Surroundings): Entry {
  const [editing, setEditing] = createSignal<Editing | undefined>(undefined)
  const [typed, setTyped] = createSignal('')
  const [caret, setCaret] = createSignal(0)
  const [isFresh, setFresh] = createSignal(false)
  const [placed, setPlaced] = createSignal({ caret: 0 })

  const held = (sheetName: string, { row, column }: CellAddress): string => entryOf(cellAt(workbook(), sheetName, row, column)?.content ?? null)

  const isAsBefore = (): boolean => {
    const now = editing()
    return now !== undefined && typed() === held(now.sheet, now)
  }

  return {
    editing,
    isAsBefore,
    text: () => (editing() ? typed() : held(sheet(), active())),
    caret,
    isFresh,
    placed,
    begin(place, typedText) {
      const text = typedText ?? held(sheet(), active())
      setTyped(text)
      setCaret(text.length)
      setFresh(typedText !== undefined)
      setEditing({ ...active(), sheet: sheet(), place, typedOver: typedText !== undefined })
    },
    moveTo(place) {
      const now = editing()
      if (now && now.place !== place) setEditing({ ...now, place, typedOver: false })
    },
    type(text, at) {
      if (text === typed() && at === caret()) return
      batch(() => {
        setFresh(text !== typed())
        setTyped(text)
        setCaret(at)
      })
    },
    put(text, at) {
      batch(() => {
        setFresh(true)
        setTyped(text)
        setCaret(at)
        setPlaced({ caret: at })
      })
    },
    enter(into) {
      const now = editing()
      if (!now) return undefined
      const problem = !into && isAsBefore() ? undefined : into ? into(now, typed()) : put(now.sheet, now, typed())
      if (problem === undefined) setEditing(undefined)
      return problem
    },
    cancel: () => setEditing(undefined),
  }
}
