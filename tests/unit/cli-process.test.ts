import { spawn } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { describe, expect, it } from 'vitest'

const PROJECT = fileURLToPath(new URL('../../', import.meta.url))

interface Ended {
  readonly code: number | null
  readonly out: string
  readonly err: string
}

/** The real command, with standard input given or closed. */
function lowside(args: readonly string[], input = ''): Promise<Ended> {
  const child = spawn(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', ...args], { cwd: PROJECT })
  let [out, err] = ['', '']
  child.stdout.setEncoding('utf8').on('data', (text: string) => (out += text))
  child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text))
  child.stdin.end(input)
  return new Promise((resolve, reject) => child.on('error', reject).on('close', (code) => resolve({ code, out, err })))
}

describe('the lowside command as a process', () => {
  it('prints values on standard output and ends with 0', async () => {
    expect(await lowside(['eval', '=1+1', '"°F"'])).toEqual({ code: 0, out: '2\n°F\n', err: '' })
  })

  it('prints errors on standard error and ends with 1', async () => {
    expect(await lowside(['eval', '=1/0'])).toEqual({ code: 1, out: '', err: '#DIV/0!: =1/0: division by zero, or by an empty cell\n' })
  })

  it('ends with 2 and one line on standard error for bad usage', async () => {
    expect(await lowside(['juggle'])).toEqual({ code: 2, out: '', err: 'lowside: there is no command "juggle"; there are: eval, new, calc, sweep, solve, check, why, compare, export, import, help\n' })
  })

  it('reads formulas from standard input', async () => {
    expect(await lowside(['eval', '-'], '1+1\n')).toEqual({ code: 0, out: '{"formula":"1+1","value":2}\n', err: '' })
  })
})
