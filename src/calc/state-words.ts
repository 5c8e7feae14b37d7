import type { SheetState } from './values.ts'

interface StateWords {
  readonly kind: 'error' | 'not-met' | 'met' | 'plain'
  readonly words: string
}

/** The worst of a sheet's state, in words. */
export function stateWords(state: SheetState | undefined): StateWords {
  if (!state) return { kind: 'plain', words: '' }
  const { checks, notMet, errors } = state
  if (errors > 0) return { kind: 'error', words: `${errors} ${errors === 1 ? 'error' : 'errors'}${notMet > 0 ? `, ${notMet} not met` : ''}` }
  if (notMet > 0) return { kind: 'not-met', words: `${notMet} of ${checks} checks not met` }
  return checks > 0 ? { kind: 'met', words: checks === 1 ? 'check met' : `all ${checks} checks met` } : { kind: 'plain', words: '' }
}
