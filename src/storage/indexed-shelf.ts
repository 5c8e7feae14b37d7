import type { Book, Shelf, Snapshot, Stored } from './shelf.ts'

const DATABASE = 'lowside'
const DATABASE_VERSION = 1
/** Each record of these two is found by its workbook and its number. */
const NUMBERED = ['entries', 'snapshots'] as const

/** The shelf in the browser's IndexedDB. Rejected where the browser refuses it, as it may in a private window. */
export async function openIndexedShelf(): Promise<Shelf> {
  const database = await opened()

  function transaction(mode: IDBTransactionMode): IDBTransaction {
    // Strict: fulfilled means on disk, not only with the operating system.
    return database.transaction(['books', ...NUMBERED], mode, { durability: 'strict' })
  }

  return {
    async books() {
      const books: Book[] = await answered(transaction('readonly').objectStore('books').getAll())
      return books.toSorted((one, other) => other.at - one.at)
    },
    async read(book) {
      const reading = transaction('readonly')
      const entries: Promise<Stored[]> = answered(reading.objectStore('entries').getAll(numbers(book)))
      const snapshots: Snapshot[] = await answered(reading.objectStore('snapshots').getAll(numbers(book)))
      return { entries: await entries, snapshots }
    },
    write({ book, entries, snapshot, keepFrom, cutAfter }) {
      const writing = transaction('readwrite')
      const [log, snapshots] = [writing.objectStore('entries'), writing.objectStore('snapshots')]
      if (cutAfter !== undefined) for (const store of [log, snapshots]) store.delete(numbers(book.id, cutAfter + 1))
      for (const entry of entries) log.add(entry)
      if (snapshot) snapshots.put(snapshot)
      if (keepFrom !== undefined) {
        log.delete(numbers(book.id, BEFORE_ALL, keepFrom))
        snapshots.delete(numbers(book.id, BEFORE_ALL, keepFrom - 1))
      }
      writing.objectStore('books').put(book)
      return completed(writing)
    },
    forget(book) {
      const writing = transaction('readwrite')
      for (const store of NUMBERED) writing.objectStore(store).delete(numbers(book))
      writing.objectStore('books').delete(book)
      return completed(writing)
    },
  }
}

const BEFORE_ALL = -1

const numbers = (book: string, from = BEFORE_ALL, to = Infinity): IDBKeyRange => IDBKeyRange.bound([book, from], [book, to])

async function opened(): Promise<IDBDatabase> {
  const request = indexedDB.open(DATABASE, DATABASE_VERSION)
  request.addEventListener('upgradeneeded', () => {
    request.result.createObjectStore('books', { keyPath: 'id' })
    for (const store of NUMBERED) request.result.createObjectStore(store, { keyPath: ['book', 'number'] })
  })
  const database = await answered(request)
  // Another tab with a newer Lowside must not wait for this one.
  database.addEventListener('versionchange', () => database.close())
  return database
}

function answered<Answer>(request: IDBRequest<Answer>): Promise<Answer> {
  return new Promise((resolve, reject) => {
    request.addEventListener('success', () => resolve(request.result))
    request.addEventListener('error', () => reject(request.error))
  })
}

function completed(transaction: IDBTransaction): Promise<void> {
  return new Promise((resolve, reject) => {
    transaction.addEventListener('complete', () => resolve())
    transaction.addEventListener('abort', () => reject(transaction.error))
  })
}
