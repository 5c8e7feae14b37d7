import { CHECK_PLANTS } from './checks-and-thresholds.ts'
import { FORMULA_PLANTS } from './formulas.ts'
import { NUMBER_PLANTS } from './numbers.ts'
import type { Plant } from './plant.ts'
import { SURROUNDING_PLANTS } from './surroundings.ts'
import { UNIT_PLANTS } from './units.ts'

/** The set that the review is measured by, made before its findings were. Faults are added as reviewers meet them; none is made easier. */
export const PLANTS: readonly Plant[] = [...UNIT_PLANTS, ...FORMULA_PLANTS, ...NUMBER_PLANTS, ...CHECK_PLANTS, ...SURROUNDING_PLANTS]
