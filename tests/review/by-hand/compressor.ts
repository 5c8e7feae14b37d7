import { bookOf, check, heading, line, page } from './page.ts'

/** Swept volume of a compressor in plain arithmetic, in SI units. Properties at −10 and 30 °C: Gao et al. 2023. */
export const compressorByHand = bookOf('Compressor by hand', page('Compressor', {
  ...heading(3, 'Compressor of the chill level'),
  ...line(4, 'Load', 210, 'kW', 'Zone list, revision B'),
  ...line(5, 'Enthalpy of the vapour leaving', 1450.3, 'kJ/kg', 'Ammonia table at −10 °C'),
  ...line(6, 'Enthalpy of the liquid fed', 341.6, 'kJ/kg', 'Ammonia table at 30 °C'),
  ...line(7, 'Mass flow', '=C4/(C5-C6)', 'kg/s'),
  ...line(8, 'Specific volume of the vapour', 0.4183, 'm3/kg', 'Ammonia table at −10 °C'),
  ...line(9, 'Volume flow', '=C7*C8*3600', 'm3/h'),
  ...line(10, 'Volumetric efficiency', 0.85, '-', 'Compressor maker at this ratio'),
  ...line(11, 'Swept volume wanted', '=C9/C10', 'm3/h'),
  ...line(12, 'Swept volume of the compressor', 400, 'm3/h', 'Compressor maker'),
  ...check(13, 'The compressor is large enough', '=C12>=C11'),
  ...line(14, 'Suction pressure', 290.6, 'kPa', 'Ammonia table at −10 °C'),
  ...line(15, 'Atmosphere of the site', 97.7, 'kPa', 'ISO 2533 at 305 m'),
  ...line(16, 'Suction at the gauge', '=C14-C15', 'kPa(g)'),
  ...line(17, 'Discharge pressure', 1166.5, 'kPa', 'Ammonia table at 30 °C'),
  ...line(18, 'Pressure ratio', '=C17/C14', '-'),
  ...line(19, 'Ratio allowed', 8, '-', 'Compressor maker'),
  ...check(20, 'Ratio is small enough', '=C18<=C19'),
}))
