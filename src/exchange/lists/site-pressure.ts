import { foldCase, type Workbook } from '../../workbook/document.ts'

const NAME = 'site_pressure'

/** A formula for the atmosphere where the plant stands, Pa; undefined where the workbook has no name for it. */
export const sitePressureFormula = ({ names }: Workbook): string | undefined =>
  [...names.keys()].some((name) => foldCase(name) === NAME) ? `=UNIT.CONVERT(${NAME},"Pa")` : undefined
