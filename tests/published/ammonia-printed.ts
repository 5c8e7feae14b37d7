/** Half a unit of the last printed digit, with a hair for the binary representation: what a printed value can tell. */
export function printedTolerance(printed: string): number {
  const [mantissa = '', exponent = '0'] = printed.toLowerCase().split('e')
  const decimals = mantissa.split('.')[1]?.length ?? 0
  return 0.5 * 10 ** (Number(exponent) - decimals) + Math.abs(Number(printed)) * 1e-12
}

/** How far a value lies from a printed one, in units of what the print can tell: 1 or less agrees to all digits. */
export function printedGap(value: number, printed: string): number {
  return Math.abs(value - Number(printed)) / printedTolerance(printed)
}
