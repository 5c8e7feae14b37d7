import type { FindingKind } from './finding.ts'
import { buriedNumbers } from './kinds/buried-numbers.ts'
import { brokenRecord } from './kinds/broken-record.ts'
import { changedValues } from './kinds/changed-values.ts'
import { checksNotMet } from './kinds/checks-not-met.ts'
import { checksWithoutVerdict } from './kinds/checks-without-verdict.ts'
import { circularReferences } from './kinds/circular-references.ts'
import { countedTwice } from './kinds/counted-twice.ts'
import { defaultValues } from './kinds/default-values.ts'
import { errorCells } from './kinds/error-cells.ts'
import { hiddenValues } from './kinds/hidden-values.ts'
import { inputsWithoutLabel } from './kinds/inputs-without-label.ts'
import { inputsWithoutSource } from './kinds/inputs-without-source.ts'
import { inputsWithoutUnit } from './kinds/inputs-without-unit.ts'
import { methodRanges } from './kinds/method-ranges.ts'
import { numbersAsText } from './kinds/numbers-as-text.ts'
import { overwrittenFormulas } from './kinds/overwritten-formulas.ts'
import { referencesToNothing } from './kinds/references-to-nothing.ts'
import { roundedThresholds } from './kinds/rounded-thresholds.ts'
import { shortRanges } from './kinds/short-ranges.ts'
import { staleMarks } from './kinds/stale-marks.ts'
import { swallowedErrors } from './kinds/swallowed-errors.ts'
import { templateFormulas } from './kinds/template-formulas.ts'
import { templateLabels } from './kinds/template-labels.ts'
import { templateNames } from './kinds/template-names.ts'
import { thresholdUnits } from './kinds/threshold-units.ts'
import { triggerWords } from './kinds/trigger-words.ts'
import { unlikeNeighbours } from './kinds/unlike-neighbours.ts'
import { unsortedLookups } from './kinds/unsorted-lookups.ts'
import { unusedInputs } from './kinds/unused-inputs.ts'
import { unusedResults } from './kinds/unused-results.ts'
import { withinRounding } from './kinds/within-rounding.ts'
import { unitKinds } from './units/kinds-of-units.ts'

/** All that is looked for, in the order of the headings in lists of findings. */
export const KINDS: readonly FindingKind[] = [
  errorCells,
  circularReferences,
  checksNotMet,
  checksWithoutVerdict,
  brokenRecord,
  staleMarks,
  overwrittenFormulas,
  templateFormulas,
  templateNames,
  templateLabels,
  unlikeNeighbours,
  shortRanges,
  countedTwice,
  unsortedLookups,
  swallowedErrors,
  ...unitKinds,
  methodRanges,
  referencesToNothing,
  numbersAsText,
  roundedThresholds,
  withinRounding,
  thresholdUnits,
  triggerWords,
  buriedNumbers,
  inputsWithoutUnit,
  inputsWithoutLabel,
  inputsWithoutSource,
  unusedInputs,
  unusedResults,
  hiddenValues,
  changedValues,
  defaultValues,
]
