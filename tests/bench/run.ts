import { exportWithWorkings } from './export.ts'
import { appendList } from './list-append.ts'
import { lineInsertion } from './line-insertion.ts'
import { marks } from './marks.ts'
import { ownFunctions } from './own-functions.ts'
import { review } from './review.ts'
import { saturation } from './saturation.ts'
import { screen } from './screen.ts'
import { sharedHeader } from './shared-header.ts'
import { whatIf } from './whatif.ts'
import type { Figure } from './measure.ts'

/*
 * Prints what is measured, the figure, what it should reach, and whether it does, topic by topic. Each figure is a ratio of things measured
 * side by side in this run; a figure that is not met is no failure of the run. Names of topics on the command line leave the others out.
 */

const TOPICS: Readonly<Record<string, () => readonly Figure[] | Promise<readonly Figure[]>>> = {
  saturation, ownFunctions, sharedHeader, lineInsertion, appendList, exportWithWorkings, whatIf, review, marks, screen,
}

const wanted = process.argv.slice(2)
const unknown = wanted.filter((name) => TOPICS[name] === undefined)
if (unknown.length > 0) throw new Error(`no topic ${unknown.join(', ')}; there are ${Object.keys(TOPICS).join(', ')}`)

const verdict = ({ met }: Figure): string => (met === undefined ? '' : met ? 'met' : 'not met')
// One after the other: each has the machine to itself.
for (const [name, topic] of Object.entries(TOPICS)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue
  const lines = (await topic()).map((figure) => [figure.what, figure.figure, figure.reach, verdict(figure)])
  const widths = [0, 1, 2].map((column) => Math.max(...lines.map((line) => (line[column] ?? '').length)))
  console.log(`\n${name}`)
  for (const line of lines) console.log(line.map((text, column) => text.padEnd(widths[column] ?? 0)).join('  ').trimEnd())
}
