import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** A cell that only refers to another one, in another unit than that has. */
export const linkedUnit: FindingKind = {
  kind: 'linked-unit',
  heading: 'Links that change the unit',
  about: 'A cell that only shows another one shows its number, not its unit.',
  find: (survey) => toldFaults(survey, 'linked-unit'),
}
