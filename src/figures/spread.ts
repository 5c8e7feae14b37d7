/** A label that wants to stand with its middle at `at`, and how much room it takes there. */
export interface Wish {
  readonly at: number
  readonly size: number
}

interface Run {
  readonly members: readonly number[]
  readonly sizes: number
  /** Where its beginning would lie in the middle of what its members wish. */
  readonly start: number
}

/**
 * The middles of labels along a line, spread so that none lies over another: in the order of their wishes (equal ones in the order given), each as
 * near to its wish as the others allow, all between `from` and `to`. Where all of them together have no room there, they begin at `from` and go on beyond `to`.
 */
export function spread(wishes: readonly Wish[], from: number, to: number): number[] {
  const order = wishes.map((_, index) => index).toSorted((one, other) => (wishes[one]?.at ?? 0) - (wishes[other]?.at ?? 0))
  const runs: Run[] = []
  for (const index of order) {
    const { at = 0, size = 0 } = wishes[index] ?? {}
    let run = within({ members: [index], sizes: size, start: at - size / 2 }, from, to)
    for (let before = runs.at(-1); before && before.start + before.sizes > run.start; before = runs.at(-1)) {
      runs.pop()
      run = within(joined(before, run), from, to)
    }
    runs.push(run)
  }
  return positions(runs, wishes)
}

/** Two runs side by side, where the sum of the squares of all ways is least. */
function joined(one: Run, other: Run): Run {
  const [count, otherCount] = [one.members.length, other.members.length]
  const start = (one.start * count + (other.start - one.sizes) * otherCount) / (count + otherCount)
  return { members: [...one.members, ...other.members], sizes: one.sizes + other.sizes, start }
}

const within = (run: Run, from: number, to: number): Run => ({ ...run, start: Math.max(from, Math.min(to - run.sizes, run.start)) })

function positions(runs: readonly Run[], wishes: readonly Wish[]): number[] {
  const middles: number[] = []
  for (const { members, start } of runs) {
    let at = start
    for (const index of members) {
      const size = wishes[index]?.size ?? 0
      middles[index] = at + size / 2
      at += size
    }
  }
  return middles
}
