import { workingsTables } from '../../../functions/workings/all-tables.ts'
import type { Block } from './step-values.ts'

/** The blocks of the shared tables as steps look things up in them, by `table.block`. */
export const TABLE_BLOCKS: ReadonlyMap<string, Block> = new Map(
  workingsTables.flatMap(({ name, blocks }) => Object.entries(blocks).map(([block, rows]) => [`${name}.${block}`, { rows: rows.length, columns: rows[0]?.length ?? 0, items: rows.flat() }] as const)),
)
