import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'

const SOURCE = readFileSync(new URL('../../src/app/tokens.css', import.meta.url), 'utf8')

/** The colours of a block of declarations. */
const coloursIn = (block: string): Record<string, string> =>
  Object.fromEntries([...block.matchAll(/--([\w-]+): (#[0-9a-f]{6});/g)].map(([, name = '', colour = '']) => [name, colour]))

const [lightBlock = '', darkBlock = ''] = SOURCE.split('@media (prefers-color-scheme: dark)')
const light = coloursIn(lightBlock)
const dark = { ...light, ...coloursIn(darkBlock.split('@media')[0] ?? '') }

/** Relative luminance (WCAG 2.2). */
function luminance(colour: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const part = parseInt(colour.slice(at, at + 2), 16) / 255
    return part <= 0.04045 ? part / 12.92 : ((part + 0.055) / 1.055) ** 2.4
  })
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue
}

/** Contrast ratio (WCAG 2.2). */
function contrast(one = '', other = ''): number {
  const [high = 0, low = 0] = [luminance(one), luminance(other)].toSorted((a, b) => b - a)
  return (high + 0.05) / (low + 0.05)
}

const TEXTS = ['ink', 'ink-quiet', 'ink-faint', 'accent', 'problem', ...[0, 1, 2, 3, 4, 5].map((index) => `reference-${index}`)]
const PAPERS = ['paper', 'paper-sunk', 'paper-raised']

describe('colours of texts stand out by 4.5 to 1 from every paper (WCAG 2.2, 1.4.3)', () => {
  it('black on white is 21 to 1 (WCAG 2.2)', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 10)
  })

  describe.each([['light', light], ['dark', dark]] as const)('%s', (_name, colours) => {
    it.each(TEXTS.flatMap((text) => PAPERS.map((paper) => [text, paper] as const)))('%s on %s', (text, paper) => {
      expect(contrast(colours[text], colours[paper])).toBeGreaterThanOrEqual(4.5)
    })

    it('text on the accent', () => {
      expect(contrast(colours['accent-ink'], colours['accent'])).toBeGreaterThanOrEqual(4.5)
    })
  })
})
