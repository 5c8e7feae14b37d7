import { functionByName } from '../../../functions/catalogue.ts'
import { argumentLabel } from '../../../functions/define.ts'
import { element, type Child, type Html } from '../../pages/html.ts'

/** A text in which the numbers of steps, `[3]`, lead to them. */
export const withLinks = (text: string, isStep: (number: number) => boolean): readonly Child[] =>
  text.split(/(\[\d+\])/).map((part) => {
    const number = Number(/^\[(\d+)\]$/.exec(part)?.[1] ?? 0)
    return isStep(number) ? element('a', { href: `#step-${number}` }, part) : part
  })

/** A function once: what it gives, its equation, what it takes and within which range, by whom, and what to mind. */
export function functionPart(name: string): Html | undefined {
  const definition = functionByName(name)
  if (definition === undefined) return undefined
  const named = Object.entries(definition.arguments).filter(([, { kind }]) => kind !== 'unit')
  return element(
    'div', { class: 'function' },
    element('h3', {}, name, element('span', {}, `: ${definition.gives}`)),
    element('p', { class: 'equation' }, definition.equation),
    element('ul', {}, named.map(([key, { words, accepts }]) => element('li', {}, element('b', {}, argumentLabel(key)), `: ${words}; accepted: ${accepts}`))),
    element('ul', {}, definition.sources.map(({ cite, confidence }) => element('li', {}, `Source: ${cite} `, element('b', {}, `[${confidence}]`)))),
    (definition.cautions ?? []).length === 0 ? undefined : element('ul', {}, (definition.cautions ?? []).map((caution) => element('li', {}, `Caution: ${caution}`))),
  )
}
