import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { commandLine, DRUM_FILE, type CommandLine } from './cli-fixture.ts'

let cli: CommandLine
const DRUM = 'drum.lowside.json'

beforeAll(async () => {
  cli = await commandLine()
  await cli.write(DRUM, DRUM_FILE)
  await cli.write('curve.lowside.json', `{"lowside": 1, "title": "Curve", "sheets": [{"name": "Curve", "cells": {
    "A1": ["x, the input", "label"], "B1": [4, "input"], "C1": ["ft", "unit"],
    "A2": ["parabola", "label"], "B2": ["=(B1-3)^2", "result"], "C2": ["-", "unit"],
    "A3": ["size", "label"], "B3": ["=CEILING(B1,3)", "result"], "C3": ["in", "unit"],
    "A4": ["root", "label"], "B4": ["=SQRT(B1-2)", "result"],
    "A5": ["word", "label"], "B5": ["=IF(B1>5,\\"=big\\",\\"small, \\"&B1)", "result"],
    "A6": ["enough", "label"], "B6": ["=B1>=2.5", "check"], "A7": ["fixed", "label"], "B7": ["=7*3", "result"]}}]}`)
})
afterAll(() => cli.remove())

async function refusal(...args: readonly string[]): Promise<string> {
  const { code, out, err } = await cli.run(args)
  expect({ code, out, lines: err.length }).toEqual({ code: 2, out: [], lines: 1 })
  return err.join()
}

describe('sweep', () => {
  it('prints a table with units in the heading, and where checks turn beside it', async () => {
    const { code, out, err } = await cli.run(['sweep', DRUM, '--vary', 'Drum!B1=80:120:10', '--get', 'Drum!B3:B4'])
    expect({ code, out }).toEqual({
      code: 0,
      out: ['Drum!B1 Load (TR),Drum!B3 Twice the load (TR),Drum!B4 Load within reach,Drum!B4 Load within reach: margin', '80,160,TRUE,0.2', '90,180,TRUE,0.1', '100,200,TRUE,0', '110,220,FALSE,-0.1', '120,240,FALSE,-0.2'],
    })
    expect(err).toHaveLength(1)
    expect(err[0]).toMatch(/^Drum!B4 Load within reach turns from met to not met between Drum!B1 = 100\.?\d* and 100\.0\d* TR$/)
  })

  it('varies over a list in another unit, and a second input', async () => {
    // 12 000 Btu/h is 1 TR (NIST SP 811, B.8).
    const { out, err } = await cli.run(['sweep', DRUM, '--vary', 'load=12000,24000 Btu/h', '--vary', "'Wet return'!A2=1,2", '--get', 'Drum!B3', '--get', 'Wet return!A4'])
    expect({ out, err }).toEqual({ err: [], out: ["Drum!B1 Load (Btu/h),'Wet return'!A2 (ft),Drum!B3 Twice the load (TR),'Wet return'!A4 (ft)", '12000,1,2,1.5', '24000,1,4,3', '12000,2,2,1.5', '24000,2,4,3'] })
  })

  it('takes so many points, equal ratios, and other inputs set first', async () => {
    expect((await cli.run(['sweep', DRUM, '--vary', 'Drum!B1=1:1000:log', '--points', '4', '--get', 'Drum!B3'])).out.slice(1)).toEqual(['1,2', '10,20', '100,200', '1000,2000'])
    expect((await cli.run(['sweep', DRUM, '--vary', 'Drum!B1=0:1', '--get', 'Drum!B3'])).out).toHaveLength(22)
    expect((await cli.run(['sweep', 'curve.lowside.json', '--set', 'Curve!B1=9', '--vary', 'Curve!B1=3', '--get', 'Curve!B2'])).out[1]).toBe('3,0')
  })

  it('quotes what CSV needs quoted, keeps texts texts, shows errors and ends with 1 for them', async () => {
    const { code, out } = await cli.run(['sweep', 'curve.lowside.json', '--vary', 'Curve!B1=1,6', '--get', 'Curve!B4:B5'])
    expect({ code, out }).toEqual({ code: 1, out: ['"Curve!B1 x, the input (ft)",Curve!B4 root,Curve!B5 word', '1,#NUM!,"small, 1"', "6,2,'=big"] })
  })

  it('says what is wrong with what was asked', async () => {
    expect(await refusal('sweep', DRUM, '--get', 'Drum!B3')).toContain('--vary missing; usage: sweep FILE')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1=1:2:1')).toContain('--get missing')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1', '--get', 'Drum!B3')).toContain('write an address, "=" and the numbers, such as "Sheet!C5=10:100:10"')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1=a:b', '--get', 'Drum!B3')).toContain('"a:b" does not say which numbers; accepted: FROM:TO:STEP')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1=1:2 °F', '--get', 'Drum!B3')).toContain('°F does not fit Drum!B1 (Load), which is in TR')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B3=1:2', '--get', 'Drum!B3')).toContain('Drum!B3 (Twice the load) cannot be varied: it is a formula')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B5=1:2', '--get', 'Drum!B3')).toContain('it holds text')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1:B2=1:2', '--get', 'Drum!B3')).toContain('stands for 2 cells; accepted: one cell')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1=1:2', '--get', 'Drum!Z1')).toContain('nothing but empty cells')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1=1:2', '--get', 'Drum!B3', '--points', '0')).toContain('--points 0: accepted is a whole number')
    expect(await refusal('sweep', DRUM, '--vary', 'Drum!B1=0:1:1e-9', '--get', 'Drum!B3')).toContain('accepted: up to 100000')
  })
})

