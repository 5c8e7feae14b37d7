/** What every export says, whatever its form. */
export const CAUTIONS: readonly string[] = [
  'Engineering estimate, not a compliance finding: adopted codes, the vessel’s stamp and a competent licensed person decide.',
  'Ammonia is toxic and flammable, and a release can kill. Work on an ammonia system only with the training, permits, detection and protective equipment that the codes in force ask for.',
  'Check every input, unit and method against the plant as built before a number from this file is used.',
]
