/**
 * Steel pipe by ASME B36.10M: nominal size, outside diameter, and the walls of schedules 40 and 80 and of weights STD and XS, in inches.
 * The standard has no schedule 40 of nominal size 22. The walls, written down from memory, agree with the standard's metric walls.
 */
const TABLE = [
  ['1/2', 0.84, 0.109, 0.147, 0.109, 0.147],
  ['3/4', 1.05, 0.113, 0.154, 0.113, 0.154],
  ['1', 1.315, 0.133, 0.179, 0.133, 0.179],
  ['1-1/4', 1.66, 0.14, 0.191, 0.14, 0.191],
  ['1-1/2', 1.9, 0.145, 0.2, 0.145, 0.2],
  ['2', 2.375, 0.154, 0.218, 0.154, 0.218],
  ['2-1/2', 2.875, 0.203, 0.276, 0.203, 0.276],
  ['3', 3.5, 0.216, 0.3, 0.216, 0.3],
  ['3-1/2', 4, 0.226, 0.318, 0.226, 0.318],
  ['4', 4.5, 0.237, 0.337, 0.237, 0.337],
  ['5', 5.563, 0.258, 0.375, 0.258, 0.375],
  ['6', 6.625, 0.28, 0.432, 0.28, 0.432],
  ['8', 8.625, 0.322, 0.5, 0.322, 0.5],
  ['10', 10.75, 0.365, 0.594, 0.365, 0.5],
  ['12', 12.75, 0.406, 0.688, 0.375, 0.5],
  ['14', 14, 0.438, 0.75, 0.375, 0.5],
  ['16', 16, 0.5, 0.844, 0.375, 0.5],
  ['18', 18, 0.562, 0.938, 0.375, 0.5],
  ['20', 20, 0.594, 1.031, 0.375, 0.5],
  ['22', 22, undefined, 1.125, 0.375, 0.5],
  ['24', 24, 0.688, 1.219, 0.375, 0.5],
] as const

export type PipeSize = (typeof TABLE)[number][0]

export const schedules = ['40', '80', 'STD', 'XS'] as const
export type Schedule = (typeof schedules)[number]

/** Nominal sizes, the smallest first. */
export const pipeSizes: readonly PipeSize[] = TABLE.map(([size]) => size)

/** Inside diameter, m; undefined where the standard has no such wall for the size. */
export function pipeBore(size: PipeSize, schedule: Schedule): number | undefined {
  const [, outside, ...walls] = rowOf(size)
  const wall = walls[schedules.indexOf(schedule)]
  return wall === undefined ? undefined : (outside - 2 * wall) * INCH_M
}

/** The schedules in which the standard has a size. */
export const schedulesOf = (size: PipeSize): readonly Schedule[] => schedules.filter((schedule) => pipeBore(size, schedule) !== undefined)

/** The smallest size with at least the inside diameter `boreM`; undefined where even the largest has less. */
export const nextPipeSize = (boreM: number, schedule: Schedule): PipeSize | undefined =>
  pipeSizes.find((size) => (pipeBore(size, schedule) ?? 0) >= boreM * (1 - REACHED))

/** Inside diameter, m, of the largest size. */
export const largestBore = (schedule: Schedule): number => Math.max(...pipeSizes.map((size) => pipeBore(size, schedule) ?? 0))

/** A bore this close, relatively, to that of a size is the bore of the size: its value may have come through another unit. */
export const REACHED = 1e-9

const INCH_M = 0.0254

// Non-null: a PipeSize is the name of a row.
const rowOf = (size: PipeSize) => TABLE.find(([name]) => name === size)!
