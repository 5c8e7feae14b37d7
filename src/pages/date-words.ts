/** ISO 8601, by the calendar of the place. */
export function dateInWords(date: Date): string {
  const two = (part: number): string => String(part).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}
