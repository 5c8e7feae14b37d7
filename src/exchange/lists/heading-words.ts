/** Words of the trade that say the same thing in the heading of a list; from memory of such lists. The first of each line stands for all. */
const SAME: readonly string[] = [
  'tag part item equipment component unitno designation name',
  'number no nr num #',
  'quantity qty qnty count many pcs pieces off quant',
  'diameter dia diam ø bore',
  'inside internal inner int inwendig',
  'outside outer external ext',
  'length len lg long tangent tt ss shell',
  'volume vol capacity contents',
  'temperature temp temps',
  'zone room area space chamber',
  'kind type category class sort',
  'shape orientation position geometry attitude form',
  'head heads ends end closures closure',
  'suction',
  'filled fill filling liquid level',
  'operation operating normal normally op oper run running working',
  'most max maximum high highest peak upper',
  'load duty refrigeration',
  'wall thickness thk',
  'pressure press',
  'remark remarks note notes comment comments from basis source',
  'height elevation',
  'valve valves',
]

const CANONICAL: ReadonlyMap<string, string> = new Map(SAME.flatMap((line) => {
  const words = line.split(' ')
  return words.map((word) => [word, words[0] ?? word] as const)
}))

/** Words that say nothing about what a column holds. */
const EMPTY: ReadonlySet<string> = new Set(['of', 'the', 'in', 'at', 'a', 'an', 'to', 'where', 'comes', 'by', 'per', 'and', 'how', 'on', 'is', 'given', 'each', 'unit', 'units', 'value'])

/** What a heading speaks of: its words, each as the one that stands for all of its meaning. */
export function wordsOfHeading(heading: string, isLength: boolean): ReadonlySet<string> {
  const spelt = heading
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase()
    .replace(/\bi\.?\s?d\.?(?=\W|$)/g, isLength ? ' inside diameter ' : ' tag ')
    .replace(/\bo\.?\s?d\.?(?=\W|$)/g, ' outside diameter ')
    .replace(/\bt\s?[/-]\s?t\b|\bs\s?[/-]\s?s\b/g, ' length ')
    .replace(/\bno\.?\s+(?:of|off)\b|\bnumber\s+(?:of|off)\b/g, ' quantity ')
    .replace(/\bhow\s+many\b/g, ' quantity ')
    .replace(/%/g, ' ')
  const words = spelt.split(/[^\p{L}\p{N}ø#]+/u).filter((word) => word !== '' && !EMPTY.has(word))
  return new Set(words.map((word) => CANONICAL.get(word) ?? CANONICAL.get(word.replace(/s$/, '')) ?? word.replace(/(?<=..)s$/, '')))
}

/** How much two headings speak of the same, from 0 to 1. A word that several columns of the list have tells little. */
export function likeness(one: ReadonlySet<string>, other: ReadonlySet<string>, weight: (word: string) => number): number {
  const sum = (words: Iterable<string>): number => [...words].reduce((total, word) => total + weight(word), 0)
  const all = sum(new Set([...one, ...other]))
  const shared = sum([...one].filter((word) => other.has(word)))
  if (all === 0) return 0
  // A short heading that lies wholly within the other one says most of it.
  const least = Math.min(sum(one), sum(other))
  return 0.55 * (shared / all) + 0.45 * (least === 0 ? 0 : shared / least)
}
