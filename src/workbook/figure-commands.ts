import type { Workbook } from './document.ts'
import type { Edit } from './edits.ts'
import type { Figure } from './figure.ts'
import { WorkbookProblem } from './problem.ts'

/** A figure after the others. */
export function addFigure({ figures }: Workbook, figure: Figure): Edit[] {
  return [{ kind: 'figures', figures: [...figures, figure] }]
}

/** Another figure in place of one. */
export function changeFigure(workbook: Workbook, at: number, figure: Figure): Edit[] {
  return [{ kind: 'figures', figures: placed(workbook, at).with(at, figure) }]
}

/** `to`: where it is then. */
export function moveFigure(workbook: Workbook, at: number, to: number): Edit[] {
  const figures = placed(workbook, at)
  placed(workbook, to)
  return [{ kind: 'figures', figures: figures.toSpliced(at, 1).toSpliced(to, 0, ...figures.slice(at, at + 1)) }]
}

export function removeFigure(workbook: Workbook, at: number): Edit[] {
  return [{ kind: 'figures', figures: placed(workbook, at).toSpliced(at, 1) }]
}

/** The figure with one of its parts bound to other cells; to none where there is no text. */
export function withBinding(figure: Figure, part: string, reference: string): Figure {
  const { [part]: _before, ...others } = figure.bindings
  return { ...figure, bindings: reference === '' ? others : { ...others, [part]: reference } }
}

function placed({ figures }: Workbook, at: number): readonly Figure[] {
  if (figures[at] === undefined) throw new WorkbookProblem(`there is no figure number ${at + 1}; there are ${figures.length}`)
  return figures
}
