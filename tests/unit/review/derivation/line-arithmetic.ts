/** Between which numbers the result of a line lies, each of its numbers being printed to five digits. */
export interface Bounds {
  readonly low: number
  readonly high: number
}

/**
 * Reads a printed line of plain arithmetic again: numbers, each perhaps with a unit, × / + − ^ and brackets. Undefined where there is anything else in it.
 */
export function rangeOfLine(line: string): Bounds | undefined {
  const tokens = line.match(TOKEN)
  if (tokens === null || tokens.join('').replaceAll(' ', '') !== line.replaceAll(' ', '')) return undefined
  let at = 0
  try {
    const found = sum()
    return at === tokens.length ? found : undefined
  } catch {
    return undefined
  }

  function peek(): string {
    return (tokens?.[at] ?? '').trim()
  }
  function sum(): Bounds {
    let left = product()
    for (let sign = peek(); sign === '+' || sign === '−'; sign = peek()) {
      at++
      const right = product()
      left = sign === '+' ? { low: left.low + right.low, high: left.high + right.high } : { low: left.low - right.high, high: left.high - right.low }
    }
    return left
  }
  function product(): Bounds {
    let left = power()
    for (let sign = peek(); sign === '×' || sign === '/'; sign = peek()) {
      at++
      const right = power()
      if (sign === '/' && right.low <= 0 && right.high >= 0) throw new Error('division by what may be nothing')
      left = corners(left, right, (one, other) => (sign === '×' ? one * other : one / other))
    }
    return left
  }
  function power(): Bounds {
    const base = single()
    if (peek() !== '^') return base
    at++
    return corners(base, single(), (one, other) => one ** other)
  }
  function single(): Bounds {
    const token = peek()
    at++
    if (token === '(') {
      const inner = sum()
      if (peek() !== ')') throw new Error('a bracket is open')
      at++
      return inner
    }
    if (token === '−') {
      const { low, high } = single()
      return { low: -high, high: -low }
    }
    if (token === 'π') return { low: Math.PI, high: Math.PI }
    const number = /^-?\d+(?:\.\d+)?(?:e-?\d+)?/.exec(token)?.[0]
    if (number === undefined) throw new Error(`${token} is no number`)
    return printed(Number(number))
  }
}

// A unit stands after a blank and has none in it; an operator has blanks on both sides.
const TOKEN = /-?\d+(?:\.\d+)?(?:e-?\d+)?(?: (?![×/+−] |[×/+−^]$)(?:[^\s()^]|\([^()\s]*\))+)?| ?[×/+−] ?|[()^π]/g

function printed(value: number): Bounds {
  if (value === 0) return { low: -1e-5, high: 1e-5 }
  const digits = Math.max(5, Math.floor(Math.log10(Math.abs(value))) + 1)
  const half = 0.5001 * 10 ** (Math.floor(Math.log10(Math.abs(value))) - digits + 1)
  return { low: value - half, high: value + half }
}

function corners(one: Bounds, other: Bounds, compute: (one: number, other: number) => number): Bounds {
  const all = [compute(one.low, other.low), compute(one.low, other.high), compute(one.high, other.low), compute(one.high, other.high)]
  return { low: Math.min(...all), high: Math.max(...all) }
}
