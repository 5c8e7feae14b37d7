import type { Book, BookContents, Shelf, Stored, Writing } from '../../../src/storage/shelf.ts'
import { withText } from '../../../src/storage/stored.ts'

/** A shelf in memory, with the same all-or-nothing writes; a test may damage what it holds, or have it refuse. */
export interface MemoryShelf extends Shelf {
  readonly held: Map<string, { book: Book; entries: Stored[]; snapshots: Stored[] }>
  readonly writings: Writing[]
  /** What the next writes are refused with. */
  refuse: ((writing: Writing) => Error | undefined) | undefined
}

export function memoryShelf(): MemoryShelf {
  const held: MemoryShelf['held'] = new Map()
  const writings: Writing[] = []
  const shelf: MemoryShelf = {
    held, writings, refuse: undefined,
    books: async () => [...held.values()].map(({ book }) => book).toSorted((one, other) => other.at - one.at),
    read: async (id): Promise<BookContents> => structuredClone(held.get(id) ?? { entries: [], snapshots: [] }),
    async write(writing) {
      const taken = writing.snapshot && (await withText(writing.snapshot))
      const refusal = shelf.refuse?.(writing)
      if (refusal) throw refusal
      const { book, entries, keepFrom = -1, cutAfter = Infinity } = writing
      const before = held.get(book.id) ?? { entries: [], snapshots: [] }
      const rest = before.entries.filter(({ number }) => number <= cutAfter)
      if (entries.some(({ number }) => rest.some((one) => one.number === number))) throw new DOMException('there already', 'ConstraintError')
      const snapshots = before.snapshots.filter(({ number }) => number <= cutAfter && number !== taken?.number)
      held.set(book.id, structuredClone({
        book,
        entries: [...rest, ...entries].filter(({ number }) => number > keepFrom),
        snapshots: [...snapshots, ...(taken ? [taken] : [])].filter(({ number }) => number >= keepFrom).toSorted((one, other) => one.number - other.number),
      }))
      writings.push(writing)
    },
    async forget(id) {
      held.delete(id)
    },
  }
  return shelf
}
