import { createMemo, createSignal, For, Show, type JSX } from 'solid-js'
import { NO_REVIEW, type RecordEntry } from '../../../workbook/review-record.ts'
import { LAST_HASH_WORDS, verdictWords, verifyRecord } from '../../../workbook/review/verify-record.ts'
import { counted } from '../../parts/counted.ts'
import { pageOf } from '../../review/walking.ts'
import { useSession } from '../../state/session.ts'
import { Pages } from '../review/Pages.tsx'

/** All that was marked, accepted and withdrawn, the latest first, and whether it is as it was written. */
export function RecordPart(): JSX.Element {
  const session = useSession()
  const [page, setPage] = createSignal(0)
  const review = () => session.document.workbook().review ?? NO_REVIEW
  const verdict = createMemo(() => verifyRecord(review()))
  const isWhole = () => verdict().brokenAt === undefined && verdict().unrecorded.length === 0
  const latestFirst = createMemo(() => review().record.map((entry, index) => ({ entry, number: index + 1 })).toReversed())
  const shown = () => pageOf(latestFirst(), page())
  return (
    <section class="record-part">
      <h3>Record</h3>
      <p class={isWhole() ? 'record-verdict' : 'review-problem'} role={isWhole() ? undefined : 'alert'}>{verdictWords(verdict(), review().record)}</p>
      <Show when={verdict().lastHash}>
        {(hash) => (
          <>
            <dl class="record-hash"><dt>Last hash</dt><dd><code>{grouped(hash())}</code></dd></dl>
            <p class="review-hint">{LAST_HASH_WORDS}</p>
            <details>
              <summary>{counted(review().record.length, 'line')}</summary>
              <ol class="record-lines" reversed start={shown().items[0]?.number ?? 1} aria-label="Record, the latest first">
                <For each={shown().items}>{({ entry, number }) => <li value={number} classList={{ broken: verdict().brokenAt === number - 1 }}><Line entry={entry} isBroken={verdict().brokenAt === number - 1} /></li>}</For>
              </ol>
              <Pages of="record" page={shown()} setPage={setPage} />
            </details>
          </>
        )}
      </Show>
    </section>
  )
}

function Line(props: { readonly entry: RecordEntry; readonly isBroken: boolean }): JSX.Element {
  const isMark = () => props.entry.what.startsWith('mark')
  return (
    <>
      <p><strong>{props.entry.what}</strong>{isMark() ? ` ${props.entry.of}` : `: ${props.entry.of}`}, {props.entry.place}<Show when={props.isBroken}> <span class="record-broken">does not fit</span></Show></p>
      <p class="record-by">{[props.entry.by, props.entry.at.replace('T', ' ').replace('Z', ' UTC')].filter(Boolean).join(', ')}</p>
      <Show when={props.entry.words !== ''}><p>{props.entry.words}</p></Show>
      <p class="record-line-hash" title={props.entry.hash}><code>{props.entry.hash.slice(0, 16)}…</code></p>
    </>
  )
}

/** In groups of eight, to be read and copied by hand. */
const grouped = (hash: string): string => hash.replaceAll(/(.{8})(?=.)/g, '$1 ')
