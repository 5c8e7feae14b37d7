import { fileURLToPath } from 'node:url'
import { run } from './run.ts'

// A reader that has seen enough, such as head, closes the pipe.
process.stdout.on('error', ({ code }: NodeJS.ErrnoException) => process.exit(code === 'EPIPE' ? 0 : 2))

// npm runs its scripts in the project's folder, and says in INIT_CWD where it was called.
const { npm_lifecycle_event: script, INIT_CWD: calledIn } = process.env

process.exitCode = await run(process.argv.slice(2), {
  out: (line) => void process.stdout.write(`${line}\n`),
  err: (line) => void process.stderr.write(`${line}\n`),
  input: process.stdin,
  folder: script === 'lowside' && calledIn !== undefined ? calledIn : process.cwd(),
  templates: fileURLToPath(new URL('../../templates/', import.meta.url)),
})
