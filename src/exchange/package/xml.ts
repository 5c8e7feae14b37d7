const ENTITIES: Readonly<Record<string, string>> = { '<': '&lt;', '>': '&gt;', '&': '&amp;', '"': '&quot;' }

/** A text inside an element or an attribute. */
export const xml = (text: string): string => wellFormed(text).replace(/[<>&"]/g, (sign) => ENTITIES[sign] ?? sign)

/** A text of a cell: characters that XML cannot hold, and what would read as one of them, by their numbers (ECMA-376, part 1, 22.9.2.19). */
export const cellText = (text: string): string =>
  xml(text.replace(CONTROL, (found) => `_x${found.charCodeAt(0).toString(16).toUpperCase().padStart(4, '0')}_`))

export const DECLARATION = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n'

// What XML 1.0 has no way to write, and an underscore that begins such a number.
// oxlint-disable-next-line no-control-regex
const CONTROL = /[\u0000-\u0008\u000b\u000c\u000d\u000e-\u001f\ufffe\uffff]|_(?=x[0-9A-Fa-f]{4}_)/g
// oxlint-disable-next-line no-control-regex
const NOT_XML = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g

/** Halves of characters, and what is none in XML, become the sign for that. */
const wellFormed = (text: string): string => text.replace(/\p{Surrogate}/gu, '\ufffd').replace(NOT_XML, '\ufffd')
