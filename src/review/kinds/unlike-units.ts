import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** Adding, subtracting, comparing or choosing between quantities of different dimensions or units. */
export const unlikeUnits: FindingKind = {
  kind: 'unlike-units',
  heading: 'Unlike quantities put together',
  about: 'Sums, comparisons and choices want one unit: feet and inches, or a length and a pressure, give a number that means nothing. Numbers without a unit go with everything.',
  find: (survey) => toldFaults(survey, 'unlike-units'),
}
