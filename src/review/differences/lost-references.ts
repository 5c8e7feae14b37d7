/** Why a formula cannot be taken over while what it refers to is gone. */
export const LOST = 'It refers to rows or columns that are gone from this workbook: put these back first.'

/** Whether a formula in the other layout has lost a reference that it had. */
export const losesReferences = (before: string, there: string): boolean => lostIn(there) > lostIn(before)

const lostIn = (formula: string): number => formula.match(/#REF!/gi)?.length ?? 0