describe('solve', () => {
  it('prints the input, its unit, and what the result then is', async () => {
    expect(await cli.run(['solve', DRUM, '--target', 'Drum!B3=250', '--by', 'Drum!B1', '--within', '10:200'])).toEqual({ code: 0, out: ['Drum!B1\t125\tTR\tDrum!B3\t250\tTR'], err: [] })
    expect((await cli.run(['solve', DRUM, '--target', 'Drum!B3=24000 Btu/h', '--by', 'load'])).err.join()).toContain('No input between 8.5 TR and 850 TR does')
    expect((await cli.run(['solve', DRUM, '--target', 'Drum!B3=48000 Btu/h', '--by', 'load', '--within', '1:100 kW'])).out).toEqual(['Drum!B1\t2\tTR\tDrum!B3\t4\tTR'])
  })

  it('lists several, and says so', async () => {
    const { code, out, err } = await cli.run(['solve', 'curve.lowside.json', '--target', 'Curve!B2=4', '--by', 'Curve!B1', '--within', '0:10'])
    expect({ code, out }).toEqual({ code: 0, out: ['Curve!B1\t1\tft\tCurve!B2\t4\t-', 'Curve!B1\t5\tft\tCurve!B2\t4\t-'] })
    expect(err.join()).toMatch(/comes to 4 at 2 inputs between 0 ft and 10 ft/)
  })

  it('finds where a check is just met, and where a size steps', async () => {
    const met = await cli.run(['solve', DRUM, '--target', 'Drum!B4=met', '--by', 'Drum!B1'])
    expect(met.code).toBe(0)
    expect(met.out[0]?.split('\t').slice(2)).toEqual(['TR', 'Drum!B4', 'TRUE', expect.stringMatching(/^met/)])
    expect(Number(met.out[0]?.split('\t')[1])).toBeCloseTo(100, 9)
    expect(met.err.join()).toContain('it holds from there down')
    const step = await cli.run(['solve', 'curve.lowside.json', '--target', 'Curve!B3=5', '--by', 'Curve!B1', '--within', '0:10'])
    expect({ code: step.code, err: step.err.join() }).toEqual({ code: 0, err: expect.stringContaining('steps from 3 in to 6 in') })
  })

  it('ends with 1 and words where there is no solution', async () => {
    const words = async (...args: readonly string[]): Promise<string> => {
      const { code, out, err } = await cli.run(['solve', 'curve.lowside.json', '--by', 'Curve!B1', ...args])
      expect({ code, out, lines: err.length }).toEqual({ code: 1, out: [], lines: 1 })
      return err.join()
    }
    expect(await words('--target', 'Curve!B2=-1', '--within', '0:10')).toContain('Nearest is 0 at 3 ft')
    expect(await words('--target', 'Curve!B7=20')).toContain('does not hang on')
    expect(await words('--target', 'Curve!B6=met', '--within', '3:10')).toContain('is met everywhere between 3 ft and 10 ft')
    expect(await words('--target', 'Curve!B4=1', '--within', '0:1')).toContain('has no number anywhere')
  })

  it('says what is wrong with what was asked', async () => {
    expect(await refusal('solve', DRUM, '--by', 'Drum!B1')).toContain('--target missing; usage: solve FILE')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3=1')).toContain('--by missing')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3', '--by', 'Drum!B1')).toContain('write an address, "=" and what it should come to')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3=much', '--by', 'Drum!B1')).toContain('"much"')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3=met', '--by', 'Drum!B1')).toContain('is no check')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B1=3', '--by', 'Drum!B1')).toContain('it is typed in, not computed')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3=3', '--by', 'Drum!B5')).toContain('it holds text')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3=3', '--by', 'Drum!B1', '--within', '5')).toContain('are no bounds; accepted: FROM:TO')
    expect(await refusal('solve', DRUM, '--target', 'Drum!B3=3 °F', '--by', 'Drum!B1')).toContain('°F does not fit Drum!B3')
  })
})
