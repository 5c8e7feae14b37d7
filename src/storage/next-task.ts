/** Resolves in a task of its own: what has come meanwhile, a key or a frame, has its turn before. */
export const nextTask = (): Promise<void> =>
  new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })

/** Half a frame: work that goes on for longer lets others go first. */
export const SLICE_MS = 8

/** To be awaited between the steps of long work: goes on at once until a slice of time is over. */
export function createSlices(): () => Promise<void> | undefined {
  let end = performance.now() + SLICE_MS
  return () => {
    if (performance.now() < end) return undefined
    return nextTask().then(() => {
      end = performance.now() + SLICE_MS
    })
  }
}
