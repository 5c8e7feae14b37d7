import { bracketedRoot } from './bracketed-root.ts'
import { heads, type HeadName } from './heads.ts'
import { horizontalLowerVolume } from './horizontal-vessel.ts'
import { verticalLowerVolume } from './vertical-vessel.ts'

export type Position = 'horizontal' | 'vertical'

/** A cylinder with two equal heads; diameter inside, length tangent to tangent. */
export interface Vessel {
  readonly diameterM: number
  readonly lengthM: number
  readonly headName: HeadName
  readonly position: Position
}

/** From the lowest to the highest point inside, m. */
export const insideHeight = ({ diameterM, lengthM, headName, position }: Vessel): number =>
  position === 'horizontal' ? diameterM : lengthM + 2 * heads[headName].depth * diameterM

/** Internal volume, m³. */
export const vesselVolume = ({ diameterM, lengthM, headName }: Vessel): number =>
  (Math.PI / 4) * diameterM ** 2 * lengthM + 2 * heads[headName].volume * diameterM ** 3

/** Liquid volume, m³, at a level from the lowest point, 0 to the inside height. Upside down the vessel is the same: the upper half mirrors the lower. */
export function liquidVolume(vessel: Vessel, levelM: number): number {
  const heightM = insideHeight(vessel)
  const lowerVolume = LOWER_VOLUME[vessel.position]
  return levelM <= heightM / 2 ? lowerVolume(vessel, levelM) : vesselVolume(vessel) - lowerVolume(vessel, heightM - levelM)
}

/** The level, m, that holds a liquid volume, 0 to the vessel's: inverse of {@link liquidVolume}. */
export function liquidLevel(vessel: Vessel, volumeM3: number): number {
  const heightM = insideHeight(vessel)
  const fullM3 = vesselVolume(vessel)
  const lowerVolume = LOWER_VOLUME[vessel.position]
  // Found from the nearer end, where a small volume is still known to all its digits.
  const lower = volumeM3 <= fullM3 / 2
  const nearerM3 = lower ? volumeM3 : missing(volumeM3, fullM3)
  const levelM = bracketedRoot((level) => lowerVolume(vessel, level) - nearerM3, 0, heightM / 2)
  return lower ? levelM : heightM - levelM
}

/**
 * How much a vessel holds less than all. Its own volume, gone through other units and back, is out by a few last digits, from which the
 * level at a dome's top would make a hundred-millionth of its height: so little is nothing.
 */
const missing = (volumeM3: number, fullM3: number): number => (fullM3 - volumeM3 <= FULL_WITHIN * fullM3 ? 0 : fullM3 - volumeM3)

/** As a share of the vessel: some twenty roundings. */
export const FULL_WITHIN = 4e-15

/** Surface, m², of shell and both heads of a vessel of this diameter. */
export const vesselSurface = (diameterM: number, lengthM: number, headName: HeadName): number =>
  Math.PI * diameterM * lengthM + 2 * heads[headName].surface * diameterM ** 2

const LOWER_VOLUME: Readonly<Record<Position, (vessel: Vessel, levelM: number) => number>> = {
  horizontal: horizontalLowerVolume,
  vertical: verticalLowerVolume,
}
