/** "1 row", "12 000 rows": whole numbers in groups of three. */
export const counted = (count: number, one: string, several = `${one}s`): string => `${grouped(count)} ${count === 1 ? one : several}`

export const grouped = (count: number): string => String(count).replace(/\B(?=(\d{3})+$)/g, ' ')
