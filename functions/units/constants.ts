/** Standard atmosphere, the default of every `site` argument, Pa (ISO 2533). */
export const STANDARD_ATMOSPHERE_PA = 101325

/** Standard acceleration of free fall, m/s², exact (NIST SP 811). */
export const STANDARD_GRAVITY = 9.80665
