import { MAX_TEXT } from './limits.ts'

/** How the columns of someone's list go into a list of the workbook, kept under a name for the next file with the same headings. */
export interface KeptMapping {
  readonly name: string
  /** The list it is for: its sheet, where that has several with the first heading after it. */
  readonly list: string
  /** The headings of the file it was made with, by which another one is known again. */
  readonly headings: readonly string[]
  readonly columns: readonly KeptColumn[]
}

export interface KeptColumn {
  /** The heading in the list. */
  readonly to: string
  /** The heading in the file. */
  readonly from?: string
  /** The unit of the file's column; `unitFrom` is the heading of a column that names it row by row. */
  readonly unit?: string
  readonly unitFrom?: string
  /** As typed, for all rows. */
  readonly constant?: string
  /** What texts of the file stand for. */
  readonly choices?: readonly (readonly [text: string, choice: string])[]
}

/** Far above any use, and few enough to list. */
export const MAX_MAPPINGS = 200
export const MAX_MAPPING_COLUMNS = 1000
const MAX_NAME = 100

/** What of the mappings no file accepts, in words, and in which of them. */
export function mappingsProblem(mappings: readonly KeptMapping[]): { readonly index: number; readonly message: string } | undefined {
  if (mappings.length > MAX_MAPPINGS) return { index: MAX_MAPPINGS, message: `${mappings.length} mappings; accepted: up to ${MAX_MAPPINGS}` }
  const names = new Set<string>()
  for (const [index, mapping] of mappings.entries()) {
    const folded = mapping.name.trim().toLowerCase()
    const message = folded === ''
      ? 'a mapping without a name; accepted: a name'
      : names.has(folded) ? `name “${mapping.name}” is taken by another mapping, upper and lower case being the same` : oversize(mapping)
    if (message !== undefined) return { index, message }
    names.add(folded)
  }
  return undefined
}

function oversize({ name, list, headings, columns }: KeptMapping): string | undefined {
  if (name.length > MAX_NAME) return `the name of a mapping has ${name.length} characters; accepted: up to ${MAX_NAME}`
  if (headings.length > MAX_MAPPING_COLUMNS || columns.length > MAX_MAPPING_COLUMNS || columns.some(({ choices = [] }) => choices.length > MAX_MAPPING_COLUMNS)) {
    return `a mapping of too many columns or choices; accepted: up to ${MAX_MAPPING_COLUMNS} of each`
  }
  const texts = [list, ...headings, ...columns.flatMap(({ to, from = '', unit = '', unitFrom = '', constant = '', choices = [] }) => [to, from, unit, unitFrom, constant, ...choices.flat()])]
  return texts.some((text) => text.length > MAX_TEXT) ? `a text of a mapping is too long; accepted: up to ${MAX_TEXT} characters` : undefined
}

export const sameMappings = (one: readonly KeptMapping[] | undefined, other: readonly KeptMapping[] | undefined): boolean =>
  one === other || JSON.stringify((one ?? []).map(normalMapping)) === JSON.stringify((other ?? []).map(normalMapping))

/** Its members in one order, as they are written. */
export const normalMapping = ({ name, list, headings, columns }: KeptMapping): KeptMapping => ({
  name, list,
  headings: [...headings],
  columns: columns.map(({ to, from, unit, unitFrom, constant, choices }) => ({
    to,
    ...(from === undefined ? {} : { from }),
    ...(unit === undefined ? {} : { unit }),
    ...(unitFrom === undefined ? {} : { unitFrom }),
    ...(constant === undefined ? {} : { constant }),
    ...(choices === undefined || choices.length === 0 ? {} : { choices: choices.map(([text, choice]) => [text, choice] as const) }),
  })),
})
