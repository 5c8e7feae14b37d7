/** Px of the letters of every text in a drawing. */
export const TEXT_PX = 12

/** How much wider strong text is. */
export const STRONG = 1.15

/** Height that a line of text takes. */
export const LINE_PX = 15

/** Widths per letter height, of the widest of the fonts that the screen may use, so that no text is wider in truth. */
const WIDTHS: readonly (readonly [letters: string, width: number])[] = [
  [" ,.:;'|!il", 0.36], ['jtfrI()[]/-·', 0.46], ['mwMW%→—Δ', 1.02], ['ABCDEFGHJKLNOPQRSTUVXYZ', 0.8],
]
const USUAL = 0.66

const byLetter = new Map(WIDTHS.flatMap(([letters, width]) => [...letters].map((letter) => [letter, width] as const)))

/** How wide a text is at most, px. */
export const textWidth = (text: string): number => TEXT_PX * [...text].reduce((sum, letter) => sum + (byLetter.get(letter) ?? (letter > '\u2e80' ? 1.1 : USUAL)), 0)

/** As much of the beginning of a text as fits, with a sign that there is more. */
export function fitted(text: string, widthPx: number): string {
  if (textWidth(text) <= widthPx) return text
  const letters = [...text]
  while (letters.length > 1 && textWidth(`${letters.join('').trimEnd()}…`) > widthPx) letters.pop()
  return `${letters.join('').trimEnd()}…`
}

/** A text in lines that fit, broken at blanks; a single word may be cut. */
export function inLines(text: string, widthPx: number): string[] {
  const lines: string[] = []
  for (const word of text.split(/\s+/).filter(Boolean)) {
    const last = lines.at(-1)
    if (last !== undefined && textWidth(`${last} ${word}`) <= widthPx) lines[lines.length - 1] = `${last} ${word}`
    else lines.push(fitted(word, widthPx))
  }
  return lines
}
