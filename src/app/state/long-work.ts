import { createSignal, type Accessor } from 'solid-js'

/** Work that takes longer than a moment, as the bottom line shows it. */
export interface WorkShown {
  readonly words: string
  /** How much is done, from 0 to 1; undefined where that is not known. */
  readonly share: number | undefined
  readonly canStop: boolean
}

/** Work under way, in the hands of whoever does it. */
export interface Work {
  /** Called as often as one likes: the screen takes note of whole hundredths. */
  report(share: number | undefined, words?: string): void
  end(): void
}

export interface LongWork {
  /** Of all work that has gone on for longer than a moment, what began last. */
  readonly shown: Accessor<WorkShown | undefined>
  /** @param stop ends the work; what it has done until then is to be as if it had not begun */
  begin(words: string, stop?: () => void): Work
  /** Stops the work shown; false if there is none that can be stopped. */
  stop(): boolean
}

/** What stopped work is rejected with: nothing has gone wrong. */
export class WorkStopped extends Error {
  override readonly name: string = 'WorkStopped'
}

/** Shorter work is not worth a word. */
const MOMENT_MS = 300

interface Entry {
  readonly shown: Accessor<WorkShown>
  readonly stop: (() => void) | undefined
}

/**
 * @example
 * const reading = work.begin('Reading inventory', () => thread.terminate())
 * reading.report(0.4)
 * reading.end()
 */
export function createLongWork(): LongWork {
  const [entries, setEntries] = createSignal<readonly Entry[]>([])
  const last = (): Entry | undefined => entries().at(-1)

  return {
    shown: () => last()?.shown(),
    begin(firstWords, stop) {
      const [shown, setShown] = createSignal<WorkShown>({ words: firstWords, share: undefined, canStop: stop !== undefined })
      const entry: Entry = { shown, stop }
      const timer = setTimeout(() => setEntries((before) => [...before, entry]), MOMENT_MS)
      return {
        report(exact, words = shown().words) {
          const share = exact === undefined ? undefined : Math.floor(Math.min(1, Math.max(0, exact)) * 100) / 100
          if (share !== shown().share || words !== shown().words) setShown({ ...shown(), words, share })
        },
        end() {
          clearTimeout(timer)
          setEntries((before) => before.filter((one) => one !== entry))
        },
      }
    },
    stop() {
      const stop = last()?.stop
      stop?.()
      return stop !== undefined
    },
  }
}
