/** "1 input", "12 000 inputs". */
export const counted = (count: number, one: string, several: string): string => `${grouped(count)} ${count === 1 ? one : several}`

export const dateWords = (date: Date): string =>
  `${date.toLocaleDateString(undefined, { day: 'numeric', month: 'long', year: 'numeric' })} at ${date.toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })}`

/** Whole numbers in groups of three. */
export const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ' ')
