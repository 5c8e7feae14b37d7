import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** Calls that turn gauge pressure into absolute, or back, without the pressure of the site that the workbook has. */
export const gaugeWithoutSite: FindingKind = {
  kind: 'gauge-without-site',
  heading: 'Gauge pressure without the site’s atmosphere',
  about: 'A gauge counts from the atmosphere around it: at 1600 m that is 17 kPa less than at the sea. A function that is not given it takes the standard atmosphere.',
  find: (survey) => toldFaults(survey, 'gauge-without-site'),
}
