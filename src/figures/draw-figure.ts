import { figureKind, type FigureKind } from '../workbook/figure-kinds.ts'
import type { Figure } from '../workbook/figure.ts'
import { drawCharge } from './charge-bars.ts'
import { drawCirculation } from './circulation.ts'
import { LEAST_WIDTH, type Draw, type Drawing } from './drawing.ts'
import { drawDrum } from './drum.ts'
import { figureValues, type Faults, type FigureSource } from './read-parts.ts'
import { drawSaturation } from './saturation-curve.ts'
import { drawSetPoints } from './set-points.ts'
import { drawZones } from './zone-ladder.ts'

const DRAW: Readonly<Record<FigureKind, Draw>> = {
  drum: drawDrum, zones: drawZones, circulation: drawCirculation, charge: drawCharge, setPoints: drawSetPoints, saturation: drawSaturation,
}

/** More are counted only. */
const MOST_REMARKS = 6

/** A figure as its cells are now, so many px wide; what keeps it from being drawn is told instead. */
export function drawFigure(figure: Figure, source: FigureSource, widthPx: number): Drawing | Faults {
  const values = figureValues(figure, source)
  if ('faults' in values) return values
  const drawn = DRAW[figure.kind](figure, values, Math.max(LEAST_WIDTH, Math.floor(widthPx)))
  if ('faults' in drawn) return { faults: [...drawn.faults, ...few(values.remarks)] }
  return { ...drawn, remarks: few(drawn.remarks) }
}

/** What a figure goes by: its title, or its kind where it has none. */
export const figureName = ({ title, kind }: Figure): string => title.trim() || figureKind(kind).label

function few(remarks: readonly string[]): readonly string[] {
  return remarks.length <= MOST_REMARKS ? remarks : [...remarks.slice(0, MOST_REMARKS), `And ${remarks.length - MOST_REMARKS} more.`]
}
