import { createMemo, For, type JSX } from 'solid-js'
import type { Extent } from '../../workbook/formula/calls.ts'
import { tokenise } from '../../workbook/formula/tokenise.ts'
import { useSession } from '../state/session.ts'

interface Props {
  readonly text: string
  /** Lines may end after commas and operators; left out under a text field, which breaks its lines in its own way. */
  readonly breaks?: boolean
  /** Where it cannot be read. */
  readonly problem?: Extent | undefined
}

/** A text as it is typed, the references of a formula in the colours of the cells they stand for. */
export function ColouredFormula(props: Props): JSX.Element {
  const { feeds } = useSession()
  const pieces = createMemo(() => {
    if (!props.text.startsWith('=')) return [{ text: props.text, classes: '', mayBreak: false }]
    return tokenise(props.text).map((token) => {
      const colour = feeds.colourOf(token)
      // What is missing at the end is marked under what stands last.
      const isMarked = props.problem !== undefined && (props.problem.start === token.start || (props.problem.start === token.end && token.end === props.text.length))
      const mark = isMarked ? ' token-problem' : ''
      return { text: token.text, classes: `${colour === undefined ? `token-${token.kind}` : `reference-${colour}`}${mark}`, mayBreak: token.kind === 'separator' || token.kind === 'operator' }
    })
  })
  return <For each={pieces()}>{({ text, classes, mayBreak }) => <><span class={classes}>{text}</span>{props.breaks && mayBreak && <wbr />}</>}</For>
}
