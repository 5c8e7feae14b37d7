/** The version of workbook files that are written, and the last that is read. */
export const FILE_VERSION = 1
