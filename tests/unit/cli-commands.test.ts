import { mkdir, readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { readWorkbook, writeWorkbook } from '../../src/workbook/file.ts'
import { cellAt } from '../../src/workbook/document.ts'
import { NO_REVIEW } from '../../src/workbook/review-record.ts'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'

let cli: CommandLine
const DRUM = 'drum.lowside.json'

beforeAll(async () => {
  cli = await commandLine()
  await cli.write(DRUM, DRUM_FILE)
})
afterAll(() => cli.remove())

/** What the command refuses with: exit code 2, nothing on standard output, one line on standard error. */
async function refusal(...args: readonly string[]): Promise<string> {
  const { code, out, err } = await cli.run(args)
  expect({ code, out, lines: err.join('\n').split('\n').length }).toEqual({ code: 2, out: [], lines: 1 })
  return err.join()
}

describe('the command line', () => {
  it('lists the commands it has for one it has not, or none', async () => {
    expect(await refusal('juggle', 'a', 'b')).toBe('lowside: there is no command "juggle"; there are: eval, new, calc, sweep, solve, check, why, compare, export, import, help')
    expect(await refusal()).toContain('no command given')
    expect(await refusal('constructor')).toContain('there is no command "constructor"')
  })

  it('shows the usage with what is wrong in it', async () => {
    expect(await refusal('calc')).toBe('lowside calc: FILE missing; usage: calc FILE [--case NAME | --cases] [--set "Sheet!C5=120"]… [--get "Sheet!C20"]…')
    expect(await refusal('check', DRUM, 'more')).toContain('"more" is one argument too many; usage: check')
    expect(await refusal('check', DRUM, '--all')).toContain("Unknown option '--all'; usage: check")
    expect(await refusal('eval')).toContain('FORMULA missing')
  })

  it('explains itself', async () => {
    for (const args of [['help'], ['--help'], ['calc', '--help']]) {
      const { code, out, err } = await cli.run(args)
      expect({ code, err }).toEqual({ code: 0, err: [] })
      expect(out.join('\n')).toContain('calc FILE')
    }
  })

  it('says why a file cannot be read', async () => {
    await cli.write('broken.lowside.json', '{"lowside": 1, "title": 2, "sheets": [{"name": "S", "cells": {"a1": [1, "input"], "B1": [1, "owner"]}}]}')
    await cli.write('picture.lowside.json', 'JFIF')
    expect(await refusal('calc', 'none.lowside.json')).toBe('lowside calc: none.lowside.json cannot be read: there is no such file or folder')
    expect(await refusal('calc', '.')).toContain('it is a folder')
    expect(await refusal('calc', 'picture.lowside.json')).toContain('line 1, column 1: the file is no valid JSON')
    await cli.write('picture.xlsx', 'JFIF')
    expect(await refusal('calc', 'picture.xlsx')).toMatch(/^lowside calc: picture\.xlsx: /)
    expect(await refusal('calc', 'broken.lowside.json')).toMatch(/line 1: .*title.*; and 1 more: "check broken\.lowside\.json" lists all 2$/)
  })

  it('refuses a file that is no text in UTF-8', async () => {
    await cli.write('latin1.lowside.json', Buffer.from(DRUM_FILE, 'latin1'))
    expect(await refusal('calc', 'latin1.lowside.json')).toContain('no text in UTF-8')
  })
})

describe('eval', () => {
  it('prints a value a line, in full precision', async () => {
    expect(await cli.run(['eval', '=1/8', '1+1', '=1E-7', '=1<2', '="a b"', '-2^2'])).toEqual({ code: 0, out: ['0.125', '2', '1e-7', 'TRUE', 'a b', '4'], err: [] })
    const { out: [pressure = ''] } = await cli.run(['eval', 'SAT.PRESSURE("5 °F","psia")'])
    // 34.2445 psia: example of SAT.PRESSURE, Gao et al. 2023.
    expect(Number(pressure)).toBeCloseTo(34.2445, 4)
    expect(pressure.length).toBeGreaterThan(14)
  })

  it('says for an error which argument lacks a unit and how to write it, and prints the other values', async () => {
    expect(await cli.run(['eval', '=SAT.PRESSURE(31,"psig")', '=1+1'])).toEqual({
      code: 1, out: ['2'], err: ['#VALUE!: =SAT.PRESSURE(31,"psig"): temperature needs a unit: write C5:D5 or "31 °F"'],
    })
  })

  it('answers standard input with a JSON object a line', async () => {
    const { code, out, err } = await cli.run(['eval', '-'], '=1+1\r\nSAT.PRESSURE(31,"psig")\n\n"x"\n')
    expect({ code, err }).toEqual({ code: 1, err: [] })
    expect(out.map((line) => JSON.parse(line) as unknown)).toEqual([
      { formula: '=1+1', value: 2 },
      { formula: 'SAT.PRESSURE(31,"psig")', error: '#VALUE!', message: 'temperature needs a unit: write C5:D5 or "31 °F"' },
      { formula: '', error: '#ERROR!', message: 'the formula is empty: write something after =' },
      { formula: '"x"', value: 'x' },
    ])
  })

  it('ends well where no line is an error', async () => {
    expect(await cli.run(['eval', '-'], '1\n2')).toEqual({ code: 0, out: ['{"formula":"1","value":1}', '{"formula":"2","value":2}'], err: [] })
  })
})

describe('new', () => {
  it('lists the templates with their purposes', async () => {
    expect((await cli.run(['new', '--list'])).out).toContain('drum\tA drum to test with')
  })

  it('writes the template in the units asked for', async () => {
    expect(await cli.run(['new', 'drum', '-o', 'us.lowside.json'])).toEqual({ code: 0, out: [], err: [] })
    expect(await cli.run(['new', 'drum', '--units', 'si', '-o', 'si.lowside.json'])).toEqual({ code: 0, out: [], err: [] })
    expect(await cellOf('us.lowside.json', 1, 2)).toBe('°F')
    expect(await cellOf('us.lowside.json', 1, 1)).toBe(20)
    expect(await cellOf('si.lowside.json', 1, 2)).toBe('°C')
    // (20 − 32) / 1.8, NIST SP 811.
    expect(await cellOf('si.lowside.json', 1, 1)).toBeCloseTo(-20 / 3, 9)
  })

  it('keeps a file that is there, unless told to replace it', async () => {
    await cli.write('kept.lowside.json', 'mine')
    expect(await refusal('new', 'drum', '-o', 'kept.lowside.json')).toContain('there is such a file already; --force replaces it')
    expect(await readFile(join(cli.folder, 'kept.lowside.json'), 'utf8')).toBe('mine')
    expect((await cli.run(['new', 'drum', '-o', 'kept.lowside.json', '--force'])).code).toBe(0)
    expect(await cellOf('kept.lowside.json', 0, 0)).toBe('Load')
  })

  it('refuses what it cannot make', async () => {
    expect(await refusal('new', 'sphere', '-o', 'a.lowside.json')).toMatch(/there is no template "sphere"; there are: .*drum/)
    expect(await refusal('new', '../drum', '-o', 'a.lowside.json')).toContain('there is no template')
    expect(await refusal('new', 'drum')).toContain('-o FILE missing')
    expect(await refusal('new', 'drum', '--units', 'cgs', '-o', 'a.lowside.json')).toContain('accepted are us and si')
    expect(await refusal('new', 'drum', '-o', 'a.xlsx')).toContain('ends in .lowside.json')
    expect(await refusal('new', 'drum', '-o', 'nowhere/a.lowside.json')).toContain('there is no such file or folder')
  })

  async function cellOf(file: string, row: number, column: number) {
    const result = readWorkbook(await readFile(join(cli.folder, file), 'utf8'))
    return 'workbook' in result ? cellAt(result.workbook, 'Drum', row, column)?.content : result.problems
  }
})

describe('calc', () => {
  it('prints every result and check, with its unit', async () => {
    expect(await cli.run(['calc', DRUM])).toEqual({ code: 0, out: ['Drum!B3\t170\tTR', 'Drum!B4\tTRUE\t', "'Wet return'!A4\t127.5\tft"], err: [] })
  })

  it('prints the cells asked for: addresses, ranges, names, whole columns', async () => {
    const get = async (...addresses: string[]) => (await cli.run(['calc', DRUM, ...addresses.flatMap((address) => ['--get', address])])).out
    expect(await get('Drum!B1')).toEqual(['Drum!B1\t85\tTR'])
    expect(await get("'Wet return'!A2:A3", 'drum!$b$2')).toEqual(["'Wet return'!A2\t10\tft", "'Wet return'!A3\t12\tft", 'Drum!B2\t20\t°F'])
    expect(await get('Wet return!A2')).toEqual(["'Wet return'!A2\t10\tft"])
    expect(await get('load')).toEqual(['Drum!B1\t85\tTR'])
    expect(await get('Wet return!A:A')).toHaveLength(4)
    expect(await get('Drum!B6')).toEqual(['Drum!B6\t\tTR'])
  })

  it('changes inputs first', async () => {
    const { code, out } = await cli.run(['calc', DRUM, '--set', 'Drum!B1=120', '--set', "'Wet return'!A2= 1.5e1", '--set', 'Drum!B5=hemi', '--get', 'Drum!B1:B5', '--get', "'Wet return'!A2"])
    expect(out).toEqual(['Drum!B1\t120\tTR', 'Drum!B2\t20\t°F', 'Drum!B3\t240\tTR', 'Drum!B4\tFALSE\t', 'Drum!B5\themi\t', "'Wet return'!A2\t15\tft"])
    expect(code).toBe(1)
    expect((await cli.run(['calc', DRUM, '--set', 'load=60', '--get', 'Drum!B3'])).out).toEqual(['Drum!B3\t120\tTR'])
    expect((await cli.run(['calc', DRUM, '--set', 'Drum!B1==B2*2', '--get', 'Drum!B3'])).out).toEqual(['Drum!B3\t80\tTR'])
  })

  it('tells of an error value, and ends with 1', async () => {
    const { code, out, err } = await cli.run(['calc', DRUM, '--set', 'Drum!B1==1/0', '--get', 'Drum!B3'])
    expect({ code, out }).toEqual({ code: 1, out: ['Drum!B3\t#DIV/0!\tTR'] })
    expect(err).toEqual(['#DIV/0!: Drum!B3: division by zero, or by an empty cell'])
  })

  it('converts a number with a unit into the unit beside the cell, also where that is a formula', async () => {
    // 1 TR is 12 000 Btu/h, and 3.51685 kW (NIST SP 811, B.8).
    const { out: [converted = ''] } = await cli.run(['calc', DRUM, '--set', 'Drum!B1=35.168528420667 kW', '--get', 'Drum!B1'])
    expect(Number(converted.split('\t')[1])).toBeCloseTo(10, 9)
    expect((await cli.run(['calc', DRUM, '--set', 'Drum!B1=120 TR', '--get', 'Drum!B1'])).out).toEqual(['Drum!B1\t120\tTR'])
    expect((await cli.run(['calc', DRUM, '--set', 'Drum!B2=-40 °C', '--get', 'Drum!B2'])).out).toEqual(['Drum!B2\t-40\t°F'])
    expect((await cli.run(['calc', DRUM, '--set', 'Drum!B6=12000 Btu/h', '--get', 'Drum!B6'])).out).toEqual(['Drum!B6\t1\tTR'])
  })

  it('refuses a unit of another dimension, and what is no number', async () => {
    expect(await refusal('calc', DRUM, '--set', 'Drum!B1=120 °F')).toContain('°F does not fit Drum!B1 (Load), which is in TR; accepted: units of the same dimension: W, kW, TR')
    expect(await refusal('calc', DRUM, '--set', 'Drum!B1=some')).toBe(
      'lowside calc: --set: Drum!B1 holds a number, and "some" is not one; the unit stands in C1 (TR): write for example "Drum!B1=120"',
    )
    expect(await refusal('calc', DRUM, '--set', 'Drum!B6=some')).toContain('the unit stands in C6')
  })

  it('sets inputs only', async () => {
    expect(await refusal('calc', DRUM, '--set', 'Drum!B3=1')).toContain('Drum!B3 is of the role result; only inputs can be set')
    expect(await refusal('calc', DRUM, '--set', 'Drum!Z9=1')).toContain('Drum!Z9 is an empty cell')
    expect(await refusal('calc', DRUM, '--set', 'Drum!B1:B2=1')).toContain('one cell at a time')
    expect(await refusal('calc', DRUM, '--set', 'Drum!B1')).toContain('write an address, "=" and a value')
  })

  it('says what an address lacks', async () => {
    expect(await refusal('calc', DRUM, '--get', 'B1')).toContain('"B1" does not say which sheet; write for example "Drum!C5"')
    expect(await refusal('calc', DRUM, '--get', 'Drun!B1')).toContain('there is no sheet "Drun"; there are "Drum", "Wet return"')
    expect(await refusal('calc', DRUM, '--get', 'speed')).toContain('neither an address nor a name')
    expect(await refusal('calc', DRUM, '--get', 'Drum!A1:ZZ99999')).toContain('accepted: up to 1000000')
  })
})

describe('check', () => {
  const OF_CHECKS = ['--kind', 'error-cells', '--kind', 'checks-not-met', '--kind', 'checks-without-verdict']

  it('finds nothing of a kind in a workbook that has none of it', async () => {
    expect(await cli.run(['check', DRUM, ...OF_CHECKS])).toEqual({ code: 0, out: ['no findings of this kind'], err: [] })
    expect(await cli.run(['check', DRUM, ...OF_CHECKS, '--json'])).toEqual({ code: 0, out: ['[]'], err: [] })
  })

  it('lists checks not met, error values and checks without a verdict', async () => {
    await cli.write('bad.lowside.json', DRUM_FILE.replace('[85, "input"]', '[125, "input"]').replace('"=Load*1.5", "result"', '"=SAT.PRESSURE(31,A1)", "check"').replace('["2:1", "input"]', '[null, "check"]'))
    const found = [
      { kind: 'checks-not-met', severity: 'error', place: 'Drum!B4', label: 'Load within reach', reason: 'Check not met by 25 TR (25 %).', key: 'not met by 25 TR (25 %)', causes: ['Drum!B1'] },
      { kind: 'checks-without-verdict', severity: 'warning', place: 'Drum!B5', label: 'Heads', reason: 'Check without a verdict: it gives neither TRUE nor FALSE.', key: 'gives nothing' },
      { kind: 'error-cells', severity: 'error', place: "'Wet return'!A4", reason: '#VALUE!: temperature needs a unit: write C5:D5 or "31 °F".', key: '#VALUE!', causes: ["'Wet return'!A1"] },
    ]
    const { code, out, err } = await cli.run(['check', 'bad.lowside.json', ...OF_CHECKS, '--json'])
    expect({ code, err, found: JSON.parse(out.join('')) as unknown }).toEqual({ code: 1, err: [], found })
    const lines = found.map(({ severity, place, label, reason }) => [severity, place, label === undefined ? reason : `${label}: ${reason}`].join('\t'))
    expect(await cli.run(['check', 'bad.lowside.json', ...OF_CHECKS])).toEqual({ code: 1, out: lines, err: [] })
    expect((await cli.run(['check', 'bad.lowside.json'])).out).toEqual(expect.arrayContaining(lines))
  })

  it('ends with 0 where there are remarks only', async () => {
    await cli.write('coarse.lowside.json', DRUM_FILE.replace('[85, "input"]', '[0.04, "input", {"decimals": 1}]'))
    expect(await cli.run(['check', 'coarse.lowside.json', '--kind', 'hidden-values'])).toEqual({ code: 0, out: ['remark\tDrum!B1\tLoad: Shows 0.0, and is 0.04.'], err: [] })
  })

  it('holds a workbook against the template that it came from', async () => {
    await cli.write('template.lowside.json', DRUM_FILE)
    await mkdir(join(cli.folder, 'work'))
    await cli.write('work/overwritten.lowside.json', DRUM_FILE.replace('"=B1*2"', '170'))
    expect(await cli.run(['check', 'work/overwritten.lowside.json', '--kind', 'overwritten-formulas'])).toEqual(
      { code: 1, out: ['warning\tDrum!B3\tTwice the load: 170 is typed where the template “One drum” has a formula, =B1*2.'], err: [] })
  })

  it('counts what was accepted with a note, and lists it when asked', async () => {
    const accepted = { kind: 'checks-not-met', sheet: 'Drum', area: { top: 3, bottom: 3, left: 1, right: 1 }, key: 'not met by 25 TR (25 %)', note: 'Agreed with the client', by: 'R. Ames', at: '2026-11-27T10:00:00Z' }
    const read = readWorkbook(DRUM_FILE.replace('[85, "input"]', '[125, "input"]'))
    if ('problems' in read) throw new Error('the fixture is no workbook')
    await cli.write('accepted.lowside.json', writeWorkbook({ ...read.workbook, review: { ...NO_REVIEW, accepted: [accepted] } }))
    const run = (...options: string[]) => cli.run(['check', 'accepted.lowside.json', '--kind', 'checks-not-met', ...options])
    expect(await run()).toEqual({ code: 0, out: ['no open findings', '1 finding accepted with a note'], err: [] })
    expect((await run('--accepted')).out).toEqual([
      'error\tDrum!B4\tLoad within reach: Check not met by 25 TR (25 %).\taccepted by R. Ames on 2026-11-27: Agreed with the client', 'no open findings', '1 finding accepted with a note',
    ])
    expect(JSON.parse((await run('--accepted', '--json')).out.join(''))).toMatchObject([{ place: 'Drum!B4', accepted: { note: 'Agreed with the client', by: 'R. Ames' } }])
  })

  it('refuses a kind that there is not', async () => {
    expect(await refusal('check', DRUM, '--kind', 'typos')).toContain('--kind typos: there is no such kind; there are error-cells, ')
  })

  it('lists everything that is wrong with a file that is no workbook', async () => {
    await cli.write('broken.lowside.json', '{"lowside": 1, "title": 2, "sheets": [{"name": "S", "cells": {"B1": [1, "owner"]}}]}')
    const { code, out, err } = await cli.run(['check', 'broken.lowside.json'])
    expect({ code, lines: out.length, errors: err.length }).toEqual({ code: 2, lines: 2, errors: 1 })
    expect(out[1]).toContain('unknown role "owner"')
  })
})

describe('export', () => {
  it('writes a spreadsheet file, over an earlier one', async () => {
    await cli.write('out.xlsx', 'earlier')
    expect(await cli.run(['export', DRUM, '-o', 'out.xlsx'])).toEqual({ code: 0, out: [], err: [] })
    expect((await readFile(join(cli.folder, 'out.xlsx'))).subarray(0, 2).toString()).toBe('PK')
  })

  it('says what it writes', async () => {
    expect(await refusal('export', DRUM, '-o', 'out.pdf')).toContain('this version writes files that end in .xlsx, .ods, .html, .csv')
    expect(await refusal('export', DRUM)).toContain('-o OUT missing')
  })
})
