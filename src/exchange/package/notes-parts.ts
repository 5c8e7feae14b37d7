import { printAddress } from '../../workbook/address.ts'
import type { SheetNote } from './sheet-part.ts'
import { cellText, DECLARATION } from './xml.ts'

/** The comments part of a sheet (ECMA-376, part 1, 18.7). */
export const commentsPart = (notes: readonly SheetNote[]): string =>
  `${DECLARATION}<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><authors><author>Lowside</author></authors><commentList>` +
  notes.map(({ row, column, text }) => `<comment ref="${printAddress(row, column)}" authorId="0"><text><r><t xml:space="preserve">${cellText(text)}</t></r></text></comment>`).join('') +
  '</commentList></comments>'

/** The drawing that says where the boxes of the notes appear (ECMA-376, part 4, 19.4), which programs still ask for. */
export const notesDrawing = (notes: readonly SheetNote[]): string =>
  '<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel">' +
  '<v:shapetype id="note" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"><v:stroke joinstyle="miter"/><v:path gradientshapeok="t" o:connecttype="rect"/></v:shapetype>' +
  notes.map(({ row, column, text }, index) =>
    `<v:shape id="note${index + 1}" type="#note" style="position:absolute;visibility:hidden" fillcolor="#fffbe6" o:insetmode="auto"><v:fill color2="#fffbe6"/><v:textbox/>` +
    `<x:ClientData ObjectType="Note"><x:MoveWithCells/><x:SizeWithCells/><x:Anchor>${anchor(row, column, text)}</x:Anchor><x:AutoFill>False</x:AutoFill><x:Row>${row}</x:Row><x:Column>${column}</x:Column></x:ClientData></v:shape>`).join('') +
  '</xml>'

/** Left column and offset, top row and offset, right, bottom: beside the cell, high enough for the text. */
const anchor = (row: number, column: number, text: string): string => `${column + 1}, 12, ${row}, 4, ${column + 5}, 12, ${row + Math.min(20, 3 + Math.ceil(text.length / 50))}, 4`
