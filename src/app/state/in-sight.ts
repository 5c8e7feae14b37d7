import type { LongWork, Work } from './long-work.ts'

/** Work on a thread of its own. */
export interface ThreadWork<Result> {
  /** Rejected with `WorkStopped` if it was stopped. */
  readonly result: Promise<Result>
  stop(): void
}

/** Waits for work on a thread, which the bottom line shows from its first words on and can stop. */
export async function inSight<Result>(work: LongWork, words: string, begin: (report: Work['report']) => ThreadWork<Result>): Promise<Result> {
  const running = begin((share, now) => shown.report(share, now))
  const shown = work.begin(words, running.stop)
  try {
    return await running.result
  } finally {
    shown.end()
  }
}
