/** What people write for the choices that formulas know; from memory of vessel lists. Matched as whole words. */
const MEANING: Readonly<Record<string, readonly string[]>> = Object.assign(Object.create(null) as Record<string, readonly string[]>, {
  'vertical': ['vert', 'vertical', 'v', 'upright', 'standing', 'stehend'],
  'horizontal': ['horiz', 'horizontal', 'h', 'hor', 'hz', 'lying', 'liegend'],
  'pipe': ['pipe', 'piping', 'line', 'tube', 'header'],
  'volume': ['volume', 'vol', 'by volume', 'given', 'volume given'],
  '2:1': ['2:1', '2 1', '2/1', '2:1 se', 'se', 'semi ellip', 'semi elliptical', 'ellip', 'elliptical', 'ellipsoidal', 'semi ellipsoidal'],
  'hemi': ['hemi', 'hemispherical', 'hemisphere', 'half sphere'],
  'flat': ['flat', 'plate', 'flat plate', 'blind', 'cap flat'],
  'dished 6%': ['f&d', 'f & d', 'asme f&d', 'flanged and dished', 'dished 6', '6% dished', 'dished 6%', 'asme'],
  'dished 10%': ['dished 10', '10% dished', 'dished 10%', 'klöpper', 'kloepper', 'klopper', 'torispherical', 'din 28011'],
  'clear': ['clear', 'none', 'no'],
  'within 20 ft': ['within 20 ft', 'yes', 'near'],
})

export interface ChoiceFound {
  readonly choice: string
  /** False where the text says less than the choice. */
  readonly isSure: boolean
}

/** The choice that a text means, if it means just one of them. */
export function choiceOf(text: string, choices: readonly string[]): ChoiceFound | undefined {
  const folded = fold(text)
  if (folded === '') return undefined
  const exact = choices.find((choice) => fold(choice) === folded)
  if (exact !== undefined) return { choice: exact, isSure: true }
  const spelt = choices.filter((choice) => (MEANING[choice] ?? []).some((word) => fold(word) === folded))
  if (spelt.length === 1 && spelt[0] !== undefined) return { choice: spelt[0], isSure: folded.length > 2 || /^[vh]$/.test(folded) }
  const inside = choices.filter((choice) => [choice, ...(MEANING[choice] ?? [])].some((word) => word.length > 2 && ` ${folded} `.includes(` ${fold(word)} `)))
  return inside.length === 1 && inside[0] !== undefined ? { choice: inside[0], isSure: false } : undefined
}

/** The choice whose name is written most like the text. */
export function nearestChoice(text: string, choices: readonly string[]): string | undefined {
  const folded = fold(text)
  const ranked = choices.map((choice) => ({ choice, distance: editDistance(folded, fold(choice)) })).toSorted((one, other) => one.distance - other.distance)
  const [best] = ranked
  return best && best.distance <= Math.max(2, best.choice.length / 2) ? best.choice : undefined
}

const fold = (text: string): string => text.toLowerCase().replace(/[.,;()_-]+/g, ' ').replace(/\s+/g, ' ').trim()

/** How many letters have to be put in, left out or changed (Levenshtein 1966). */
function editDistance(one: string, other: string): number {
  const [a, b] = [one.slice(0, 40), other.slice(0, 40)]
  let before = Array.from({ length: b.length + 1 }, (_, index) => index)
  for (let row = 1; row <= a.length; row++) {
    const now = [row]
    for (let column = 1; column <= b.length; column++) {
      const changed = (before[column - 1] ?? 0) + (a[row - 1] === b[column - 1] ? 0 : 1)
      now.push(Math.min(changed, (before[column] ?? 0) + 1, (now[column - 1] ?? 0) + 1))
    }
    before = now
  }
  return before[b.length] ?? 0
}
