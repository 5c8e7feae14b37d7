import { createMemo, type Accessor } from 'solid-js'
import { areaOf, type Reference, type Area } from '../../workbook/address.ts'
import { foldCase, isFormula, type Workbook } from '../../workbook/document.ts'
import { namedReference, referencesIn } from '../../workbook/formula/references.ts'
import { tokenise, type Token } from '../../workbook/formula/tokenise.ts'
import { inArea } from './selection.ts'

/** Cells that a formula refers to, and which of the reference colours they have. */
export interface Feed {
  readonly sheet: string
  readonly area: Area
  readonly colour: number
}

export interface Feeds {
  readonly all: Accessor<readonly Feed[]>
  /** The colour of the tokens that refer to cells. */
  readonly colourOf: (token: Token) => number | undefined
  /** The colour of a cell of the sheet shown, if the formula refers to it. */
  at(row: number, column: number): number | undefined
}

export const REFERENCE_COLOURS = 6

interface Surroundings {
  readonly workbook: Accessor<Workbook>
  readonly sheet: Accessor<string>
  /** The sheet that the formula stands on, where another one may be shown while it is typed. */
  readonly home?: Accessor<string>
  /** The formula at hand: being typed, or of the active cell. */
  readonly text: Accessor<string>
}

/** The cells that feed the formula at hand; the same cells always in the same colour. */
export function createFeeds({ workbook, sheet, home = sheet, text }: Surroundings): Feeds {
  const found = createMemo(() => {
    const byReference = new Map<string, Feed>()
    const colours = new Map<number, number>()
    for (const { reference, token } of isFormula(text()) ? referred(text(), workbook().names) : []) {
      const area = areaOf(reference)
      const name = reference.sheet ?? home()
      const key = `${area.top}:${area.left}:${area.bottom}:${area.right}:${foldCase(name)}`
      const feed = byReference.get(key) ?? { sheet: name, area, colour: byReference.size % REFERENCE_COLOURS }
      byReference.set(key, feed)
      colours.set(token.start, feed.colour)
    }
    return { feeds: [...byReference.values()], colours }
  })
  const here = createMemo(() => found().feeds.filter((feed) => foldCase(feed.sheet) === foldCase(sheet())), [], {
    equals: (one, other) => one.length === 0 && other.length === 0,
  })

  return {
    all: () => found().feeds,
    colourOf: (token) => found().colours.get(token.start),
    at: (row, column) => here().find(({ area }) => inArea(area, row, column))?.colour,
  }
}

interface Referred {
  readonly reference: Reference
  readonly token: Token
}

/** References as written, and those that defined names stand for, in the order of writing. */
function referred(formula: string, names: ReadonlyMap<string, string>): Referred[] {
  const tokens = tokenise(formula)
  const written = referencesIn(tokens)
  const named = tokens
    .filter(({ kind }) => kind === 'name')
    .flatMap((token) => {
      const reference = namedReference(names, token.text)
      return reference ? [{ reference, token }] : []
    })
  return [...written, ...named].toSorted((one, other) => one.token.start - other.token.start)
}
