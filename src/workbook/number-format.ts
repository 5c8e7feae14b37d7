export interface NumberFormat {
  /** Significant digits at most, 1 to 15; zeros at the end are left off. */
  readonly digits?: number
  /** Decimal places exactly, 0 to 12; wins over `digits`. */
  readonly decimals?: number
}

/** Significant digits shown where a cell asks for nothing else; digits before the decimal point are all shown then. */
export const DEFAULT_DIGITS = 5

const PLAIN_FROM = 1e-5
const PLAIN_BELOW = 1e9

/**
 * A number as a cell shows it: plain between 1e-5 and 1e9, with an exponent (1.25e-7) beyond.
 * The minus sign is a hyphen and the decimal sign a point, so that a copied number is read as a number anywhere.
 */
export function formatNumber(value: number, { digits, decimals }: NumberFormat = {}): string {
  if (!Number.isFinite(value)) return String(value)
  if (value === 0) return (0).toFixed(decimals ?? 0)
  const size = Math.abs(value)
  if (decimals !== undefined && size < PLAIN_BELOW) return withoutNegativeZero(value.toFixed(decimals))
  const shown = digits ?? Math.max(DEFAULT_DIGITS, size < PLAIN_BELOW ? wholeDigits(size) : 0)
  const rounded = Number(value.toPrecision(shown))
  const roundedSize = Math.abs(rounded)
  if (roundedSize >= PLAIN_FROM && roundedSize < PLAIN_BELOW) return String(rounded)
  return rounded.toExponential().replace('e+', 'e')
}

/** Characters before and after the decimal point, for aligning a column on it; an exponent counts as after. */
export function pointParts(text: string): { readonly before: number; readonly after: number } {
  const point = text.search(/[.e]/)
  return point < 0 ? { before: text.length, after: 0 } : { before: point, after: text.length - point }
}

function wholeDigits(size: number): number {
  return size < 1 ? 0 : Math.floor(Math.log10(size)) + 1
}

function withoutNegativeZero(text: string): string {
  return /[1-9]/.test(text) ? text : text.replace('-', '')
}
