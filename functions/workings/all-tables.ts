import { saturationWorkingsTable } from '../ammonia/saturation-workings.ts'
import { headsWorkingsTable } from '../holdup/heads-workings.ts'
import { pipeSizesWorkingsTable } from '../lines/pipe-sizes-workings.ts'
import { unitsTable, type WorkingsTable } from './tables.ts'

/** Every table that the workings of some function look things up in. */
export const workingsTables: readonly WorkingsTable[] = [unitsTable, saturationWorkingsTable, headsWorkingsTable, pipeSizesWorkingsTable]
