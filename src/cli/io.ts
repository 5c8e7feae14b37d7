import type { Readable } from 'node:stream'

/** What a command works with beside its arguments; tests give their own. */
export interface Io {
  /** A line to standard output. */
  readonly out: (line: string) => void
  /** A line to standard error. */
  readonly err: (line: string) => void
  readonly input: Readable
  /** Where relative paths begin. */
  readonly folder: string
  /** The folder of the templates. */
  readonly templates: string
}

/** The exit codes: fine; an error value, a finding or a failed check; bad usage or a bad file. */
export const FINE = 0
export const NOT_MET = 1
export const REFUSED = 2
export type ExitCode = typeof FINE | typeof NOT_MET | typeof REFUSED

/** A command as it is loaded: its arguments without its name. */
export interface Command {
  readonly run: (args: readonly string[], io: Io) => Promise<ExitCode>
}
