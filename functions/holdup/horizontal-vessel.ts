import { liquidAreaBelow } from '../separation/drum-area.ts'
import { heads } from './heads.ts'
import type { Vessel } from './vessel.ts'

/** Liquid in a horizontal vessel up to half its diameter, m³: the segment along the shell and the part of both heads. */
export const horizontalLowerVolume = ({ diameterM, lengthM, headName }: Vessel, levelM: number): number =>
  liquidAreaBelow(diameterM, levelM) * lengthM + 2 * diameterM ** 3 * heads[headName].lying(levelM / diameterM)
