import { torisphericalHead, type Torisphere } from './torispherical-head.ts'

/** A head of unit diameter. A real one has lengths × D, areas × D², volumes × D³. */
export interface Head {
  /** From the tangent line to the innermost point of the head. */
  readonly depth: number
  readonly volume: number
  readonly surface: number
  /** Liquid in the head of a horizontal vessel; level from the bottom, 0 to 0.5. */
  readonly lying: (level: number) => number
  /** Liquid in the bottom head of a vertical vessel; level from its lowest point, 0 to its depth. */
  readonly standing: (level: number) => number
  /** The profile of a dished head. */
  readonly torisphere?: Torisphere
}

export type HeadName = 'flat' | '2:1' | 'hemi' | 'dished 6%' | 'dished 10%'

/** The heads by the names that formulas use. */
export const heads: Readonly<Record<HeadName, Head>> = {
  'flat': { depth: 0, volume: 0, surface: Math.PI / 4, lying: () => 0, standing: () => 0 },
  '2:1': ellipsoidalHead(1 / 4),
  'hemi': ellipsoidalHead(1 / 2),
  'dished 6%': torisphericalHead(1, 0.06),
  'dished 10%': torisphericalHead(1, 0.1),
}

export const headNames = Object.keys(heads) as readonly HeadName[]

/** Half an oblate spheroid; depth 1/2 is a half sphere (Jones, Calculating Tank Volume, 2003). */
function ellipsoidalHead(depth: number): Head {
  const eccentricity = Math.sqrt(1 - (2 * depth) ** 2)
  return {
    depth,
    volume: (Math.PI * depth) / 6,
    surface: (Math.PI / 4) * (1 + (2 * depth) ** 2 * (eccentricity === 0 ? 1 : Math.atanh(eccentricity) / eccentricity)),
    lying: (level) => (Math.PI / 2) * depth * level ** 2 * (1 - (2 / 3) * level),
    standing: (level) => (Math.PI / 4) * (level / depth) ** 2 * (depth - level / 3),
  }
}
