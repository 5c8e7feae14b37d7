import { createSignal, type Accessor } from 'solid-js'
import { createJournal, type Journal, type KeepingState } from '../../storage/journal.ts'
import type { Recovered } from '../../storage/recover.ts'
import type { Book, FileState, KeptContents, Shelf, Stored } from '../../storage/shelf.ts'
import { askToStay } from '../../storage/stay.ts'
import { editsOf, isIntact, isLong, withTexts } from '../../storage/stored.ts'
import { openHereBefore, rememberOpenHere } from '../../storage/tab-memory.ts'
import { claimWriting, whileUnwritten, type WritingRight, type WritingRightListener } from '../../storage/writing-right.ts'
import type { Workbook } from '../../workbook/document.ts'
import { failureWords, lostWords, messageOf, nameOf, notOpenedWords } from './keeping-words.ts'
import { WorkStopped } from './long-work.ts'
import type { Notice } from './session.ts'
import type { Follower, WorkbookState } from './workbook-state.ts'

/** Keeps the open workbook in the browser, each change as it comes. */
export interface Keeping extends Follower {
  /** `off`: the browser keeps nothing for Lowside. */
  readonly state: Accessor<KeepingState['is'] | 'off'>
  /** Why not everything is kept, and what to do; undefined if it is. */
  readonly problem: Accessor<string | undefined>
  /** True while another tab writes the open workbook, and this one follows it. */
  readonly reading: Accessor<boolean>
  takeOver(): void
  /** Opens what this tab had open, or what was worked on last. Gives what there is to say where nothing is opened. */
  openLast(): Promise<{ readonly isOpen: boolean; readonly said?: Notice }>
  /** The workbooks kept, the one worked on last first. */
  books(): Promise<readonly Book[]>
  /** The one that is open. */
  readonly openBook: Accessor<string | undefined>
  /** Opens a workbook that is kept. If it is not opened, gives why, the open one then staying open. `takesLong` hears of a large one. */
  open(id: string, takesLong?: () => void): Promise<NotOpened | undefined>
  /** Gives what is wrong. */
  forget(id: string): Promise<string | undefined>
}

/** Why a workbook is not opened. */
export interface NotOpened {
  readonly problem: string
  /** By the user. */
  readonly isStopped?: true
}

export interface Surroundings {
  /** Recovers a large workbook while the screen goes on; rejected with `WorkStopped` if that is stopped. */
  readonly recoverLarge: (contents: KeptContents, title: string) => Promise<Recovered | { readonly problem: string }>
  readonly openShelf: () => Promise<Shelf>
  readonly document: () => WorkbookState
  /** Shows a workbook that was kept from its start. */
  readonly show: (workbook: Workbook, file: FileState) => void
  /** Ends typing. */
  readonly settle: () => void
  /** Tells the user what went wrong. */
  readonly tell: (problem: string) => void
}

/** What tabs tell each other of each write. */
interface News {
  readonly book: Book
  readonly entries: readonly Stored[]
  /** Not told in full, since copying it would take long: what is kept is to be read again. */
  readonly isLong?: true
}

/** Characters told to other tabs: of more, copying takes longer than a frame. */
const LONGEST_NEWS = 200_000

/** The workbook of this tab. It has a journal while this tab writes it. */
interface Place {
  readonly id: string
  /** The last entry that the screen shows, while another tab writes. */
  number: number
  journal?: Journal | undefined
  right?: WritingRight
  /** What is heard from the writing tab is taken in one after another. */
  following: Promise<void>
}

