import { spawnSync } from 'node:child_process'
import { fileURLToPath } from 'node:url'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { catalogue } from '../../functions/catalogue.ts'
import { expectPrinted } from './catalogue-examples.ts'
import { commandLine, type CommandLine } from './cli-fixture.ts'

const examples = catalogue.flatMap((definition) => definition.examples.map((example) => ({ definition, example, formula: example.formula, printed: example.value })))
const input = examples.map(({ formula }) => `${formula}\n`).join('')

/** A line of the answer to `eval -`. */
interface Answer {
  readonly formula: string
  readonly value?: unknown
}

const PROJECT = fileURLToPath(new URL('../../', import.meta.url))

describe('every example of the guide, all in one go through `eval -`', () => {
  let commands: CommandLine
  let code: number
  let lines: readonly string[]
  beforeAll(async () => {
    commands = await commandLine()
    const ended = await commands.run(['eval', '-'], input)
    code = ended.code
    lines = ended.out
  })
  afterAll(() => commands.remove())

  it('ends well, with an answer for each', () => {
    expect(code).toBe(0)
    expect(lines.map((line) => (JSON.parse(line) as Answer).formula)).toEqual(examples.map(({ formula }) => formula))
  })

  it.each(examples.map((one, index) => ({ ...one, index })))('$formula answers $printed', ({ definition, example, index }) => {
    expectPrinted((JSON.parse(lines[index] ?? '{}') as Answer).value, example, definition)
  })

  it('the real process answers the same, to the last digit', () => {
    const { status, stdout, stderr } = spawnSync(process.execPath, ['--import', 'tsx', 'src/cli/main.ts', 'eval', '-'], { cwd: PROJECT, input, encoding: 'utf8' })
    expect({ status, stderr, lines: stdout.trimEnd().split('\n') }).toEqual({ status: 0, stderr: '', lines })
  })
})
