/** Under every result, wherever it is shown. */
export const STANDING_CAUTION =
  "Engineering estimate, not a compliance finding. Adopted codes, the vessel's stamp and a competent licensed person decide."

/** What holds for all work with these sheets. */
export const CAUTIONS: readonly string[] = [
  STANDING_CAUTION,
  'Ammonia is toxic and, in some mixtures with air, flammable. Never open, isolate or relieve equipment on the strength of a calculation alone.',
  'A relief device, its set pressure and its discharge line are chosen by the codes in force where the plant stands; the figures here are a starting point for that work.',
  'A function accepts values only inside the range its source supports. Outside it, it says so and gives no number.',
  'Sources marked “from memory” or “common practice” have not been read against the publication: check them before relying on them.',
]