export function createKeeping({ openShelf, recoverLarge, document, show, settle, tell }: Surroundings): Keeping {
  const [state, setState] = createSignal<KeepingState['is'] | 'off'>('keeping')
  const [problem, setProblem] = createSignal<string | undefined>(undefined)
  const [reading, setReading] = createSignal(false)
  const [openBook, setOpenBook] = createSignal<string | undefined>(undefined)
  let shelf: Shelf | undefined
  let here: Place | undefined
  /** What the next workbook to open comes from, if it is one that was kept. */
  let arrival: Place | undefined

  function startJournal(place: Place, { workbook, number, snapshots, lost }: Recovered, on: Shelf): void {
    const file = document().fileState()
    place.journal = createJournal({ shelf: on, id: place.id, workbook, number, snapshots, cut: lost > 0, file }, {
      state(now) {
        if (place !== here) return
        if (now.is === 'failed' && nameOf(now.error) === 'ConstraintError') return goOnApart(place)
        setState(now.is)
        setProblem(now.is === 'failed' ? failureWords(now.error) : undefined)
      },
      written(book, entries) {
        const isLong = entries.reduce((sum, { text }) => sum + text.length, 0) > LONGEST_NEWS
        place.right?.tell((isLong ? { book, entries: [], isLong } : { book, entries }) satisfies News)
        void askToStay()
      },
    })
  }

  /** Another tab writes what this one had not kept yet: this tab's workbook goes on under a line of its own, and nothing is lost. */
  function goOnApart(place: Place): void {
    place.journal?.close()
    place.right?.close()
    begin(document().workbook())
    tell('Another tab took this workbook over before all changes of this tab were kept. What this tab shows goes on as a workbook of its own.')
  }

  function begin(workbook: Workbook): void {
    if (!shelf) return
    const place = placeOf(crypto.randomUUID())
    settleIn(place)
    setReading(false)
    startJournal(place, { workbook, number: 0, snapshots: [], lost: 0 }, shelf)
    void claimWriting(place.id, listenerOf(place)).then((right) => {
      place.right = right
      if (place !== here) right.close()
    })
  }

  function settleIn(place: Place): void {
    here = place
    setOpenBook(place.id)
    rememberOpenHere(place.id)
  }

  async function leave({ journal, right }: Place): Promise<void> {
    await journal?.flush()
    journal?.close()
    right?.close()
  }

  const listenerOf = (place: Place): WritingRightListener => ({
    granted: () => void writeHere(place),
    async asked() {
      if (!place.journal) return true
      settle()
      // No change comes between the last one written and the hand-over.
      setReading(true)
      if (!(await place.journal.flush())) {
        setReading(false)
        return false
      }
      readHere(place, place.journal)
      return true
    },
    refused: () => tell('The other tab has changes that the browser did not keep. Save them to a file there first.'),
    lost() {
      if (!place.journal) return
      if (state() === 'kept') readHere(place, place.journal)
      else goOnApart(place)
    },
    heard(news) {
      place.following = place.following.then(() => follow(place, news as News))
    },
  })

  function readHere(place: Place, journal: Journal): void {
    place.number = journal.number()
    journal.close()
    place.journal = undefined
    setReading(true)
  }

  async function writeHere(place: Place): Promise<void> {
    await place.following
    const found = await load(place.id)
    if (place !== here || !shelf) return
    if ('problem' in found) return tell(`This workbook cannot be read again: ${found.problem}`)
    if (found.recovered.number !== place.number) renew(place, found)
    startJournal(place, found.recovered, shelf)
    setReading(false)
  }

  async function follow(place: Place, { book, entries, isLong }: News): Promise<void> {
    if (place !== here || place.journal) return
    if (isLong) return readAgain(place)
    const next = entries.filter(({ number }) => number > place.number)
    if (next[0] !== undefined && next[0].number !== place.number + 1) return readAgain(place)
    if (!next.every(isIntact) || document().follow(next.flatMap(editsOf), book) !== undefined) return readAgain(place)
    place.number = next.at(-1)?.number ?? place.number
  }

  async function readAgain(place: Place): Promise<void> {
    const found = await load(place.id)
    if (place === here && !('problem' in found)) renew(place, found)
  }

  /** Puts what is kept in place of what the screen has of the same workbook. */
  function renew(place: Place, { book, recovered }: Loaded): void {
    place.number = recovered.number
    arrival = place
    document().replace(recovered.workbook, book.inFile, book)
  }

  interface Loaded {
    readonly book: Book
    readonly recovered: Recovered
  }

  async function load(id: string, takesLong: () => void = () => undefined): Promise<Loaded | NotOpened> {
    try {
      const book = (await shelf?.books())?.find((one) => one.id === id)
      if (!shelf || !book) return { problem: 'this browser does not keep it any more' }
      const contents = await shelf.read(id)
      if (isLong(contents)) takesLong()
      const recovered = isLong(contents) ? await recoverLarge(contents, book.title) : (await import('../../storage/recover.ts')).recover(await withTexts(contents))
      return 'problem' in recovered ? recovered : { book, recovered }
    } catch (error) {
      return { problem: messageOf(error), ...(error instanceof WorkStopped ? { isStopped: true } : {}) }
    }
  }

  async function open(id: string, takesLong?: () => void): Promise<NotOpened | undefined> {
    if (id === here?.id) return undefined
    const place = placeOf(id)
    const right = await claimWriting(id, listenerOf(place))
    place.right = right
    const found = await load(id, takesLong)
    if ('problem' in found || !shelf) {
      right.close()
      return 'problem' in found ? found : undefined
    }
    place.number = found.recovered.number
    arrival = place
    show(found.recovered.workbook, found.book)
    setReading(!right.writes)
    setState('kept')
    setProblem(undefined)
    if (right.writes) startJournal(place, found.recovered, shelf)
    if (found.recovered.lost > 0) tell(lostWords(found.recovered.lost))
    return undefined
  }

  return {
    state, problem, reading, openBook, open,
    opened(workbook) {
      const arriving = arrival
      arrival = undefined
      if (here && here !== arriving) void leave(here)
      if (!arriving) begin(workbook)
      else if (arriving !== here) settleIn(arriving)
    },
    edited(edits) {
      here?.journal?.append(edits, document().workbook(), document().fileState())
    },
    savedToFile() {
      here?.journal?.noteFile(document().fileState())
    },
    takeOver: () => here?.right?.takeOver(),
    async openLast() {
      try {
        shelf = await openShelf()
        const kept = await shelf.books()
        const before = openHereBefore()
        const order = kept.toSorted((one, other) => Number(other.id === before) - Number(one.id === before))
        const problems: string[] = []
        for (const book of order) {
          const not = await open(book.id)
          if (not === undefined) {
            if (problems[0] !== undefined) tell(problems[0])
            return { isOpen: true }
          }
          if (not.isStopped) return { isOpen: false, said: notOpenedWords(book, not) }
          problems.push(notOpenedWords(book, not).text)
        }
        if (problems[0] !== undefined) return { isOpen: false, said: { tone: 'problem', text: problems[0] } }
      } catch (error) {
        shelf = undefined
        setState('off')
        setProblem(`This browser keeps no workbook (${messageOf(error)}). Save to a file before you leave.`)
      }
      return { isOpen: false }
    },
    books: async () => (await shelf?.books()) ?? [],
    async forget(id) {
      try {
        const done = await whileUnwritten(id, async () => {
          await shelf?.forget(id)
          return true
        })
        return done ? undefined : 'it is open in another tab; close that one first'
      } catch (error) {
        return messageOf(error)
      }
    },
  }
}

const placeOf = (id: string): Place => ({ id, number: 0, following: Promise.resolve() })
