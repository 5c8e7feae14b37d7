import type { MarkState } from '../../workbook/review/mark-states.ts'

/** What marks on a cell say of it: `checked by R. Smith on 2026-03-02, by hand`. */
export const checkedWords = (states: readonly MarkState[]): string[] =>
  states.map(({ mark: { by, at, method }, isGood }) => `checked by ${by} on ${at.slice(0, 10)}, ${method}${isGood ? '' : '; changed since, the mark is stale'}`)
