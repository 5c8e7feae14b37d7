/** Under every result, wherever it is shown. */
export const STANDING_CAUTION =
  'Engineering estimate, not a compliance finding. Adopted codes, the vessel’s stamp and a competent licensed person decide.'

/** What the guide, every export and every print say. */
export const CAUTIONS: readonly string[] = [
  STANDING_CAUTION,
  'Ammonia is toxic and, in some mixtures with air, flammable; a release can kill. Work on an ammonia system only with the training, permits, detection and protective equipment that the codes in force ask for, and never open, isolate or relieve equipment on the strength of a calculation alone.',
  'A relief device, its set pressure and its discharge line are chosen by the codes in force where the plant stands; the figures here are a starting point for that work.',
  'Check every input, unit and method against the plant as built before a number is used.',
  'A function accepts values only inside the range its source supports. Outside it, it says so and gives no number.',
  'Sources marked “from memory” or “common practice” have not been read against the publication: check them before relying on them.',
]
