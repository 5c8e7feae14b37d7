import { STANDING_CAUTION } from '../../../functions/cautions.ts'
import { xml } from '../package/xml.ts'

export type Paper = 'Letter' | 'A4'

/** Landscape: the long side first. */
const PAPER: Readonly<Record<Paper, readonly [width: string, height: string]>> = { Letter: ['11in', '8.5in'], A4: ['297mm', '210mm'] }

/** The name of the page of sheets that go on so many pages across. */
export const masterPageName = (pages: number): string => `Lowside_20_${pages}`

/** Pages, by how many a sheet goes on across (OpenDocument 1.3, part 3, 16.5 and 16.9): title and sheet above, the caution and page numbers below. */
export function pageStyles(title: string, paper: Paper, pagesAcross: readonly number[]): { readonly layouts: string; readonly masters: string } {
  const [width, height] = PAPER[paper]
  const layout = (pages: number): string =>
    `<style:page-layout style:name="pm${pages}"><style:page-layout-properties fo:page-width="${width}" fo:page-height="${height}" style:print-orientation="landscape" ` +
    `fo:margin-top="0.3in" fo:margin-bottom="0.3in" fo:margin-left="0.5in" fo:margin-right="0.5in" style:scale-to-X="${pages}" style:scale-to-Y="0"/>` +
    `<style:header-style>${LINE} fo:margin-bottom="0.1in"/></style:header-style><style:footer-style>${LINE} fo:margin-top="0.1in"/></style:footer-style></style:page-layout>`
  const master = (pages: number): string =>
    `<style:master-page style:name="${masterPageName(pages)}" style:display-name="Lowside ${pages}" style:page-layout-name="pm${pages}">` +
    `<style:header>${region('left', xml(title))}${region('right', '<text:sheet-name>Sheet</text:sheet-name>')}</style:header>` +
    `<style:footer>${region('left', xml(FOOTER))}${region('right', 'Page <text:page-number>1</text:page-number> of <text:page-count>1</text:page-count>')}</style:footer></style:master-page>`
  return { layouts: pagesAcross.map(layout).join(''), masters: pagesAcross.map(master).join('') }
}

const LINE = '<style:header-footer-properties fo:min-height="0.3in" fo:margin-left="0in" fo:margin-right="0in"'

const region = (side: 'left' | 'right', inside: string): string => `<style:region-${side}><text:p>${inside}</text:p></style:region-${side}>`

/** The first sentence of the caution: a line has no room for more. */
const FOOTER = STANDING_CAUTION.slice(0, STANDING_CAUTION.indexOf('.'))
