import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** Numbers in percent used as shares of 1, and the other way round. */
export const percentAsShare: FindingKind = {
  kind: 'percent-as-share',
  heading: 'Percent and share mixed',
  about: 'A cell in % holds 25 where a share of 1 is 0.25: in plain arithmetic somebody has to divide by 100.',
  find: (survey) => toldFaults(survey, 'percent-as-share'),
}
