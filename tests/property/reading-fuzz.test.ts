import { Worker } from 'node:worker_threads'
import { expect, it } from 'vitest'
import type { FuzzOutcome } from './reading/fuzz-thread.ts'

const FILES = Number(process.env['LOWSIDE_FUZZ_FILES'] ?? 10_000)
const FROM = Number(process.env['LOWSIDE_FUZZ_FROM'] ?? 0)
/** Ten thousand times as long as a file takes. */
const STANDSTILL_MS = 30_000

it(`${FILES} damaged or random files: each is read, or refused with a sentence; none stops the reader or changes what all objects share`, async () => {
  const { outcomes, stopped } = await run(FROM, FROM + FILES)
  expect(stopped).toBe('')
  expect(outcomes.filter(({ fault }) => fault !== undefined).slice(0, 10)).toEqual([])
  expect(outcomes.length).toBe(FILES)
  // Else the damage would be such that nothing behind the door is ever reached.
  const read = outcomes.filter((outcome) => outcome.read).length
  expect(read).toBeGreaterThan(FILES / 10)
  expect(read).toBeLessThan(FILES * 0.9)
}, 600_000)

/** On a thread that can be ended: nothing else gets hold of what does not come back. */
function run(from: number, to: number): Promise<{ readonly outcomes: readonly FuzzOutcome[]; readonly stopped: string }> {
  const outcomes: FuzzOutcome[] = []
  // Options that load TypeScript do not reach threads (Node 20): this one asks for it itself.
  const start = `import('tsx/esm/api').then(({ register }) => { register(); return import(${JSON.stringify(new URL('./reading/fuzz-thread.ts', import.meta.url).href)}) })`
  const thread = new Worker(start, { eval: true, workerData: { from, to } })
  return new Promise((resolve) => {
    let watch: ReturnType<typeof setTimeout>
    const end = (stopped: string): void => {
      clearTimeout(watch)
      void thread.terminate()
      resolve({ outcomes, stopped })
    }
    const watched = (): void => {
      clearTimeout(watch)
      watch = setTimeout(() => end(`seed ${from + outcomes.length} did not come back`), STANDSTILL_MS)
    }
    watched()
    thread.on('message', (outcome: FuzzOutcome) => {
      outcomes.push(outcome)
      watched()
    })
    thread.on('error', (fault) => end(`seed ${from + outcomes.length}: ${String(fault)}`))
    thread.on('exit', () => end(''))
  })
}
