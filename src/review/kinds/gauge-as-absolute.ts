import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** Gauge pressures where absolute ones are meant, and the other way round. */
export const gaugeAsAbsolute: FindingKind = {
  kind: 'gauge-as-absolute',
  heading: 'Gauge and absolute pressure mixed',
  about: 'A gauge pressure counts from the atmosphere: it makes no ratio, no density, and no sum with an absolute one. A share of it, and the pressure of the atmosphere added to it, are in order.',
  find: (survey) => toldFaults(survey, 'gauge-as-absolute'),
}
