import { createSignal, onCleanup, onMount, type Accessor } from 'solid-js'
import type { TextWidth } from './text-width.ts'

/** How texts are set where the reader's own style has a say in it (WCAG 1.4.12). */
export interface TextSpacing {
  /** Beside each character and each blank, as parts of the font size. */
  readonly letters: number
  readonly words: number
  readonly linePx: number
}

const USUAL: TextSpacing = { letters: 0, words: 0, linePx: 18 }

/** The spacing of the cells' text, read from an unseen one, whose size changes with it. */
export function createTextSpacing(): Accessor<TextSpacing> {
  const [spacing, setSpacing] = createSignal(USUAL, { equals: (one, other) => one.letters === other.letters && one.words === other.words && one.linePx === other.linePx })
  onMount(() => {
    const probe = document.createElement('span')
    probe.className = 'spacing-probe'
    probe.ariaHidden = 'true'
    probe.textContent = 'A text\nin two lines'
    document.body.append(probe)
    const observer = new ResizeObserver(() => setSpacing(spacingOf(getComputedStyle(probe))))
    observer.observe(probe)
    onCleanup(() => {
      observer.disconnect()
      probe.remove()
    })
  })
  return spacing
}

function spacingOf({ letterSpacing, wordSpacing, lineHeight, fontSize }: CSSStyleDeclaration): TextSpacing {
  const part = (spacing: string): number => (Number.parseFloat(spacing) || 0) / Number.parseFloat(fontSize)
  return { letters: part(letterSpacing), words: part(wordSpacing), linePx: Number.parseFloat(lineHeight) || USUAL.linePx }
}

/** Widths with that spacing. */
export const spacedWidth = (textWidth: TextWidth, { letters, words }: TextSpacing): TextWidth =>
  letters === 0 && words === 0
    ? textWidth
    : (text, fontSizePx) => textWidth(text, fontSizePx) + fontSizePx * (letters * text.length + words * (text.split(' ').length - 1))
