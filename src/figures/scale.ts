/** From numbers to px along an axis. */
export interface Scale {
  readonly from: number
  readonly to: number
  readonly px: (value: number) => number
}

/** A straight scale; `startPx` is where `from` lies. One of no extent puts everything in the middle. */
export function linearScale(from: number, to: number, startPx: number, endPx: number): Scale {
  const px = (value: number): number => (to === from ? (startPx + endPx) / 2 : startPx + ((value - from) / (to - from)) * (endPx - startPx))
  return { from, to, px }
}

/** The round step (1, 2 or 5 of some power of ten) that makes about so many. */
export function roundStep(span: number, count: number): number {
  const rough = span / Math.max(1, count)
  const power = 10 ** Math.floor(Math.log10(rough))
  const share = rough / power
  return power * (share <= 1 ? 1 : share <= 2 ? 2 : share <= 5 ? 5 : 10)
}

/** Round numbers between two, about so many. */
export function ticks(from: number, to: number, count: number): number[] {
  if (!(to > from) || !Number.isFinite(to - from)) return Number.isFinite(from) ? [from] : []
  const step = roundStep(to - from, count)
  const first = Math.ceil(from / step - 1e-9)
  const last = Math.floor(to / step + 1e-9)
  return Array.from({ length: last - first + 1 }, (_, index) => Number(((first + index) * step).toPrecision(12)))
}

/** The range of round numbers that holds these, at least `least` wide. */
export function roundRange(values: readonly number[], count: number, least = 0): readonly [from: number, to: number] {
  const low = Math.min(...values)
  const high = Math.max(...values)
  const missing = Math.max(0, (least || (Math.abs(high) < 1e-9 ? 1 : Math.abs(high) * 0.1)) - (high - low)) / 2
  const [from, to] = [low - missing, high + missing]
  const step = roundStep(to - from, count)
  return [Math.floor(from / step + 1e-9) * step, Math.ceil(to / step - 1e-9) * step]
}

/** 1, 2 and 5 of each power of ten between two positive numbers. */
export function logTicks(from: number, to: number): number[] {
  const found: number[] = []
  for (let power = Math.floor(Math.log10(from)); power <= Math.log10(to); power++) {
    for (const digit of [1, 2, 5]) {
      const tick = Number((digit * 10 ** power).toPrecision(12))
      if (tick >= from && tick <= to) found.push(tick)
    }
  }
  return found
}

/** A number of an axis, with commas between thousands. */
export const tickText = (value: number): string => (Math.abs(value) >= 1e9 ? value.toExponential().replace('e+', 'e') : value.toLocaleString('en', { maximumFractionDigits: 9 }).replace('-', '−'))
