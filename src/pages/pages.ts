import type { Html } from './html.ts'

/** Something to print, whatever it is of. */
export interface Pages {
  readonly markup: Html
  /** The look of the markup, and on which pages its parts stand. */
  readonly style: string
  /** The pages themselves: paper, margins and what is printed in them. Of the document as a whole, wherever the markup stands. */
  readonly pages: string
}
