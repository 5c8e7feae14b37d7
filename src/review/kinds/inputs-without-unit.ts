import { findUnit } from '../../../functions/units/units.ts'
import { bandOf } from '../bands.ts'
import type { FindingKind, Found } from '../finding.ts'
import { inputsOf, namingText, wordsOf, type InputCell } from '../input-cells.ts'
import { merge } from '../merge.ts'
import type { Survey } from '../survey.ts'

/** Numbers that are quantities by their words or their size, with no unit beside or over them. */
export const inputsWithoutUnit: FindingKind = {
  kind: 'inputs-without-unit',
  heading: 'Inputs without unit',
  about:
    'A number that may be feet or metres. Looked at are typed numbers whose words name a quantity, and numbers that are not whole; counts, ratios, years and amounts of money need no unit, nor do choices and names.',
  find: (survey) => merge(inputsOf(survey).flatMap((input) => {
    const reason = fault(survey, input)
    if (reason === undefined) return []
    const { sheet, row, column } = input
    const found: Found = { severity: 'warning', sheet: sheet.name, area: { top: row, bottom: row, left: column, right: column }, reason, key: 'no unit' }
    return [{ found, alike: reason.replace(/^\S+/, '') }]
  })),
}

function fault(survey: Survey, input: InputCell): string | undefined {
  const { sheet, row, column, cell: { content } } = input
  if (typeof content !== 'number' || survey.unit(sheet, row, column) !== undefined || hasUnitText(survey, input)) return undefined
  const { beside = '', over = '' } = wordsOf(input, namingText(survey, input))
  const words = [over, beside]
  if (words.some((one) => INLINE_UNIT.test(one)) || [...words, ...(bandOf(sheet, row)?.headings.values() ?? [])].some((one) => MONEY.test(one))) return undefined
  // The heading of a table's column says more of a number than the name of the row.
  const [telling] = words.filter((one) => one !== '' && !PLAIN_HEADING.test(one))
  if (telling === undefined) return Number.isInteger(content) ? undefined : `${content} has no unit: write one beside it, or over its column; “-” for a pure number.`
  if (COUNT.test(telling) || IS_RATIO.test(telling)) return undefined
  const quantity = QUANTITY.exec(telling)?.[0]
  if (quantity === undefined && (Number.isInteger(content) || RATIO.test(telling))) return undefined
  return `${content} has no unit${quantity === undefined ? '' : `, though “${telling}” is a quantity`}: write one beside it, or over its column; “-” for a pure number.`
}

/** A unit that stands on the right as plain text serves a reader as well. */
function hasUnitText(survey: Survey, { sheet, row, column }: InputCell): boolean {
  const beside = survey.value(sheet.name, row, column + 1)
  return typeof beside === 'string' && findUnit(beside) !== undefined
}

const PLAIN_HEADING = /^(?:value|values|input|inputs|given|number)$/i
/** "Length, ft", "Load (TR)", "Temperature in °F". */
const INLINE_UNIT = { test: (words: string): boolean => [...words.matchAll(/(?:[,([]\s*|\bin\s+)([^\s,()[\]]+)[)\]]?\s*$/g)].some(([, unit = '']) => findUnit(unit) !== undefined) }
const MONEY = /\b(?:costs?|prices?|money|currency|rate of interest|usd|eur|gbp)\b|[$€£]/i
const COUNT = /\b(?:numbers?|how many|count|counts|quantity|qty|no\.|nr\.?|row|rows|inlets|outlets|circuits|passes|pieces|year|revision|tag|item)\b|\(1, 0\)|\(0, 1\)/i
const RATIO = /\b(?:factor|ratio|share|part|fraction|coefficient|coefficients|exponent|quality|efficiency|multiplier|K|ΣK|FL|xT|N)\b|\bover\b/i
/** What the words are about, whatever it is a share of. */
const IS_RATIO = /^(?:share|part|ratio|fraction|factor|coefficient|efficiency)\b|\b(?:factor|ratio|coefficient|efficiency)$|\bover\b/i
const QUANTITY =
  /\b(?:load|temperature|pressure|length|diameter|bore|height|level|elevation|depth|distance|thickness|wall|volume|area|surface|flow|velocity|speed|density|mass|weight|charge|time|delay|duration|power|heat|enthalpy|viscosity|roughness|head|drop|loss|margin|rise|fall|superheat|subcooling|capacity|rating|lift|width|gap|step|tension|energy)s?\b/i
