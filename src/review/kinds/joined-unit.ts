import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** A unit joined to a number that is in another, or taken from the cell of another number. */
export const joinedUnit: FindingKind = {
  kind: 'joined-unit',
  heading: 'Numbers joined to the wrong unit',
  about: 'A number joined to a unit is that many of it, whatever unit stands beside its cell.',
  find: (survey) => toldFaults(survey, 'joined-unit'),
}
