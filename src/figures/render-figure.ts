import { figureKind } from '../workbook/figure-kinds.ts'
import type { Figure } from '../workbook/figure.ts'
import { drawFigure, figureName } from './draw-figure.ts'
import type { FigureTable } from './drawing.ts'
import type { FigureSource } from './read-parts.ts'
import { escaped, sceneText } from './scene-text.ts'

/** Fits a printed page of A4 or letter between its margins. */
const PAGE_WIDTH_PX = 640

/** A figure as HTML for a page that has figures.css: caption, drawing, remarks and the numbers as a table; or, in words, why it is not drawn. */
export function renderFigure(figure: Figure, source: FigureSource, widthPx = PAGE_WIDTH_PX): string {
  const drawn = drawFigure(figure, source, widthPx)
  const name = figureName(figure)
  const body =
    'faults' in drawn
      ? `<div class="figure-faults"><p>${escaped(figureKind(figure.kind).label)}: not drawn.</p>${listText(drawn.faults)}</div>`
      : `${sceneText(drawn.scene, name, drawn.description)}${drawn.remarks.length > 0 ? `<div class="figure-remarks">${listText(drawn.remarks)}</div>` : ''}${tableText(drawn.table)}`
  return `<figure class="figure"><figcaption>${escaped(name)}</figcaption>${body}</figure>`
}

const listText = (lines: readonly string[]): string => `<ul>${lines.map((one) => `<li>${escaped(one)}</li>`).join('')}</ul>`

function tableText({ head, rows }: FigureTable): string {
  const row = (cells: readonly string[], tag: 'th' | 'td'): string =>
    `<tr>${cells.map((cell, index) => (tag === 'th' ? `<th scope="col">${escaped(cell)}</th>` : index === 0 ? `<th scope="row">${escaped(cell)}</th>` : `<td>${escaped(cell)}</td>`)).join('')}</tr>`
  return `<details class="figure-numbers"><summary>The numbers as a table</summary><table><thead>${row(head, 'th')}</thead><tbody>${rows.map((cells) => row(cells, 'td')).join('')}</tbody></table></details>`
}
