import { normaliseUnitText } from '../units/spelling.ts'
import { units, type Unit } from '../units/units.ts'

/** A table that workings look things up in: blocks of numbers or texts, each called `table.block` in formulas. */
export interface WorkingsTable {
  readonly name: string
  readonly title: string
  readonly source: string
  readonly blocks: Readonly<Record<string, readonly (readonly (number | string)[])[]>>
}

/** How a unit may be written in a cell: formulas look for the very text, so that the spellings people use stand in the table. */
function spellings({ code, aliases }: Unit): string[] {
  const written = [code, ...aliases].flatMap((text) => [
    text, text.replace(/([a-z])([23])/g, (_, letter: string, power: string) => letter + (power === '2' ? '²' : '³')), text.replace(/([a-z])([23])/g, '$1^$2'),
    text.replaceAll('·', '.'),
  ])
  // Programs match a text whatever its capitals and take the first: the code stands first.
  return [...new Set(written)].filter((text) => normaliseUnitText(text) !== '')
}

const spelled = units.flatMap((unit) => spellings(unit).map((spelling) => ({ spelling, unit })))

export const unitsTable: WorkingsTable = {
  name: 'units',
  title: 'Units: SI value = value × factor + offset + gauge × pressure of the site',
  source: 'Exact by definition or NIST Special Publication 811 (2008)',
  blocks: {
    spelling: spelled.map(({ spelling }) => [spelling]),
    dimension: spelled.map(({ unit }) => [unit.dimension]),
    factor: spelled.map(({ unit }) => [unit.factor]),
    offset: spelled.map(({ unit }) => [unit.offset]),
    gauge: spelled.map(({ unit }) => [unit.gauge ? 1 : 0]),
  },
}
