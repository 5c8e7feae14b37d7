import { formatNumber } from '../workbook/number-format.ts'

/** `22 °F`, as a cell would show it. */
export const withUnit = (number: number, unitText: string | undefined): string => besideUnit(formatNumber(number), unitText)

/** Pure numbers stand alone. */
export const besideUnit = (number: string, unitText: string | undefined): string => (unitText === undefined || unitText === '-' ? number : `${number} ${unitText}`)
