import { mkdtemp, rm, writeFile } from 'node:fs/promises'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Readable } from 'node:stream'
import { run } from '../../src/cli/run.ts'

export interface Ended {
  readonly code: number
  readonly out: readonly string[]
  readonly err: readonly string[]
}

export interface CommandLine {
  /** Where the command runs, and where its templates are. */
  readonly folder: string
  readonly run: (args: readonly string[], input?: string) => Promise<Ended>
  readonly write: (name: string, content: string | Uint8Array) => Promise<void>
  readonly remove: () => Promise<void>
}

/** The command line in this process, in a folder of its own. */
export async function commandLine(): Promise<CommandLine> {
  const folder = await mkdtemp(join(tmpdir(), 'lowside-cli-'))
  return {
    folder,
    async run(args, input = '') {
      const [out, err]: [string[], string[]] = [[], []]
      const code = await run(args, { out: (line) => out.push(line), err: (line) => err.push(line), input: Readable.from([input]), folder, templates: folder })
      return { code, out, err }
    },
    write: (name, content) => writeFile(join(folder, name), content),
    remove: () => rm(folder, { recursive: true }),
  }
}

/** A workbook file with inputs, a table, checks and names; its numbers are invented. */
export const DRUM_FILE = `{"lowside": 1, "title": "One drum", "purpose": "A drum to test with", "sheets": [
  {"name": "Drum", "cells": {
    "A1": ["Load", "label"], "B1": [85, "input"], "C1": ["TR", "unit"],
    "A2": ["Drum temperature", "label"], "B2": [20, "input"], "C2": ["°F", "unit"],
    "A3": ["Twice the load", "label"], "B3": ["=B1*2", "result"], "C3": ["TR", "unit"],
    "A4": ["Load within reach", "label"], "B4": ["=B1<=100", "check"],
    "A5": ["Heads", "label"], "B5": ["2:1", "input"],
    "A6": ["Spare", "label"], "B6": [null, "input"], "C6": ["=C1", "unit"]}},
  {"name": "Wet return", "cells": {
    "A1": ["ft", "unit"], "A2": [10, "input"], "A3": [12, "input"], "A4": ["=Load*1.5", "result"]}}
 ], "names": {"Load": "Drum!$B$1"}}
`
