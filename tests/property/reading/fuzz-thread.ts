import { parentPort, workerData } from 'node:worker_threads'
import type { FileContents } from '../../../src/exchange/reading/contents.ts'
import { readFileContents } from '../../../src/exchange/reading/read-file.ts'
import { damagedFile } from './damage.ts'

/** What became of one file: nothing said is what is wished. */
export interface FuzzOutcome {
  readonly seed: number
  readonly read: boolean
  readonly fault?: string
}

const { from, to } = workerData as { readonly from: number; readonly to: number }
const prototypes = [Object.prototype, Array.prototype, Function.prototype, String.prototype, Map.prototype]
const before = prototypes.map((prototype) => Object.getOwnPropertyNames(prototype).join())

for (let seed = from; seed < to; seed++) {
  parentPort?.postMessage(await outcome(seed))
}

async function outcome(seed: number): Promise<FuzzOutcome> {
  const { bytes, name, how } = damagedFile(seed)
  try {
    const found = await readFileContents(bytes, name)
    const read = !('problem' in found)
    const fault = read ? contentsFault(found) : problemFault(found.problem)
    const changed = prototypes.some((prototype, index) => Object.getOwnPropertyNames(prototype).join() !== before[index])
    if (changed) return { seed, read, fault: `${how}: a prototype has another property than before` }
    return { seed, read, ...(fault === undefined ? {} : { fault: `${how}: ${fault}` }) }
  } catch (thrown) {
    return { seed, read: false, fault: `${how}: threw ${String(thrown)}` }
  }
}

/** A sentence for the user; not the one for what nobody thought of. */
function problemFault(problem: string): string | undefined {
  if (problem.startsWith('The file could not be read (')) return `an error of the reader itself: ${problem}`
  return /^\S.{20,}\.$/s.test(problem) ? undefined : `no sentence: “${problem}”`
}

function contentsFault({ sheets, remarks }: FileContents): string | undefined {
  for (const { name, rows, widthsPx } of sheets) {
    if (widthsPx.some((width) => !Number.isFinite(width) || width < 0)) return `a width of sheet ${name} is no number`
    for (const row of rows) {
      for (const cell of row ?? []) {
        if (cell === undefined) continue
        const { value, formula, note } = cell
        if (typeof value === 'number' && !Number.isFinite(value)) return 'a value is no finite number'
        if (value === undefined) return 'a cell without value'
        if ([value, formula, note].some((text) => typeof text === 'string' && text.length > 32_767)) return 'a text longer than a cell holds'
      }
    }
  }
  return remarks.some(({ words }) => words === '') ? 'a remark without words' : undefined
}
