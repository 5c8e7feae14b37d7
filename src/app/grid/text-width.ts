/** How wide a text is in px, at a font size in px. */
export type TextWidth = (text: string, fontSizePx: number) => number

const SAMPLE_SIZE_PX = 100
const WORDS_KEPT = 20_000

/** Measures with the page's own font; each word once. */
export function createTextWidth(fontFamily: string): TextWidth {
  const context = document.createElement('canvas').getContext('2d')
  if (!context) return averageTextWidth
  context.font = `${SAMPLE_SIZE_PX}px ${fontFamily}`
  const known = new Map<string, number>()
  return (text, fontSizePx) => {
    let width = known.get(text)
    if (width === undefined) {
      width = context.measureText(text).width
      if (known.size >= WORDS_KEPT) known.clear()
      known.set(text, width)
    }
    return (width / SAMPLE_SIZE_PX) * fontSizePx
  }
}

/** Where there is no page to measure with: a character of ordinary text is somewhat more than half as wide as the font is high. */
export const averageTextWidth: TextWidth = (text, fontSizePx) => text.length * 0.53 * fontSizePx
