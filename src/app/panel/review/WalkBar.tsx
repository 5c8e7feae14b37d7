import type { JSX } from 'solid-js'
import { counted, grouped } from '../../parts/counted.ts'
import { stepFrom } from '../../review/walking.ts'

interface Props {
  /** What one walks through: "finding". */
  readonly what: string
  /** Where one is; −1 before the first step. */
  readonly at: number
  readonly count: number
  readonly goTo: (at: number) => void
}

/** From one to the next and back, and where one is. */
export function WalkBar(props: Props): JSX.Element {
  const step = (way: 1 | -1) => {
    const to = stepFrom(props.at, way, props.count)
    if (to !== undefined) props.goTo(to)
  }
  return (
    <div class="review-walk" role="group" aria-label={`Walk from one ${props.what} to the next`}>
      <button type="button" class="plain-button" aria-label={`Previous ${props.what}`} onClick={() => step(-1)}>Previous</button>
      <span>{props.at < 0 ? counted(props.count, props.what) : `${grouped(props.at + 1)} of ${grouped(props.count)}`}</span>
      <button type="button" class="plain-button" aria-label={`Next ${props.what}`} onClick={() => step(1)}>Next</button>
    </div>
  )
}
