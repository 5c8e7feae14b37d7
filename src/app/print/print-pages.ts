import type { Pages } from '../../pages/pages.ts'

/** Hands pages to the browser's printing. They stand in the page, unseen on the screen, until that is over. */
export function printPages({ markup, style, pages }: Pages): void {
  const place = document.createElement('div')
  place.className = 'report-place'
  // A tree of its own: what the app says of its looks does not reach it.
  const paper = place.attachShadow({ mode: 'open' })
  paper.innerHTML = markup.markup // every text in it has been escaped by `element`
  paper.adoptedStyleSheets = [styleSheet(style)]
  const pageSheet = styleSheet(pages)
  document.body.append(place)
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, pageSheet]
  window.addEventListener('afterprint', () => {
    place.remove()
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((sheet) => sheet !== pageSheet)
  }, { once: true })
  window.print()
}

function styleSheet(text: string): CSSStyleSheet {
  const sheet = new CSSStyleSheet()
  sheet.replaceSync(text)
  return sheet
}
