import { bookOf, check, heading, line, page } from './page.ts'

/** The diameter of a surge drum in plain arithmetic, in US units, as an engineer sets it up on an empty sheet. Properties at 20 and 95 °F: Gao et al. 2023. */
export const drumByHand = bookOf('Drum 3 by hand', page('Drum', {
  ...heading(3, 'Surge drum 3, diameter by hand'),
  ...line(4, 'Load', 55, 'TR', 'Zone list, revision C'),
  ...line(5, 'Margin on the load', 10, '%', 'Basis of design'),
  ...line(6, 'Load with margin', '=C4*(1+C5/100)', 'TR'),
  ...line(7, 'Enthalpy of the vapour leaving', 617.1, 'Btu/lb', 'Ammonia table at 20 °F'),
  ...line(8, 'Enthalpy of the liquid fed', 149.2, 'Btu/lb', 'Ammonia table at 95 °F'),
  ...line(9, 'Vapour flow', '=C6*12000/(C7-C8)/60', 'lb/min', '1 TR is 12 000 Btu/h'),
  ...line(10, 'Specific volume of the vapour', 5.907, 'ft3/lb', 'Ammonia table at 20 °F'),
  ...line(11, 'Volume flow', '=C9*C10', 'cfm'),
  ...line(12, 'Separation factor K', 0.18, 'ft/s', 'House standard, 24 in above the cut-out'),
  ...line(13, 'Density of the liquid', 40.43, 'lb/ft3', 'Ammonia table at 20 °F'),
  ...line(14, 'Velocity allowed', '=C12*SQRT((C13-1/C10)/(1/C10))*60', 'ft/min', 'Souders & Brown 1934'),
  ...line(15, 'Section wanted', '=C11/C14', 'ft2'),
  ...line(16, 'Diameter wanted', '=SQRT(4*C15/PI())*12', 'in'),
  ...line(17, 'Diameter chosen', 16, 'in', 'List of the vessel maker'),
  ...check(18, 'Wide enough', '=C17>=C16'),
  ...line(19, 'Tangent length', 6.5, 'ft', 'List of the vessel maker'),
  ...line(20, 'Depth of one head', 4, 'in', '2:1 head, a quarter of the diameter'),
  ...line(21, 'Height over the heads', '=C19*12+2*C20', 'in'),
  ...line(22, 'Room under the roof', 9, 'ft', 'Arrangement drawing'),
  ...check(23, 'Fits under the roof', '=C21/12<=C22'),
}))
