/** Of all tabs with the same workbook open, one writes: the others wait for its right, and hear what it writes. */
export interface WritingRight {
  readonly writes: boolean
  /** Asks the tab that writes to hand over; one that does not answer loses the right. */
  takeOver(): void
  /** Tells the other tabs. */
  tell(news: unknown): void
  close(): void
}

export interface WritingRightListener {
  /** This tab writes from now on. Not called for a right that is there from the start. */
  granted(): void
  /** Another tab wants to write. Fulfilled with true once nothing is left to write here; false refuses. */
  asked(): Promise<boolean>
  /** The other tab refused to hand over. */
  refused(): void
  /** The right is gone without this tab's doing. */
  lost(): void
  heard(news: unknown): void
}

type Message =
  | { readonly kind: 'ask'; readonly from: string }
  | { readonly kind: 'refuse'; readonly to: string }
  | { readonly kind: 'news'; readonly news: unknown }

/** Long enough to write what is left; a tab that takes longer has come to a stop. */
const ANSWER_WITHIN_MS = 5000

/** Fulfilled once it is known whether this tab writes. */
export async function claimWriting(book: string, listener: WritingRightListener): Promise<WritingRight> {
  const name = lockName(book)
  const me = crypto.randomUUID()
  const channel = new BroadcastChannel(name)
  let release: (() => void) | undefined
  let queue = new AbortController()
  let answerTimer: ReturnType<typeof setTimeout> | undefined
  let closed = false

  /** Holds the lock until it is released; `early` hears whether it was free. */
  async function hold(options: LockOptions, early?: (free: boolean) => void): Promise<void> {
    try {
      await navigator.locks.request(name, options, (lock) => {
        early?.(lock !== null)
        if (lock === null || closed) return undefined
        clearTimeout(answerTimer)
        return new Promise<void>((resolve) => {
          release = resolve
          if (!early) listener.granted()
        })
      })
    } catch (problem) {
      if (!(problem instanceof DOMException && problem.name === 'AbortError')) throw problem
      // Of a right that was held: another tab has taken it. Of one waited for: the wait was ended here.
      if (release === undefined || options.signal?.aborted) return
      release = undefined
      listener.lost()
      wait()
    }
  }

  function wait(): void {
    queue = new AbortController()
    if (!closed) void hold({ signal: queue.signal })
  }

  async function handOver(to: string): Promise<void> {
    if (await listener.asked()) {
      release?.()
      release = undefined
      wait()
    } else post({ kind: 'refuse', to })
  }

  const post = (message: Message): void => channel.postMessage(message)
  channel.addEventListener('message', ({ data }: MessageEvent<Message>) => {
    if (data.kind === 'news') listener.heard(data.news)
    else if (data.kind === 'ask' && release) void handOver(data.from)
    else if (data.kind === 'ask') {
      // Whoever asks goes first.
      queue.abort()
      wait()
    } else if (data.to === me) {
      clearTimeout(answerTimer)
      listener.refused()
    }
  })

  const isFree = await new Promise<boolean>((resolve) => void hold({ ifAvailable: true }, resolve))
  if (!isFree) wait()

  return {
    get writes() {
      return release !== undefined
    },
    takeOver() {
      post({ kind: 'ask', from: me })
      clearTimeout(answerTimer)
      answerTimer = setTimeout(() => {
        queue.abort()
        void hold({ steal: true })
      }, ANSWER_WITHIN_MS)
    },
    tell: (news) => post({ kind: 'news', news }),
    close() {
      closed = true
      clearTimeout(answerTimer)
      queue.abort()
      release?.()
      release = undefined
      channel.close()
    },
  }
}

/** Runs while no tab has the workbook open for writing; undefined, and not run, if one has. */
export const whileUnwritten = <Result>(book: string, run: () => Promise<Result>): Promise<Result | undefined> =>
  navigator.locks.request(lockName(book), { ifAvailable: true }, async (lock) => (lock ? run() : undefined))

const lockName = (book: string): string => `lowside-workbook-${book}`
