import { figureKind, type FigureKind } from './figure-kinds.ts'
import { MAX_TEXT } from './limits.ts'

/** A drawing of what cells hold. Plain data: what is drawn is read from the cells each time. */
export interface Figure {
  readonly kind: FigureKind
  readonly title: string
  /** The sheet that it belongs to, where it is printed and listed first; none for a figure of the workbook. */
  readonly sheet?: string
  /** Choices by the names of the kind's options. */
  readonly options: Readonly<Record<string, string>>
  /** By the names of the kind's parts: reference text that names its sheet, such as `Drum!$C$5:$D$5`, or a defined name. */
  readonly bindings: Readonly<Record<string, string>>
}

/** What is wrong and what is accepted, and under which of the figure's own members it stands. */
export interface FigureProblem {
  readonly message: string
  readonly path: readonly string[]
}

/** What no figure may hold. A part that is bound to nothing, or to what is not there, is no such fault: the drawing says so. */
export function figureProblem({ kind, title, options, bindings }: Pick<Figure, 'kind' | 'title' | 'options' | 'bindings'>): FigureProblem | undefined {
  const description = figureKind(kind)
  if (title.length > MAX_TEXT) return { message: `a title of ${title.length} characters; accepted: up to ${MAX_TEXT}`, path: ['title'] }
  for (const [name, choice] of Object.entries(options)) {
    const option = Object.hasOwn(description.options, name) ? description.options[name] : undefined
    if (!option) return { message: `unknown option ${JSON.stringify(name)} of a ${kind} figure; accepted: ${listed(description.options)}`, path: ['options', name] }
    if (!option.accepted.includes(choice)) return { message: `${name}: ${JSON.stringify(choice)}; accepted: ${option.accepted.join(', ')}`, path: ['options', name] }
  }
  for (const [name, reference] of Object.entries(bindings)) {
    if (!Object.hasOwn(description.parts, name)) {
      return { message: `unknown part ${JSON.stringify(name)} of a ${kind} figure; accepted: ${listed(description.parts)}`, path: ['bindings', name] }
    }
    if (reference === '' || reference.length > MAX_TEXT) return { message: `${name}: accepted: reference text such as Drum!$C$5:$D$5`, path: ['bindings', name] }
  }
  return undefined
}

/** The figure without what stands for nothing, its members in the order of its kind. */
export function normalFigure({ kind, title, sheet, options, bindings }: Figure): Figure {
  const description = figureKind(kind)
  return {
    kind, title, ...(sheet === undefined ? {} : { sheet }),
    options: inOrder(Object.keys(description.options), options), bindings: inOrder(Object.keys(description.parts), bindings),
  }
}

/** The figure with each of its references as `change` makes it. */
export const figureWith = (figure: Figure, change: (reference: string) => string): Figure => ({
  ...figure, bindings: Object.fromEntries(Object.entries(figure.bindings).map(([name, reference]) => [name, change(reference)])),
})

/** Whether two lists of figures in their normal form say the same. */
export const sameFigures = (one: readonly Figure[], other: readonly Figure[]): boolean => JSON.stringify(one) === JSON.stringify(other)

/** The option as chosen, or as it is where nothing is said. */
export const optionOf = ({ kind, options }: Figure, name: string): string => options[name] ?? figureKind(kind).options[name]?.accepted[0] ?? ''

function inOrder(names: readonly string[], held: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(names.flatMap((name): [string, string][] => (held[name] === undefined ? [] : [[name, held[name]]])))
}

const listed = (named: object): string => Object.keys(named).join(', ') || 'none'
