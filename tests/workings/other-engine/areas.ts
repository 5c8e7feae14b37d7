import { parseA1Ref } from '@borgar/fx'

/** Cells that a reference stands for; rows and columns from 0, ends included. */
export interface Area {
  readonly sheet: string
  readonly top: number
  readonly bottom: number
  readonly left: number
  readonly right: number
  readonly key: string
}

export interface Extent {
  readonly rows: number
  readonly columns: number
}

const known = new Map<string, Area | null>()

/** The cells of a reference, or of a defined name, seen from a sheet; whole columns and rows as far as their sheet is used. Undefined where there are none such. */
export function areaIn(text: string, sheet: string, names: ReadonlyMap<string, string>, extents: ReadonlyMap<string, Extent>): Area | undefined {
  const written = names.get(text.toLowerCase()) ?? text
  const reference = known.get(`${sheet}|${written}`) ?? parsed(written, sheet)
  known.set(`${sheet}|${written}`, reference)
  if (reference === null) return undefined
  const extent = extents.get(reference.sheet)
  if (extent === undefined) return undefined
  return reference.bottom < WHOLE && reference.right < WHOLE ? reference : { ...reference, bottom: Math.min(reference.bottom, extent.rows - 1), right: Math.min(reference.right, extent.columns - 1) }
}

const WHOLE = Number.MAX_SAFE_INTEGER

function parsed(text: string, sheet: string): Area | null {
  const reference = parseA1Ref(text)
  if (!reference || !('range' in reference) || !reference.range) return null
  const { top, left, bottom, right } = reference.range
  const area = { sheet: reference.context?.at(-1) ?? sheet, top: top ?? 0, left: left ?? 0, bottom: bottom ?? WHOLE, right: right ?? WHOLE }
  return { ...area, key: `${area.sheet}!${area.top}:${area.left}:${area.bottom}:${area.right}` }
}
