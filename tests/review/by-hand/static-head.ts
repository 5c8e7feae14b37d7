import { bookOf, check, heading, line, page } from './page.ts'

/** Static head over a coil in plain arithmetic, in SI units, with a small saturation table to look up in. Properties: Gao et al. 2023. */
export const staticHeadByHand = bookOf('Static head by hand', page('Head', {
  ...heading(3, 'Static head over the blast coil'),
  ...line(4, 'Height of the liquid column', 2.4, 'm', 'Section C-C'),
  ...line(5, 'Density of the liquid', 665, 'kg/m3', 'Ammonia table at −20 °C'),
  ...line(6, 'Pressure of the column', '=C5*9.80665*C4/1000', 'kPa', 'ρ g H'),
  ...line(8, 'Drum temperature', -20, '°C', 'Zone list'),
  ...line(9, 'Drum pressure', '=INDEX(H6:H10,MATCH(C8,G6:G10,1))', 'kPa', 'Table beside'),
  ...line(10, 'Pressure at the foot of the coil', '=C9+C6', 'kPa'),
  ...line(11, 'Slope of the saturation curve', 8, 'kPa/ΔK', 'Ammonia table at −20 °C'),
  ...line(12, 'Static head penalty', '=C6/C11', 'ΔK'),
  ...line(13, 'Boiling temperature at the foot', '=C8+C12', '°C'),
  ...line(14, 'Room', -10, '°C', 'Zone list'),
  ...line(15, 'Difference left at the foot', '=C14-C13', 'ΔK'),
  ...line(16, 'Difference that the coil needs', 6, 'ΔK', 'Coil maker'),
  ...check(17, 'The coil has its difference', '=C15>=C16'),
  ...line(18, 'Difference left, for the client abroad', '=C15*9/5', 'Δ°F'),
  G4: ['Saturation', 'heading'], H4: ['Pressure', 'heading'], I4: ['Source', 'heading'], G5: ['°C', 'unit'], H5: ['kPa', 'unit'],
  G6: -60, H6: 21.9, G7: -50, H7: 40.8, G8: -40, H8: 71.6, G9: -30, H9: 119.4, G10: -20, H10: 190, I6: ['Gao et al. 2023', 'text'],
}))
