import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs'

/** The text of each page of a PDF, as its parts stand in the file. */
export async function pagesOf(pdf: Uint8Array): Promise<readonly string[]> {
  const document = await getDocument({ data: new Uint8Array(pdf), verbosity: 0 }).promise
  const pages: string[] = []
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent()
    pages.push(items.map((item) => ('str' in item ? item.str + (item.hasEOL ? ' ' : '') : '')).join('').replace(/\s+/g, ' '))
  }
  await document.destroy()
  return pages
}
