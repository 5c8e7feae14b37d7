/**
 * Number and unit of a text such as "31 °F" by standard functions, parted at the first blank. The number has a decimal point whatever
 * the country: it is exchanged for the program's own mark, which is the second character of one half as text.
 */
export const numberInText = (text: string): string => `VALUE(SUBSTITUTE(LEFT(TRIM(${text}),FIND(" ",TRIM(${text}))-1),".",MID(1/2,2,1)))`

export const unitInText = (text: string): string => `MID(TRIM(${text}),FIND(" ",TRIM(${text}))+1,99)`
