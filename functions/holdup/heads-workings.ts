import { block, type Expression } from '../workings/expression.ts'
import type { WorkingsTable } from '../workings/tables.ts'
import type { Steps } from '../workings/workings.ts'
import { headNames, heads, type Head } from './heads.ts'
import { KNUCKLE_RULE, type Torisphere } from './torispherical-head.ts'

const column = (value: (head: Head) => number): readonly (readonly number[])[] => headNames.map((name) => [value(heads[name])])
const profile = (key: keyof Torisphere) => column(({ torisphere }) => torisphere?.[key] ?? 0)

/** What formulas take from the heads, a row a head, and the rule for the knuckle of a lying dished one. */
export const headsWorkingsTable: WorkingsTable = {
  name: 'heads',
  title: 'Heads of unit diameter, of dished ones the profile in radii and depths; nodes and weights of the Gauss–Legendre rule for a lying knuckle',
  source:
    'Spheroid and sphere: Jones, Calculating Tank Volume (2003). Dished: geometry of a spherical crown tangent to a toroidal knuckle; ' +
    'radii by common practice from ASME BPVC Section VIII Division 1, UG-32, and DIN 28011. Rule: Abramowitz & Stegun 25.4.29',
  blocks: {
    name: headNames.map((name) => [name]),
    depth: column(({ depth }) => depth),
    volume: column(({ volume }) => volume),
    surface: column(({ surface }) => surface),
    crown: profile('crown'),
    knuckle: profile('knuckle'),
    ring: profile('ring'),
    centre: profile('centre'),
    touchRadius: profile('touchRadius'),
    touchDepth: profile('touchDepth'),
    crownHeight: profile('crownHeight'),
    node: KNUCKLE_RULE.nodes.map((node) => [node]),
    weight: KNUCKLE_RULE.weights.map((weight) => [weight]),
  },
}

/** The head's row in the table: one step. */
export const headRow = (headName: Expression, steps: Steps): Expression =>
  steps.step('row of the heads', '', `MATCH(${headName},${block('heads', 'name')},0)`)

/** One value of the head in that row, for unit diameter. */
export const headValue = (row: Expression, name: 'depth' | 'volume' | 'surface' | keyof Torisphere): Expression => `INDEX(${block('heads', name)},${row})`

/** A head of unit diameter in workings; lengths of the profile are 0 where it is not dished. */
export type WrittenHead = Readonly<Record<'depth' | 'volume' | keyof Torisphere, Expression>>

/** All that a level in the head needs, a step each. */
export function headSteps(row: Expression, steps: Steps): WrittenHead {
  const step = (label: string, name: keyof WrittenHead) => steps.step(`${label}, at unit diameter`, '', headValue(row, name))
  return {
    depth: step('depth of a head', 'depth'),
    volume: step('volume of a head', 'volume'),
    crown: step('crown radius', 'crown'),
    knuckle: step('knuckle radius', 'knuckle'),
    ring: step('radius of the ring of knuckle centres', 'ring'),
    centre: step('crown centre behind the tangent line', 'centre'),
    touchRadius: step('radius where crown and knuckle touch', 'touchRadius'),
    touchDepth: step('depth where crown and knuckle touch', 'touchDepth'),
    crownHeight: step('height of the crown', 'crownHeight'),
  }
}
