import { differenceAsTemperature } from '../kinds/difference-as-temperature.ts'
import { gaugeAsAbsolute } from '../kinds/gauge-as-absolute.ts'
import { gaugeWithoutSite } from '../kinds/gauge-without-site.ts'
import { joinedUnit } from '../kinds/joined-unit.ts'
import { linkedUnit } from '../kinds/linked-unit.ts'
import { mixedUnits } from '../kinds/mixed-units.ts'
import { percentAsShare } from '../kinds/percent-as-share.ts'
import { resultUnit } from '../kinds/result-unit.ts'
import { unitInExponent } from '../kinds/unit-in-exponent.ts'
import { unknownUnit } from '../kinds/unknown-unit.ts'
import { unlikeUnits } from '../kinds/unlike-units.ts'
import type { FindingKind } from '../finding.ts'

/** The kinds of findings about units, in the order of the headings. */
export const unitKinds: readonly FindingKind[] = [unlikeUnits, resultUnit, linkedUnit, gaugeAsAbsolute, gaugeWithoutSite, differenceAsTemperature, joinedUnit, percentAsShare, mixedUnits, unitInExponent, unknownUnit]
