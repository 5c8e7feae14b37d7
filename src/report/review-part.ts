import { countWords, findingPlace, findingWords } from '../review/finding-words.ts'
import type { Finding } from '../review/finding.ts'
import type { Reviewed } from '../review/reviewed.ts'
import type { Workbook } from '../workbook/document.ts'
import type { AcceptedFinding } from '../workbook/review-record.ts'
import { element, type Html } from '../pages/html.ts'
import { listing } from '../pages/listing.ts'
import { mark } from '../pages/marks.ts'

/** How a review stands, in one line. */
export function findingsInWords(reviewed: Reviewed | undefined): string {
  if (reviewed === undefined) return 'findings were not looked for'
  const open = reviewed.findings.filter(({ accepted }) => accepted === undefined)
  const accepted = reviewed.findings.length - open.length
  const beside = reviewed.template === undefined ? 'the workbook is like no template' : `laid beside the template “${reviewed.template}”`
  return `${open.length === 0 ? 'none open' : `${countWords(open)} open`}${accepted === 0 ? '' : `, ${accepted} accepted`}; ${beside}`
}

/**
 * The findings that are open, with their places and reasons, the worst first; then those that someone has accepted, with note, name and date.
 * So that they keep short on paper, remarks of one kind share a line where they are many, and so do findings that were accepted together.
 */
export function findingsPart({ review }: Workbook, reviewed: Reviewed | undefined): readonly Html[] {
  if (reviewed === undefined) return acceptedListing((review?.accepted ?? []).map((one) => ({ finding: undefined, accepted: one })), new Map())
  const headings = new Map(reviewed.lookedFor.map(({ kind, heading }) => [kind, heading]))
  const open = reviewed.findings.filter(({ accepted }) => accepted === undefined)
  const accepted = reviewed.findings.flatMap((finding) => (finding.accepted === undefined ? [] : [{ finding, accepted: finding.accepted }]))
  return [...openListing(open, headings), ...acceptedListing(accepted, headings)]
}

/** So many remarks of a kind are told one by one. */
const FEW = 3
/** So many places are named before the rest of them are counted. */
const MOST_PLACES = 12

type Headings = ReadonlyMap<string, string>

function openListing(open: readonly Finding[], headings: Headings): readonly Html[] {
  if (open.length === 0) return []
  const rows = (['error', 'warning'] as const).flatMap((severity) => open.filter((one) => one.severity === severity).map(openRow))
  const remarks = groupsOf(open.filter(({ severity }) => severity === 'remark'), ({ kind }) => kind)
    .flatMap((alike) => (alike.length <= FEW ? alike.map(openRow) : [remarksRow(alike, headings)]))
  return [listing('Findings that are open', 'findings', ['Severity', 'Cells', 'Finding'], [...rows, ...remarks])]
}

const openRow = (finding: Finding): Html => openCells(finding.severity, [findingPlace(finding)], findingWords(finding))

const remarksRow = (alike: readonly Finding[], headings: Headings): Html =>
  openCells('remark', alike.map(findingPlace), manyWords(alike, headings))

function openCells(severity: Finding['severity'], places: readonly string[], words: string): Html {
  const drawn = severity === 'error' ? mark('not-met') : severity === 'warning' ? mark('error') : undefined
  return element('tr', {}, element('td', { class: severity === 'error' ? 'not-met' : severity }, drawn, severity), element('td', {}, placesInWords(places)), element('td', {}, words))
}

interface Accepted {
  /** Undefined where findings were not looked for: what was accepted is known, not how it reads. */
  readonly finding: Finding | undefined
  readonly accepted: AcceptedFinding
}

function acceptedListing(all: readonly Accepted[], headings: Headings): readonly Html[] {
  if (all.length === 0) return []
  const groups = groupsOf(all, ({ accepted: { kind, note, by = '', at = '' } }) => [kind, note, by, at].join('\n'))
  const rows = groups.map((together) => {
    const [first] = together
    const places = together.map(({ finding, accepted }) => findingPlace(finding ?? accepted))
    const findings = together.flatMap(({ finding }) => finding ?? [])
    const [only] = findings
    const words = findings.length === 1 && only !== undefined ? findingWords(only) : findings.length > 1 ? manyWords(findings, headings) : plainKind(first.accepted.kind)
    return element('tr', {}, [placesInWords(places), words, first.accepted.note, byWhom(first.accepted)].map((text) => element('td', {}, text)))
  })
  return [listing('Findings that were accepted', 'accepted', ['Cells', 'Finding', 'It may stand because', 'By'], rows)]
}

const byWhom = ({ by, at }: AcceptedFinding): string => (by === undefined ? 'with the template' : [by, at?.slice(0, 10)].filter((part) => part !== undefined).join(', '))

/** What many findings have in common: their kind, and what is said of them where it is the same of all. */
function manyWords(alike: readonly Finding[], headings: Headings): string {
  const kind = alike[0]?.kind ?? ''
  const reasons = new Set(alike.map(({ reason }) => reason))
  const [reason] = reasons
  return `${headings.get(kind) ?? plainKind(kind)}: ${alike.length} places${reasons.size === 1 ? `. ${reason}` : ''}`
}

/** A kind by its name in files. */
const plainKind = (kind: string): string => `${kind.slice(0, 1).toUpperCase()}${kind.slice(1).replaceAll('-', ' ')}`

const placesInWords = (places: readonly string[]): string =>
  places.length <= MOST_PLACES ? places.join(', ') : `${places.slice(0, MOST_PLACES).join(', ')} and ${places.length - MOST_PLACES} more`

type Some<Item> = readonly [Item, ...Item[]]

/** Those with the same key together, in the order in which their first ones come. */
function groupsOf<Item>(items: readonly Item[], keyOf: (item: Item) => string): readonly Some<Item>[] {
  const groups = new Map<string, [Item, ...Item[]]>()
  for (const item of items) {
    const group = groups.get(keyOf(item))
    if (group) group.push(item)
    else groups.set(keyOf(item), [item])
  }
  return [...groups.values()]
}
