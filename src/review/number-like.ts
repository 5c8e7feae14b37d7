/** Whether a text is a number, with or without a unit, that did not become one: "12", "1,200", "12 ft". */
export const isNumberLike = (text: string): boolean => /^[+\-−]?(?:\d{1,3}(?:[,’ ]\d{3})+|\d+)(?:[.,]\d+)?(?:\s*[\p{L}°µΔ%]\S{0,11})?$/u.test(text.trim())
