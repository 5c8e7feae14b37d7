/** `drumDiameter` reads "drum diameter"; symbols such as K, FL, xT stay. */
export const argumentLabel = (key: string): string =>
  key.replace(/([a-z]{2})([A-Z])/g, (_, before: string, capital: string) => `${before} ${capital.toLowerCase()}`)
