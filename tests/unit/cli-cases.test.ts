import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'

let line: CommandLine
const WITH_CASES = DRUM_FILE.trimEnd().replace(/\}$/, ',\n "cases": [{"name": "Summer peak", "values": {"Drum!B1": 120}}, {"name": "Night", "values": {"Drum!B1": 30}}], "compared": ["Drum!B3", "Drum!B4"]}')

beforeAll(async () => {
  line = await commandLine()
  await line.write('cases.lowside.json', WITH_CASES)
  await line.write('plain.lowside.json', DRUM_FILE)
})
afterAll(() => line.remove())

describe('cases on the command line', () => {
  it('calc --case calculates in a case, whatever its capitals, and --set changes it further', async () => {
    expect(await line.run(['calc', 'cases.lowside.json', '--case', 'summer PEAK', '--get', 'Drum!B3'])).toEqual({ code: 0, out: ['Drum!B3\t240\tTR'], err: [] })
    expect((await line.run(['calc', 'cases.lowside.json', '--case', 'Summer peak', '--set', 'Drum!B1=50', '--get', 'Drum!B3'])).out).toEqual(['Drum!B3\t100\tTR'])
    expect((await line.run(['calc', 'cases.lowside.json', '--get', 'Drum!B3'])).out).toEqual(['Drum!B3\t170\tTR'])
  })

  it('calc --cases shows what is compared in every case, a column a case, and what is not met', async () => {
    expect(await line.run(['calc', 'cases.lowside.json', '--cases'])).toEqual({
      code: 1,
      out: [
        'cell\tresult\tunit\tBase\tSummer peak\tNight', 'Drum!B3\tTwice the load\tTR\t170\t240\t60',
        'Drum!B4\tLoad within reach\t\tmet, 15 TR (15 %) to spare\tnot met by 20 TR (20 %)\tmet, 70 TR (70 %) to spare', '\tchecks met\t\t1 of 1\t0 of 1\t1 of 1',
      ],
      err: ['Summer peak: Drum!B4: Load within reach: not met by 20 TR (20 %)'],
    })
    expect((await line.run(['calc', 'cases.lowside.json', '--cases', '--get', 'Drum!B1'])).out[1]).toBe('Drum!B1\tLoad\tTR\t85\t120\t30')
  })

  it('check --case looks at a case', async () => {
    expect((await line.run(['check', 'cases.lowside.json', '--kind', 'checks-not-met'])).code).toBe(0)
    expect((await line.run(['check', 'cases.lowside.json', '--kind', 'checks-not-met', '--case', 'Summer peak'])).code).toBe(1)
  })

  it.each([
    [['calc', 'cases.lowside.json', '--case', 'Winter'], 'there is no case "Winter"; there are "Base", "Summer peak", "Night"'],
    [['calc', 'plain.lowside.json', '--cases'], 'the workbook has no cases'],
    [['calc', 'cases.lowside.json', '--cases', '--case', 'Night'], 'give one of the two'],
  ])('%j is refused', async (args, reason) => {
    const { code, err } = await line.run(args)
    expect(code).toBe(2)
    expect(err.join()).toContain(reason)
  })
})
