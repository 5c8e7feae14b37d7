import { createResource, type Accessor } from 'solid-js'
import { areaSource } from '../../figures/area-source.ts'
import { figureAreas } from '../../figures/binding-place.ts'
import type { FigureSource } from '../../figures/read-parts.ts'
import type { Figure } from '../../workbook/figure.ts'
import { frameDrawn } from './frame-drawn.ts'
import type { Session } from './session.ts'

/** A figure with the values that it is drawn from, both as they were at one time. */
export interface FigureRead {
  readonly figure: Figure
  readonly source: FigureSource
}

/** What a figure is drawn from, read anew after each change; what was read last stays until then. */
export function createFigureSource({ document, recalculation }: Pick<Session, 'document' | 'recalculation'>, figure: Accessor<Figure>): Accessor<FigureRead | undefined> {
  const asked = () => ({ figure: figure(), workbook: document.workbook(), version: recalculation.version() })
  let turn = 0
  const [read] = createResource(asked, async ({ figure: one, workbook, version }): Promise<FigureRead | undefined> => {
    const mine = ++turn
    // First the grid, as it is the place of typing; of a row of changes only the last one asks.
    await frameDrawn()
    if (version === 0 || mine !== turn) return undefined
    const areas = figureAreas(one, workbook)
    const values = await Promise.all(areas.map(({ sheet, area }) => recalculation.ask((service) => service.read(sheet, area))))
    return { figure: one, source: areaSource(workbook, areas, values) }
  })
  let last: FigureRead | undefined
  return () => (last = read.latest ?? last)
}
