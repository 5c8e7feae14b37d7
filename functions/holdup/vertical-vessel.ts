import { heads } from './heads.ts'
import type { Vessel } from './vessel.ts'

/** Liquid in a vertical vessel up to half its inside height, m³: the bottom head, then the shell above it. */
export function verticalLowerVolume({ diameterM, lengthM, headName }: Vessel, levelM: number): number {
  const head = heads[headName]
  const aboveHeadM = Math.min(levelM - head.depth * diameterM, lengthM)
  return aboveHeadM <= 0
    ? diameterM ** 3 * head.standing(levelM / diameterM)
    : diameterM ** 3 * head.volume + (Math.PI / 4) * diameterM ** 2 * aboveHeadM
}
