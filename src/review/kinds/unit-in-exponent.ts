import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** A logarithm, exponential or angle of a quantity, or one in an exponent. */
export const unitInExponent: FindingKind = {
  kind: 'unit-in-exponent',
  heading: 'Logarithms and powers of something with a unit',
  about: 'Logarithms, exponentials and angles are of numbers without unit; of a pressure in psia they hold in psia only. Powers other than halves and thirds are not looked at.',
  find: (survey) => toldFaults(survey, 'unit-in-exponent'),
}
