import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'

let line: CommandLine
beforeAll(async () => {
  line = await commandLine()
  await line.write('drum.lowside.json', DRUM_FILE)
  await line.write('cases.lowside.json', DRUM_FILE.replace('"names":', '"cases": [{"name": "Summer", "values": {"Drum!B1": 120}}], "names":'))
})
afterAll(() => line.remove())

describe('why', () => {
  it('prints the derivation of one result or several', async () => {
    const { code, out } = await line.run(['why', 'drum.lowside.json', 'Drum!B3'])
    expect(code).toBe(0)
    expect(out.slice(0, 9)).toEqual(['One drum: derivation of Twice the load (Drum!B3)', '', 'Given', '[1] Drum!B1  Load: 85 TR', '', 'Steps', '— Drum —', '[2] Drum!B3  Twice the load – result: 170 TR', '      = Load [1] × 2'])
    const several = await line.run(['why', 'drum.lowside.json', 'Drum!B3', 'Drum!B4'])
    expect(several.out[0]).toBe('One drum: derivation of Twice the load (Drum!B3); Load within reach (Drum!B4)')
  })

  it('takes a case, names it, and ends with 1 where a check is not met', async () => {
    const { code, out } = await line.run(['why', 'cases.lowside.json', '--case', 'Summer', 'Drum!B4'])
    expect(code).toBe(1)
    expect(out).toEqual(expect.arrayContaining(['Case: Summer, not the base: 1 input differs', '[1] Drum!B1  Load: 120 TR (base: 85 TR)', '      = 120 TR ≤ 100', '      = not met by 20 TR (20 %)']))
  })

  it('writes a report, or a hand calculation sheet with or without values', async () => {
    for (const [name, options, has] of [['report', [], 'Derivation of chosen results'], ['hand', ['--hand'], 'Hand calculation sheet'], ['blind', ['--hand', '--blind'], 'values by Lowside']] as const) {
      const { code, out, err } = await line.run(['why', 'drum.lowside.json', 'Drum!B3', ...options, '-o', `${name}.html`])
      expect([code, out, err]).toEqual([0, [], []])
      expect(await readFile(join(line.folder, `${name}.html`), 'utf8')).toContain(has)
    }
  })

  it('refuses in a line what it cannot do, and says what is accepted', async () => {
    const refused = async (...args: string[]) => {
      const { code, err } = await line.run(['why', ...args])
      expect([code, err.length]).toEqual([2, 1])
      return err[0] ?? ''
    }
    expect(await refused('drum.lowside.json')).toContain('CELL missing')
    expect(await refused('drum.lowside.json', 'Drum!B3', '--hand')).toContain('-o OUT.html missing')
    expect(await refused('drum.lowside.json', 'Drum!B3', '--blind')).toContain('give --hand too')
    expect(await refused('drum.lowside.json', 'Drum!B3', '-o', 'out.pdf')).toContain('accepted: a file that ends in .html')
    expect(await refused('drum.lowside.json', 'Drum!B1', '--hand', '-o', 'out.html')).toContain('Drum!B1 holds no formula')
    expect(await refused('drum.lowside.json', 'Drum!Z9')).toContain('nothing stands there')
    expect(await refused('drum.lowside.json', 'Gone!B3')).toContain('there is no sheet "Gone"')
  })
})
