/** A number format's code as {@link numberCode} gives it: General, so many places, or so many and a power of ten. */
interface Places {
  readonly places: number
  readonly scientific: boolean
}

function placesOf(format: string): Places | undefined {
  const found = /^0(?:\.(0+))?(E\+0)?$/.exec(format)
  return found === null ? undefined : { places: found[1]?.length ?? 0, scientific: found[2] !== undefined }
}

/** A number style (OpenDocument 1.3, part 3, 16.29) for a format's code; undefined for General, which needs none. */
export function numberStyle(format: string, name: string): string | undefined {
  const found = placesOf(format)
  if (found === undefined) {
    if (format === 'General') return undefined
    throw new Error(`there is no number style for "${format}"`)
  }
  const digits = `number:decimal-places="${found.places}" number:min-decimal-places="${found.places}" number:min-integer-digits="1"`
  return `<number:number-style style:name="${name}">${found.scientific ? `<number:scientific-number ${digits} number:min-exponent-digits="1"/>` : `<number:number ${digits}/>`}</number:number-style>`
}

/** What fits into a cell where nothing is said of its places; the value itself stands beside the text in full. */
const SHOWN_DIGITS = 10

/** A number as its format shows it: what a reader finds in the file that computes nothing itself. */
export function shownNumber(value: number, format = 'General'): string {
  const found = placesOf(format)
  if (found === undefined) return String(Number(value.toPrecision(SHOWN_DIGITS)))
  return found.scientific ? value.toExponential(found.places).replace('e', 'E') : value.toFixed(found.places)
}
