import { drawFigure, figureName } from '../figures/draw-figure.ts'
import type { FigureSource } from '../figures/read-parts.ts'
import { sceneText } from '../figures/scene-text.ts'
import { figureKind } from '../workbook/figure-kinds.ts'
import type { NumberedFigure } from './figures-of-sheets.ts'
import { element, type Html } from '../pages/html.ts'

/** Type of a drawing is larger than that of the report: it is drawn wider, and then shrunk to fit. */
const SHRUNK_TO = 0.9

/** A figure on paper: number and name, the drawing, what is to be seen in words, and what is not drawn; or, in words, why there is no drawing. */
export function printedFigure({ figure, number }: NumberedFigure, source: FigureSource, widthPx: number): Html {
  const name = figureName(figure)
  const drawn = drawFigure(figure, source, widthPx / SHRUNK_TO)
  return element(
    'figure', {},
    element('figcaption', {}, element('b', {}, `Figure ${number}`), ` ${name}`),
    'faults' in drawn
      ? [element('p', {}, `${figureKind(figure.kind).label}: not drawn.`), list(drawn.faults)]
      // The drawing escapes its own texts.
      : [{ markup: sceneText(drawn.scene, name, drawn.description) }, element('p', {}, drawn.description), drawn.remarks.length === 0 ? undefined : list(drawn.remarks)],
  )
}

const list = (lines: readonly string[]): Html => element('ul', {}, lines.map((line) => element('li', {}, line)))
