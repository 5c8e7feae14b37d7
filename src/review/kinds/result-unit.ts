import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** A result whose dimension or scale is not that of the unit beside or over it. */
export const resultUnit: FindingKind = {
  kind: 'result-unit',
  heading: 'Results in another unit than declared',
  about: 'What a formula of plain arithmetic comes to, by the units of its cells, against the unit beside it: other dimensions, a missing 60, a 144 too many. A formula with a number that may have a unit of its own, as empirical ones have, is given the benefit of the doubt.',
  find: (survey) => toldFaults(survey, 'result-unit'),
}
