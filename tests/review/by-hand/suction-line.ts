import { bookOf, check, heading, line, page } from './page.ts'

/** Pressure loss of a dry suction line in plain arithmetic, in US units. Vapour at 20 °F: Gao et al. 2023, viscosity by Fenghour et al. 1995. */
export const suctionLineByHand = bookOf('Dry suction by hand', page('Dry suction', {
  ...heading(3, 'Dry suction from drum 3 to the engine room'),
  ...line(4, 'Vapour flow', 60, 'lb/min', 'Drum sheet, peak'),
  ...line(5, 'Bore', 6.065, 'in', 'ASME B36.10M, 6 in Sch 40'),
  ...line(6, 'Length, fittings counted', 320, 'ft', 'Isometric 12-B'),
  ...line(7, 'Density of the vapour', 0.1693, 'lb/ft3', 'Ammonia table at 20 °F'),
  ...line(8, 'Viscosity of the vapour', 0.0000061, 'lb/(ft·s)', 'Fenghour et al. 1995 at 20 °F'),
  ...line(9, 'Roughness', 0.00015, 'ft', 'Moody 1944, commercial steel'),
  ...line(10, 'Velocity', '=C4/60/C7/(PI()/4*(C5/12)^2)', 'ft/s'),
  ...line(11, 'Reynolds number', '=C7*C10*(C5/12)/C8', '-'),
  ...line(12, 'Friction factor of Darcy', '=0.25/LOG10(C9/(C5/12)/3.7+5.74/C11^0.9)^2', '-', 'Swamee & Jain 1976'),
  ...line(13, 'Pressure loss', '=C12*C6/(C5/12)*C7*C10^2/(2*32.174)/144', 'psi', 'Darcy & Weisbach'),
  ...line(14, 'Pressure in the drum', 48.2, 'psia', 'Ammonia table at 20 °F'),
  ...line(15, 'Pressure at the compressor', '=C14-C13', 'psia'),
  ...line(16, 'Slope of the saturation curve', 1.07, 'psi/Δ°F', 'Ammonia table at 20 °F'),
  ...line(17, 'The loss as temperature', '=C13/C16', 'Δ°F'),
  ...line(18, 'Loss allowed', 1, 'Δ°F', 'Basis of design'),
  ...check(19, 'Line is wide enough', '=C17<=C18'),
}))
