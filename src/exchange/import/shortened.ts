/** So much of a text as a remark has room for. */
export const shortened = (text: string, longest: number): string => (text.length > longest ? `${text.slice(0, longest)}…` : text)
