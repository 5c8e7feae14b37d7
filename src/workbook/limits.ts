/** Rows and columns of a sheet, as in the spreadsheet files that a workbook is exported to (ECMA-376). */
export const MAX_ROWS = 1_048_576
export const MAX_COLUMNS = 16_384

/** Characters in a cell's text, formula or note: what a cell of an exported spreadsheet file can hold (ECMA-376). */
export const MAX_TEXT = 32_767

/** Characters of a formula, brackets in one another and operators in it. A reader that recurses runs out of stack at 100 to 150 brackets, or 500 operators in a chain (measured). */
export const MAX_FORMULA = 8192
export const MAX_NESTING = 64
export const MAX_OPERATORS = 400

/**
 * Cells of one range in a formula: 100 000 rows of ten columns. The engine keeps each of them, empty ones too, and letting go of 700 000
 * takes it a minute (measured).
 */
export const MAX_RANGE_CELLS = 1_000_000

/**
 * Whole columns and rows of a reference, and how far out they may lie: the engine takes every sheet to reach as far as they do, and gives
 * each of their cells a place of its own.
 */
export const MAX_WHOLE_COLUMNS = 26
export const MAX_WHOLE_ROWS = 100
export const LAST_WHOLE_COLUMN = 1024
export const LAST_WHOLE_ROW = 100_000

/** Sheets of a workbook: far above any job, and few enough to list. */
export const MAX_SHEETS = 256

/** Cells of a workbook: 100 000 rows of 20, about 1 GB of calculation graph, is all that a browser tab holds. */
export const MAX_CELLS = 2_000_000

/** Defined names of a workbook: far above any job. */
export const MAX_NAMES = 10_000

/** Cases of a workbook, values that they have of their own together, results compared, and characters of a name: what can be looked at side by side. */
export const MAX_CASES = 50
export const MAX_CASE_VALUES = 10_000
export const MAX_COMPARED = 200
export const MAX_CASE_NAME = 60

/** Tolerances that are given inputs: far above any use. */
export const MAX_TOLERANCES = 10_000

/** Check marks, accepted findings, and characters of a reviewer's name: far above any review. */
export const MAX_MARKS = 2_000
export const MAX_ACCEPTED = 20_000
export const MAX_REVIEWER = 100

/** Cells that a check mark covers, all upstream of it among them, and those of all marks: each stands in the file once more (about 40 characters), and is looked at after every edit. */
export const MAX_COVERED = 100_000
export const MAX_COVERED_TOGETHER = 300_000

/** Lines of the record beyond which no mark is made: Undo and Redo may still add theirs. */
export const MAX_RECORD = 50_000

/** Figures of a workbook: far above any report. */
export const MAX_FIGURES = 200

/** Characters of a workbook file: 2 000 000 cells of about 60 characters each, as they are written. */
export const MAX_FILE_CHARACTERS = 128_000_000

/** Widest column, in px: what any screen shows at once. */
export const MAX_COLUMN_WIDTH = 4_000
