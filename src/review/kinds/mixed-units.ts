import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** A function over a range whose cells have different units. */
export const mixedUnits: FindingKind = {
  kind: 'mixed-units',
  heading: 'Columns of several units taken together',
  about: 'A sum, a mean or a greatest value over cells that are not all in one unit.',
  find: (survey) => toldFaults(survey, 'mixed-units'),
}
