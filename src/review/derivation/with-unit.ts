/** Pure numbers stand alone. */
export const withUnit = (number: string, unit: string | undefined): string => (unit === undefined || unit === '-' || unit === '' ? number : `${number} ${unit}`)
