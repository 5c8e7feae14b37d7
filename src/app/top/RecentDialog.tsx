import { createResource, createSignal, For, Show, type JSX } from 'solid-js'
import type { Book } from '../../storage/shelf.ts'
import { Dialog } from '../parts/Dialog.tsx'
import { notOpenedWords } from '../state/keeping-words.ts'
import { useSession } from '../state/session.ts'
import { fileWords, timeWords } from './file-words.ts'
import './RecentDialog.css'

/** The workbooks that this browser keeps: each can be opened, or forgotten after a question. */
export function RecentDialog(props: { readonly onClose: () => void }): JSX.Element {
  const { keeping, setNotice } = useSession()
  const [books, { refetch }] = createResource(keeping.books)
  const [asked, setAsked] = createSignal<string | undefined>(undefined)
  const [problem, setProblem] = createSignal<string | undefined>(undefined)

  const open = async (book: Book) => {
    let isClosed = false
    const close = () => {
      if (!isClosed) props.onClose()
      isClosed = true
    }
    const not = await keeping.open(book.id, close)
    if (not === undefined) close()
    else if (isClosed) setNotice(notOpenedWords(book, not))
    else setProblem(notOpenedWords(book, not).text)
  }
  const forget = async ({ id, title }: Book) => {
    setAsked(undefined)
    const wrong = await keeping.forget(id)
    setProblem(wrong && `“${title}” is not forgotten: ${wrong}`)
    await refetch()
  }

  return (
    <Dialog title="Recent workbooks" onClose={props.onClose}>
      <p>Kept in this browser. What matters belongs in a file as well: a browser may clear what it keeps.</p>
      <Show when={!books.error} fallback={<p role="alert">The list cannot be read: {String(books.error)}</p>}>
        <Show when={problem()}>{(text) => <p role="alert" class="recent-problem">{text()}</p>}</Show>
        <ul class="choice-list recent-list">
          <For each={books.latest ?? []} fallback={<li>None yet.</li>}>
            {(book) => (
              <li>
                <Show when={asked() === book.id} fallback={
                  <>
                    <button type="button" disabled={book.id === keeping.openBook()} onClick={() => void open(book)}>
                      <strong>{book.title}</strong>
                      <span>{lineOf(book, book.id === keeping.openBook())}</span>
                    </button>
                    <Show when={book.id !== keeping.openBook()}>
                      <button type="button" class="forget" aria-label={`Forget ${book.title}`} onClick={() => setAsked(book.id)}>Forget</button>
                    </Show>
                  </>
                }>
                  <div class="forget-question" role="group" aria-label={`Forget ${book.title}?`}>
                    <p>Forget “{book.title}” for good? {book.inFile && !book.changed ? 'Its file stays.' : book.inFile ? 'Its file stays, without the latest changes.' : 'No file holds it.'}</p>
                    <button type="button" class="main-button" onClick={() => void forget(book)}>Forget it</button>
                    <button type="button" class="plain-button" ref={(element) => queueMicrotask(() => element.focus())} onClick={() => setAsked(undefined)}>Keep it</button>
                  </div>
                </Show>
              </li>
            )}
          </For>
        </ul>
      </Show>
    </Dialog>
  )
}

const lineOf = (book: Book, isOpen: boolean): string =>
  [isOpen ? 'Open here' : `Worked on ${timeWords(book.at)}`, book.sheets === 1 ? '1 sheet' : `${book.sheets} sheets`, fileWords(book)].join(' · ')
