/** The version of the project, as its package names it; a test compares them. */
export const VERSION = '0.1.0'
