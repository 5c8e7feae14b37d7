export const dateWords = (date: Date): string =>
  `${date.toLocaleDateString(undefined, { day: 'numeric', month: 'long', year: 'numeric' })} at ${date.toLocaleTimeString(undefined, { hour: '2-digit', minute: '2-digit' })}`
