import type { FindingKind } from './finding.ts'
import { buriedNumbers } from './kinds/buried-numbers.ts'
import { checksNotMet } from './kinds/checks-not-met.ts'
import { checksWithoutVerdict } from './kinds/checks-without-verdict.ts'
import { circularReferences } from './kinds/circular-references.ts'
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
import { templateFormulas } from './kinds/template-formulas.ts'
import { thresholdUnits } from './kinds/threshold-units.ts'
import { triggerWords } from './kinds/trigger-words.ts'
import { unlikeNeighbours } from './kinds/unlike-neighbours.ts'
import { unusedInputs } from './kinds/unused-inputs.ts'
import { unusedResults } from './kinds/unused-results.ts'

/** All that is looked for, in the order of the headings in lists of findings. */
export const KINDS: readonly FindingKind[] = [
  errorCells,
  circularReferences,
  checksNotMet,
  checksWithoutVerdict,
  overwrittenFormulas,
  templateFormulas,
  unlikeNeighbours,
  shortRanges,
  methodRanges,
  referencesToNothing,
  numbersAsText,
  roundedThresholds,
  thresholdUnits,
  triggerWords,
  buriedNumbers,
  inputsWithoutUnit,
  inputsWithoutLabel,
  inputsWithoutSource,
  unusedInputs,
  unusedResults,
  hiddenValues,
  defaultValues,
]
