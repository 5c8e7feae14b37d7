/** Now, as marks and lines of the record have it: ISO 8601, to the second, UTC. */
export const timestamp = (at: Date = new Date()): string => `${at.toISOString().slice(0, 19)}Z`
