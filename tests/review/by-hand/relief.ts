import { bookOf, check, heading, line, page } from './page.ts'

/** Relief of one vessel in plain arithmetic, in US units, with the discharge line by the equation of ASHRAE 15 (both from memory, as the writer noted them). */
export const reliefByHand = bookOf('Relief by hand', page('Relief', {
  ...heading(3, 'Relief of drum 3'),
  ...line(4, 'Outside diameter', 30.75, 'in', 'Data report of the vessel'),
  ...line(5, 'Length over the heads', 8, 'ft', 'Data report of the vessel'),
  ...line(6, 'Factor f for ammonia', 0.5, '-', 'ANSI/IIAR 2, no combustibles near'),
  ...line(7, 'Air capacity wanted', '=C6*(C4/12)*C5', 'lb/min', 'C = f D L with D and L in feet'),
  ...line(8, 'Rating of the valve, air', 12.9, 'lb/min', 'Valve maker'),
  ...check(9, 'The valve carries it', '=C8>=C7'),
  ...line(10, 'Set pressure', 250, 'psig', 'Stamp of the vessel'),
  ...line(11, 'Atmosphere of the site', 14.7, 'psia', 'Sea level'),
  ...line(12, 'Back pressure allowed, share of the set pressure', 15, '%', 'Conventional valve, ASHRAE 15, appendix H'),
  ...line(13, 'Back pressure allowed', '=C12/100*C10+C11', 'psia'),
  ...line(14, 'Bore of the discharge pipe', 1.38, 'in', 'ASME B36.10M, 1 1/4 in Sch 40'),
  ...line(15, 'Friction factor of Moody', 0.0225, '-', 'ASHRAE 15, appendix H'),
  ...line(16, 'Longest discharge line', '=0.2146*C14^5*(C13^2-C11^2)/(C15*C8^2)-C14*LN(C13/C11)/(6*C15)', 'ft', 'ASHRAE 15, appendix H'),
  ...line(17, 'Length of the line', 60, 'ft', 'Isometric 14-A'),
  ...check(18, 'The line is short enough', '=C17<=C16'),
}))
