/** Where something turns: `last` is as before still, `first` is no longer; they are neighbours. */
export interface Turn {
  readonly last: number
  readonly first: number
}

/**
 * Halves the way between two numbers until what holds at `low` and not at `high` is known to a share of their distance, or the two are
 * neighbouring doubles. `low` may be the larger.
 */
export function refineTurn(low: number, high: number, isAsBefore: (number: number) => boolean, share = 1e-9): Turn {
  const close = Math.abs(high - low) * share
  let [last, first] = [low, high]
  while (Math.abs(first - last) > close) {
    const middle = last + (first - last) / 2
    if (middle === last || middle === first) break
    if (isAsBefore(middle)) last = middle
    else first = middle
  }
  return { last, first }
}
