import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { catalogue } from '../../functions/catalogue.ts'
import { commandLine, type CommandLine } from './cli-fixture.ts'

let cli: CommandLine
let html = ''
const PLANT = join(import.meta.dirname, '../../templates/vessel-sizing.lowside.json')

beforeAll(async () => {
  cli = await commandLine()
  expect(await cli.run(['export', PLANT, '-o', 'report.html'])).toEqual({ code: 0, out: [], err: [] })
  html = await readFile(join(cli.folder, 'report.html'), 'utf8')
})
afterAll(() => cli.remove())

describe('a report exported to a file', () => {
  it('needs nothing else: no script, no other file, no address but those that sources name', () => {
    expect(html.startsWith('<!doctype html>')).toBe(true)
    expect(html).toContain(`<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">`)
    expect(html).not.toMatch(/<(script|link|iframe|object|embed|base|form|img|image|use)\b| on[a-z]+=| (src|href|action|style)=|@import|url\(/i)
    const cited = catalogue.flatMap(({ sources }) => sources.map(({ cite }) => cite)).join(' ')
    for (const [address] of html.matchAll(/https?:\/\/[^\s<]*/g)) expect(cited).toContain(address)
  })

  it('has the sheets, the figures with their looks, and the pages that it prints on', () => {
    for (const part of ['Sheet Vertical drum', '<b>Figure 1</b> Vertical drum in section', 'class="figure-drawing"', '.figure-drawing .figure-wall', 'counter(page)', 'size: letter portrait', 'Engineering estimate, not a compliance finding']) expect(html).toContain(part)
    expect(html.match(/<style>/g)).toHaveLength(1)
    expect(html.match(/<\/style>/g)).toHaveLength(1)
  })

  it('says what was found in the workbook, and what it was laid beside', async () => {
    // The command takes all workbooks of its folder for templates here.
    await cli.write('drum.lowside.json', `{"lowside": 1, "title": "Drum", "sheets": [{"name": "Drum", "cells": {"A1": ["Load", "label"], "B1": ["=1/0", "result"], "C1": ["TR", "unit"]}}]}`)
    expect(await cli.run(['export', 'drum.lowside.json', '-o', 'drum.html'])).toEqual({ code: 0, out: [], err: [] })
    const report = await readFile(join(cli.folder, 'drum.html'), 'utf8')
    expect(report).toMatch(/<th scope="row">Findings<\/th><td colspan="3">1 error\b[^<]* open; laid beside the template “Drum”</)
    expect(report).toMatch(/error<\/td><td>Drum!B1<\/td><td>Load: #DIV\/0!/)
  })

  it('names the day of its making, and the title so that no markup comes of it', async () => {
    const today = new Date()
    expect(html).toContain(`<td colspan="3">${today.getFullYear()}-${String(today.getMonth() + 1).padStart(2, '0')}-`)
    await cli.write('title.lowside.json', JSON.stringify({ lowside: 1, title: '</title><script>alert(1)</script></style>', sheets: [{ name: 'S', cells: { A1: ['</style><script>', 'text'] } }] }))
    expect(await cli.run(['export', 'title.lowside.json', '-o', 'TITLE.HTML'])).toEqual({ code: 0, out: [], err: [] })
    const titled = await readFile(join(cli.folder, 'TITLE.HTML'), 'utf8')
    expect(titled).toContain('<title>&lt;/title&gt;&lt;script&gt;')
    expect(titled).not.toContain('<script')
    expect(titled.match(/<\/style>/g)).toHaveLength(1)
  })
})
