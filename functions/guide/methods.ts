import type { Source } from '../define.ts'

/** A page of the guide about something that several functions share. */
export interface MethodPage {
  readonly title: string
  readonly paragraphs: readonly string[]
  readonly sources: readonly Source[]
}

const confirmed = (cite: string): Source => ({ cite, confidence: 'confirmed' })
const fromMemory = (cite: string): Source => ({ cite, confidence: 'from memory' })

/** How the things are meant that functions take for granted, in the order in which a newcomer meets them. */
export const methodPages: readonly MethodPage[] = [
  {
    title: 'A number travels with its unit',
    paragraphs: [
      'In a row the value stands in one cell and its unit in the next: C5 holds 31, D5 holds °F. A function takes the pair, C5:D5. In a table the unit stands once in the header, and C12&C$4 makes the quantity. "31 °F" in quotes is a quantity as well.',
      'The unit of a result is asked for: the last required argument of most functions, usually the cell beside the result. Change that cell, and the result follows.',
      'A bare number is refused wherever it would need a unit. No function guesses one, and no result depends on a hidden setting: what is omitted has one constant, documented value.',
    ],
    sources: [confirmed('NIST Special Publication 811 (2008), appendix B: conversion factors, exact where defined')],
  },
  {
    title: 'Temperature and temperature difference',
    paragraphs: [
      '°F, °C, K and °R are temperatures; Δ°F, Δ°C and ΔK are differences. A difference of 10 °F is 5.56 K, a temperature of 10 °F is 260.9 K: the 32 belongs to temperatures only. A function that wants one refuses the other.',
      'Without the sign Δ at hand, write dF, dC or dK.',
    ],
    sources: [confirmed('NIST Special Publication 811 (2008), 8.5')],
  },
  {
    title: 'Gauge pressure and the site',
    paragraphs: [
      'psig, kPa(g), bar(g) and inHg vac count from the pressure of the atmosphere, which falls with elevation: 20 psig is saturation at 5.6 °F by the sea but at 2.3 °F in 5 280 ft. psia, psi, kPa, bar and the rest count from zero; psi is read as absolute.',
      'Functions that take or give a gauge pressure have an optional site argument, the atmospheric pressure there; 101.325 kPa where it is omitted. SITE.PRESSURE gives the standard atmosphere at an elevation. The weather moves the real pressure by up to about 3 %.',
      'A pressure difference is no gauge pressure: a drop is written in psi, kPa or bar, and psig is refused.',
    ],
    sources: [confirmed('ISO 2533:1975 Standard Atmosphere')],
  },
  {
    title: 'Properties of ammonia',
    paragraphs: [
      'Saturated ammonia follows the equation of state of Gao and others (2023), solved for equal pressure and Gibbs energy of liquid and vapour. Formulas use a table of Chebyshev polynomials made from that solution, which agrees with it to 1e-10, from −77.6 to 100 °C; viscosities are those of Fenghour and others (1995), surface tension that of Mulero and others (2012).',
      'Enthalpies count from 200 kJ/kg for saturated liquid at 0 °C (the IIR reference). Older American tables count from 0 at −40 °F, others from elsewhere: the numbers differ by 19 kJ/kg and more, their differences do not. Never mix two tables; results here contain differences only.',
      'Printed tables rest on older equations: against the tables of 1923 and of 1978 the pressure differs by up to 0.3 %, the heat of evaporation by up to 0.3 %.',
      'All of it is for pure ammonia: oil and water in the charge raise the boiling temperature at a pressure.',
    ],
    sources: [
      confirmed('Gao, Wu, Bell, Harvey, Lemmon, J. Phys. Chem. Ref. Data 52, 013102 (2023)'),
      confirmed('Fenghour et al., J. Phys. Chem. Ref. Data 24, 1649 (1995)'),
      confirmed('Mulero, Cachadiña, Parra, J. Phys. Chem. Ref. Data 41, 043105 (2012)'),
    ],
  },
  {
    title: 'Load, feed and flash gas',
    paragraphs: [
      'What leaves a drum as vapour is what is fed to it: the load divided by hg of the drum less hf of the liquid fed (FEED.FLOW). A part of it, the flash gas, forms at the feed valve and cools nothing. By the heat of evaporation alone (BOILING.FLOW) the flow comes out 16 to 30 % too small: right for the coil, wrong for the drum, the regulator and the suction line.',
      'The liquid fed counts as saturated at its temperature. Liquid colder than the drum is refused: saturated liquid of a lower pressure could not flow in.',
    ],
    sources: [confirmed('Energy balance of the drum')],
  },
  {
    title: 'Separation: three ways to one velocity',
    paragraphs: [
      'A droplet falls through vapour that rises more slowly than the droplet’s terminal velocity. The Souders–Brown factor K, a droplet diameter, and a table of allowed velocities say the same thing in three ways, and each can be turned into the others: DROPLET.DIAMETER and SEPARATION.FACTOR show what a velocity means.',
      'Stokes’ law is offered for comparison only: for the droplets that matter, 150 to 300 µm, it is two to four times too fast.',
      'The distance over which droplets fall counts from the high-level cut-out, not from the control level: that is where liquid may stand while compressors run.',
    ],
    sources: [
      confirmed('Souders & Brown, Ind. Eng. Chem. 26 (1934) 98'),
      confirmed('Haider & Levenspiel, Powder Technol. 58 (1989) 63'),
      { cite: 'Distance from the high-level cut-out', confidence: 'common practice' },
    ],
  },
  {
    title: 'Vessels and their heads',
    paragraphs: [
      'Length is from tangent line to tangent line, diameter is inside (outside for surfaces and relief). Heads: flat; 2:1 ellipsoidal, a quarter of the diameter deep; hemi, half; dished 6%, flanged and dished with a knuckle of 6 % of the diameter; dished 10%, with one of 10 %. A 6 % dished head holds 0.0810 D³, one of 10 % 0.0990 D³, a 2:1 head 0.1309 D³: they are not the same head.',
      'A level is the height above the lowest inside point, also in % of the inside height. 80 % of a lying drum’s diameter is 86 % of its volume. A sight column shows another height: its ends are off the vessel’s bottom, and its liquid has another temperature.',
    ],
    sources: [
      confirmed('Jones, Calculating Tank Volume (2003), for the closed forms'),
      fromMemory('ASME VIII Div. 1 and DIN 28011 for the shapes of dished heads'),
    ],
  },
  {
    title: 'Static head',
    paragraphs: [
      'Liquid in the leg below a drum stands under the drum’s pressure and its own weight, and so boils at a higher temperature. How much higher depends on the temperature level: 10 ft cost 2.3 °F at +28 °F, 8.7 °F at −40 °F, 13.7 °F at −60 °F. The functions follow the saturation curve; its tangent overstates the penalty at low temperatures.',
      'The foot of the leg is the upper bound: the coil holds a mixture, so that the mean over it is smaller.',
    ],
    sources: [confirmed('Hydrostatics with the saturation curve of Gao et al. 2023')],
  },
  {
    title: 'Gravity circulation',
    paragraphs: [
      'Liquid in the leg weighs more than the mixture in coil and wet return; the difference drives the loop until friction and acceleration use it up. The circulation number is liquid fed over liquid evaporated, so that 1/N is the quality at the coil’s outlet. The balance takes quality as rising evenly along the coil, Churchill’s friction factor in the leg, Müller-Steinhagen & Heck for two-phase friction, homogeneous acceleration, and the chosen void model for the weight of the columns.',
      'Two-phase models differ by 30 % either way, and so may the number. It rises steeply as the load falls: look at part load as well, where the wet return carries the most liquid.',
      'Where the level cannot drive the loop, or the number would lie outside 1 to 1000, there is no result but the reason.',
    ],
    sources: [
      confirmed('Müller-Steinhagen & Heck, Chem. Eng. Process. 20 (1986) 297'),
      confirmed('Churchill, Chem. Eng. 84 (7 November 1977) 91'),
      confirmed('Zivi, J. Heat Transfer 86 (1964) 247'),
    ],
  },
  {
    title: 'Void fraction',
    paragraphs: [
      'How much of a line’s cross-section is vapour depends on how much faster the vapour runs than the liquid. The homogeneous model lets both run alike and counts an order of magnitude too little liquid in most refrigeration lines; do not use it for charge. Zivi is the default; Rouhani in its first form and Steiner are offered, the second Rouhani form is not, since it collapses at the low mass fluxes of refrigeration returns.',
      'At design load the models give far less liquid in coils than the trade counts with (70 to 80 % in flooded ones): the trade’s figure covers part load and standstill. For charge both are worth showing.',
    ],
    sources: [
      confirmed('Zivi (1964); Smith (1969); Chisholm (1973); Rouhani & Axelsson (1970)'),
      fromMemory('Liquid shares counted by the trade'),
    ],
  },
  {
    title: 'Valves',
    paragraphs: [
      'Flow coefficients follow IEC 60534-2-1. Saturated liquid chokes almost at once: only about a tenth of the inlet pressure drives the flow, however low the outlet. A calculation with the full drop gives a valve 2.6 times too small.',
      'Kv is m³/h at 1 bar, Cv US gallons per minute at 1 psi; Kv = 0.865 Cv.',
    ],
    sources: [confirmed('IEC 60534-2-1 / ISA 75.01.01')],
  },
  {
    title: 'Relief',
    paragraphs: [
      'ANSI/IIAR 2, in the edition adopted where the plant stands, rules for ammonia; ANSI/ASHRAE 15-2022 says itself that it does not apply to R-717. The required capacity f·D·L is of air; each valve of a dual set carries all of it; a discharge line is checked with the valve’s rated, not the required, capacity.',
      'These figures are a start for that work. They are no selection of a device and no finding of compliance.',
    ],
    sources: [confirmed('ANSI/ASHRAE 15-2022, its published scope'), fromMemory('ANSI/IIAR 2; EN 13136')],
  },
  {
    title: 'Confidence of a source',
    paragraphs: [
      'Confirmed: read at a public source, or derived in closed form. Common practice: what the trade does, without a published source. From memory: not confirmed at its source; check it before you rely on it.',
      'Practice values stand in the sheets as inputs, with their origin beside them. They are yours to change.',
    ],
    sources: [],
  },
]
