import type { Area } from '../workbook/address.ts'
import type { Found } from './finding.ts'
import { asSentence } from './finding-words.ts'
import { grouped } from './grouped.ts'

/** A cell that has a fault, and a text that is the same for cells that are to be told of together where they lie side by side. */
export interface CellFound {
  readonly found: Found
  readonly alike: string
}

/** Cells next to each other that have the same fault as one, down columns first and then across. The first one's reason stands for all. */
export function merge(cells: readonly CellFound[]): Found[] {
  const down = joined(cells.map(({ found, alike }) => ({ founds: [found], alike, area: found.area, sheet: found.sheet })), {
    order: (one, other) => one.left - other.left || one.top - other.top,
    follows: (one, other) => one.left === other.left && one.right === other.right && one.bottom + 1 === other.top,
  })
  return joined(down, {
    order: (one, other) => one.top - other.top || one.bottom - other.bottom || one.left - other.left,
    follows: (one, other) => one.top === other.top && one.bottom === other.bottom && one.right + 1 === other.left,
  }).map(asOne)
}

interface Group {
  readonly founds: readonly Found[]
  readonly alike: string
  readonly area: Area
  readonly sheet: string
}

interface Way {
  readonly order: (one: Area, other: Area) => number
  readonly follows: (one: Area, other: Area) => boolean
}

function joined(groups: readonly Group[], { order, follows }: Way): Group[] {
  const kinds = grouped(groups, ({ sheet, alike }) => `${sheet}!${alike}`)
  return [...kinds.values()].flatMap((same) => {
    const rows: { first: Group; founds: Found[]; area: Area }[] = []
    for (const group of same.toSorted((one, other) => order(one.area, other.area))) {
      const last = rows.at(-1)
      if (last && follows(last.area, group.area)) {
        last.founds.push(...group.founds)
        last.area = { ...last.area, bottom: group.area.bottom, right: group.area.right }
      } else rows.push({ first: group, founds: [...group.founds], area: group.area })
    }
    return rows.map(({ first, founds, area }): Group => ({ ...first, founds, area }))
  })
}

const MOST_CAUSES = 20

function asOne({ founds, area }: Group): Found {
  const [first, ...others] = founds
  if (first === undefined) throw new RangeError('a group of no cells')
  if (others.length === 0) return first
  const causes = founds.flatMap((one) => one.causes ?? []).slice(0, MOST_CAUSES)
  const mends = founds.flatMap(({ mend }) => mend ?? [])
  const [mend] = mends
  return {
    ...first, area, key: keyOf(founds),
    reason: `${asSentence(first.reason)} The same goes for ${others.length === 1 ? 'the cell' : `the ${others.length} cells`} next to it.`,
    ...(causes.length > 0 && { causes }),
    ...(mend && mends.length === founds.length && { mend: { words: mend.words, edits: mends.flatMap(({ edits }) => edits) } }),
  }
}

/** The keys of all, each once; of many a checksum of theirs, so that it stays short and still changes as one of them does. */
function keyOf(founds: readonly Found[]): string {
  const keys = [...new Set(founds.map(({ key }) => key))]
  return keys.length <= KEYS_SPELT ? keys.join('; ') : `${keys.slice(0, KEYS_SPELT).join('; ')}; and others: ${checksum(keys.join('; '))}`
}

const KEYS_SPELT = 4

/** FNV-1a of 32 bits: no secret, only a short text in place of a long one. */
function checksum(text: string): string {
  let sum = 0x811c9dc5
  for (let index = 0; index < text.length; index++) sum = Math.imul(sum ^ text.charCodeAt(index), 0x01000193)
  return (sum >>> 0).toString(16).padStart(8, '0')
}
