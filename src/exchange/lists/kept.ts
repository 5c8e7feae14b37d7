import type { Workbook } from '../../workbook/document.ts'
import type { Edit } from '../../workbook/edits.ts'
import { mappingsProblem, type KeptColumn, type KeptMapping } from '../../workbook/kept-mapping.ts'
import { mappingSchema } from '../../workbook/schema.ts'
import type { WorkbookList } from './list.ts'
import { NO_CHOICES, type ColumnMapping, type Mapping } from './mapping.ts'
import type { SourceTable } from './source-table.ts'

/** A mapping in words, by headings instead of places, as a workbook keeps it. */
export function toKept(name: string, list: WorkbookList, source: SourceTable, mapping: Mapping): KeptMapping {
  const nameOf = (column: number | undefined): string | undefined => source.columns.find((one) => one.column === column)?.name
  const columns = list.columns.flatMap(({ column, heading }): KeptColumn[] => {
    const one = mapping.columns.get(column)
    if (!one || (one.from === undefined && one.constant === undefined)) return []
    const [from, unitFrom] = [nameOf(one.from), nameOf(one.unitColumn)]
    return [{
      to: heading,
      ...(from === undefined ? {} : { from }),
      ...(one.unit === undefined ? {} : { unit: one.unit }),
      ...(unitFrom === undefined ? {} : { unitFrom }),
      ...(one.constant === undefined ? {} : { constant: one.constant }),
      ...(one.choices.size === 0 ? {} : { choices: [...one.choices] }),
    }]
  })
  return { name: name.trim(), list: list.name, headings: source.columns.map((one) => one.name), columns }
}

/** The mapping for a file; what it has no column for, or the list no place, is left out and told. */
export function fromKept(kept: KeptMapping, list: WorkbookList, source: SourceTable): { readonly mapping: Mapping; readonly missing: readonly string[] } {
  const missing: string[] = []
  const columnOf = (name: string | undefined): number | undefined => {
    const found = name === undefined ? undefined : source.columns.find((one) => sameHeading(one.name, name))?.column
    if (name !== undefined && found === undefined) missing.push(`the file has no column “${name}”`)
    return found
  }
  const columns = new Map<number, ColumnMapping>()
  for (const one of kept.columns) {
    const column = list.columns.find(({ heading }) => sameHeading(heading, one.to))?.column
    if (column === undefined) {
      missing.push(`the list has no column “${one.to}”`)
      continue
    }
    const [from, unitColumn] = [columnOf(one.from), columnOf(one.unitFrom)]
    if (from === undefined && one.constant === undefined) continue
    columns.set(column, {
      ...(from === undefined ? {} : { from }),
      ...(one.unit === undefined ? {} : { unit: one.unit }),
      ...(unitColumn === undefined ? {} : { unitColumn }),
      ...(one.constant === undefined ? {} : { constant: one.constant }),
      choices: one.choices ? new Map(one.choices) : NO_CHOICES,
    })
  }
  return { mapping: { columns }, missing }
}

/** The kept mappings that fit a file and a list wholly, those made for that very list first. */
export function keptFor({ mappings = [] }: Workbook, list: WorkbookList, source: SourceTable): KeptMapping[] {
  return mappings
    .filter((kept) => kept.columns.length > 0 && fromKept(kept, list, source).missing.length === 0)
    .toSorted((one, other) => Number(other.list === list.name) - Number(one.list === list.name))
}

/** Keeps a mapping, in place of one of the same name. */
export function keepMapping({ mappings = [] }: Workbook, kept: KeptMapping): Edit[] {
  const at = mappings.findIndex(({ name }) => sameHeading(name, kept.name))
  return [{ kind: 'mappings', mappings: at < 0 ? [...mappings, kept] : mappings.with(at, kept) }]
}

export function renameMapping({ mappings = [] }: Workbook, name: string, to: string): Edit[] {
  return [{ kind: 'mappings', mappings: mappings.map((one) => (one.name === name ? { ...one, name: to.trim() } : one)) }]
}

export function removeMapping({ mappings = [] }: Workbook, name: string): Edit[] {
  return [{ kind: 'mappings', mappings: mappings.filter((one) => one.name !== name) }]
}

/** The mapping that a file of its own holds, or what is wrong with it. */
export function readMapping(text: string): KeptMapping | { readonly problem: string } {
  let raw: unknown
  try {
    raw = JSON.parse(text)
  } catch (error) {
    return { problem: `this is no JSON: ${error instanceof Error ? error.message : String(error)}` }
  }
  const parsed = mappingSchema.safeParse(raw)
  if (!parsed.success) {
    const [issue] = parsed.error.issues
    return { problem: `${issue && issue.path.length > 0 ? `${issue.path.join('.')}: ` : ''}${issue?.message ?? 'no mapping'}` }
  }
  const problem = mappingsProblem([parsed.data])
  return problem ? { problem: problem.message } : parsed.data
}

const sameHeading = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase()
