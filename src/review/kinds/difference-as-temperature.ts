import type { FindingKind } from '../finding.ts'
import { toldFaults } from '../units/told-faults.ts'

/** A difference given as a temperature, a temperature used as a difference or as a factor, degrees converted without their zero. */
export const differenceAsTemperature: FindingKind = {
  kind: 'difference-as-temperature',
  heading: 'Temperature and difference of temperature mixed',
  about: 'A difference of temperatures has no 32 to be added, and a temperature in °F or °C does not count from nothing: neither can stand for the other, and only K and °R make factors.',
  find: (survey) => toldFaults(survey, 'difference-as-temperature'),
}
