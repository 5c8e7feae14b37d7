import type { JSX } from 'solid-js'
import type { Severity } from '../../../review/finding.ts'

/** A shape of its own for each severity, before its word. */
export const SeverityMark = (props: { readonly severity: Severity }): JSX.Element => (
  <svg class={`severity-mark ${props.severity}`} viewBox="0 0 12 12" aria-hidden="true"><path d={SHAPES[props.severity]} /></svg>
)

/** A full lozenge; one of which half is full; a ring. */
const SHAPES: Readonly<Record<Severity, string>> = {
  error: 'M6 .8 11.2 6 6 11.2.8 6Z',
  warning: 'M6 .8 11.2 6 6 11.2.8 6ZM6 2.7 2.7 6H9.3Z',
  remark: 'M6 2.2A3.8 3.8 0 1 1 6 9.8 3.8 3.8 0 1 1 6 2.2ZM6 3.7A2.3 2.3 0 1 0 6 8.3 2.3 2.3 0 1 0 6 3.7Z',
}
