import { describe, expect, it } from 'vitest'
import { kindsFound } from './unit-fixture.ts'

/*
 * Plain arithmetic as engineers in the trade write it, in order: it must give no finding about units. The equations are those of
 * textbooks and codes (named where it is one); their constants are from memory, and nothing is computed by them here.
 */
const SHEETS: Readonly<Record<string, readonly (readonly [formula: string, unit: string | undefined, ...inputs: string[]])[]>> = {
  'loads and flows': [
    ['=C1*12000', 'Btu/h', '85 TR'], ['=C1*3.517', 'kW', '85 TR'], ['=C1*200/(C2-C3)', 'lb/min', '85 TR', '612 Btu/lb', '130 Btu/lb'], ['=C1/(C2-C3)', 'kg/s', '300 kW', '1450 kJ/kg', '310 kJ/kg'], ['=C1*C2', 'cfm', '40 lb/min', '5.9 ft3/lb'],
    ['=C1/C2', 'cfm', '40 lb/min', '0.17 lb/ft3'], ['=C1*7.4805/C2', 'gpm', '40 lb/min', '40.4 lb/ft3'], ['=C1*C2*500', 'Btu/h', '120 gpm', '10 Δ°F'], ['=C1*C2/24', 'TR', '120 gpm', '10 Δ°F'], ['=1.08*C1*(C2-C3)', 'Btu/h', '9000 cfm', '40 °F', '30 °F'],
    ['=C1*1.2*1.005*C2', 'kW', '4 m3/s', '6 ΔK'], ['=C1*4.5*(C2-C3)', 'Btu/h', '9000 cfm', '30 Btu/lb', '26 Btu/lb'], ['=C1*C2*C3', 'Btu/h', '900 ft2', '0.05 Btu/(h·ft2·°F)', '60 Δ°F'], ['=C1*C2*C3/1000', 'kW', '90 m2', '0.3 W/(m2·K)', '35 ΔK'],
    ['=C1*0.24*C2', 'Btu/h', '5000 lb/h', '10 Δ°F'], ['=C1*144', 'Btu', '500 lb'], ['=C1*C2*(C3-C4)/C5/12000', 'TR', '5000 lb', '0.8 Btu/(lb·°F)', '90 °F', '35 °F', '20 h'],
  ],
  'vessels': [
    ['=C1*SQRT((C2-C3)/C3)', 'ft/s', '0.2 ft/s', '40 lb/ft3', '0.17 lb/ft3'], ['=60*C1*SQRT((C2-C3)/C3)', 'ft/min', '0.2 ft/s', '40 lb/ft3', '0.17 lb/ft3'], ['=SQRT(4*C1/(PI()*C2))*12', 'in', '500 cfm', '40 ft/min'], ['=(4*C1/PI()/C2)^0.5', 'ft', '500 cfm', '40 ft/min'],
    ['=PI()*(C1/12)^2/4*C2', 'ft3', '36 in', '10 ft'], ['=PI()/4*C1^2*C2+PI()*C1^3/12', 'ft3', '3 ft', '10 ft'], ['=0.7854*(C1/12)^2*C2*C3', 'lb', '36 in', '10 ft', '40 lb/ft3'], ['=C1*C2/60', 'ft3', '20 cfm', '90 s'], ['=C1/C2/60', 'min', '90 lb', '3 lb/s'], ['=C1-C2-C3', 'in', '36 in', '12 in', '4 in'],
    ['=C1/12-C2', 'ft', '36 in', '1 ft'], ['=C1*(C2*C3+(1-C2)*C4)', 'lb', '300 ft3', '0.4 -', '40 lb/ft3', '0.2 lb/ft3'], ['=C1*C2/100*C3', 'lb', '300 ft3', '80 %', '40 lb/ft3'], ['=(C1/12)^2*ACOS(1-C2/C1)', 'ft2', '18 in', '6 in'], ['=C1*C2/100', 'ft/min', '40 ft/min', '75 %'],
  ],
  'head and pressure': [
    ['=C1*C2/144', 'psi', '8 ft', '40 lb/ft3'], ['=C1+C2*C3/144', 'psia', '40 psia', '8 ft', '40 lb/ft3'], ['=C1*9.81*C2/1000', 'kPa', '640 kg/m3', '2.4 m'], ['=C1*C2*9.80665', 'Pa', '640 kg/m3', '2.4 m'], ['=C1*2.31/0.64', 'ft', '20 psi'], ['=C1*144/C2', 'ft', '20 psi', '40 lb/ft3'], ['=C1/C2', 'Δ°F', '2.2 psi', '1.1 psi/Δ°F'],
    ['=C1+C2/C3', '°F', '20 °F', '2.2 psi', '1.1 psi/Δ°F'], ['=C1-C2', 'psi', '48 psia', '30 psia'], ['=C1-C2', 'psig', '48 psia', '12.2 psia'], ['=C1+14.7', 'psia', '33.5 psig'], ['=(C1+14.7)/(C2+14.7)', '-', '180 psig', '30 psig'], ['=C1*C2^2/(2*9.81)', 'm', '1.5 -', '2 m/s'], ['=C1*C2/C3*C5*C4^2/2/32.2/144', 'psi', '0.02 -', '30 ft', '0.25 ft', '8 ft/s', '40 lb/ft3'],
  ],
  'lines and valves': [
    ['=C1*SQRT(C2/C3)', 'Cv', '12 gpm', '0.64 -', '20 psi'], ['=C1/27.3/SQRT(C2*C3)', 'Cv', '3000 kg/h', '100 kPa', '640 kg/m3'], ['=C1*1.156', 'Cv', '12 Kv'], ['=C1/1.156', 'Kv', '12 Cv'], ['=0.4085*C1/C2^2', 'ft/s', '12 gpm', '2 in'], ['=C1*C2*C3/C4', '-', '40 lb/ft3', '8 ft/s', '0.25 ft', '1.1e-4 lb/(ft·s)'],
    ['=C1*(C2/C3)^2', 'psi', '4 psi', '30 lb/min', '20 lb/min'], ['=C1*C2/100', 'psi', '0.6 psi/100 ft', '240 ft'], ['=183.3*C1/C2^2', 'ft/min', '120 cfm', '4 in'], ['=SQRT(0.4085*C1/C2)', 'in', '12 gpm', '6 ft/s'], ['=4*C1/PI()/C2^2', 'm/s', '0.02 m3/s', '0.1 m'], ['=C1/C2', '-', '12 Cv', '20 Cv'], ['=(C1/C2)^2', '-', '12 Cv', '20 Cv'],
  ],
  'relief and charge': [
    ['=0.5*C1*C2', 'lb/min', '3 ft', '10 ft'], ['=C3*(C1/12)*C2', 'lb/min', '36 in', '10 ft', '0.5 -'], ['=C1*C2*C3', 'kg/s', '0.041 -', '0.9 m', '3 m'], ['=C1*C2/C3', 'lb/min', '6.32 -', '3 in2', '2 -'], ['=C1*C2*C3', 'lb/min', '0.5', '3 ft', '10 ft'], ['=1.1*C1+14.7', 'psia', '250 psig'], ['=C1*0.9', 'psig', '250 psig'], ['=SUM(C1:C3)*1.05', 'lb', '300 lb', '400 lb', '20 lb'], ['=C1/C2', 'lb/TR', '9000 lb', '300 TR'], ['=C1*2.2046', 'lb', '900 kg'], ['=C1/2000', 'ton', '9000 lb'],
    ['=C1/C2*100', '%', '300 lb', '9000 lb'], ['=C1>=10000', undefined, '9000 lb'], ['=C1/10000', undefined, '9000 lb'], ['=C1*C2', 'lb', '3', '400 lb'], ['=C1*C2+C3*C4', 'lb', '3', '400 lb', '2', '90 lb'],
  ],
  'temperatures': [
    ['=C1-C2', 'Δ°F', '35 °F', '25 °F'], ['=(C1-32)/1.8', '°C', '35 °F'], ['=0.5*C1+0.5*C2', '°F', '35 °F', '25 °F'], ['=0.7*C1+0.3*C2', '°F', '35 °F', '25 °F'], ['=(C1*C3+C2*C4)/(C3+C4)', '°F', '35 °F', '25 °F', '3', '4'], ['=(C1*C3+C2*C4)/(C3+C4)', '°F', '35 °F', '25 °F', '3 lb/min', '4 lb/min'],
    ['=((C1-C3)-(C2-C3))/LN((C1-C3)/(C2-C3))', 'Δ°F', '40 °F', '30 °F', '20 °F'], ['=C1-5', '°F', '35 °F'], ['=MIN(C1,C2)-C3', '°F', '35 °F', '25 °F', '2 Δ°F'], ['=C1*(C2+459.67)/(C3+459.67)', 'cfm', '300 cfm', '20 °F', '70 °F'], ['=C1/1.8', 'ΔK', '18 Δ°F'], ['=C1*C2*C3-C1*C2*C4', 'Btu/h', '500 lb/h', '1.1 Btu/(lb·°F)', '40 °F', '30 °F'], ['=C1+C2*9/5', '°F', '35 °F', '10 ΔK'],
  ],
  'power and money': [
    ['=C1*C2/1714/C3', 'hp', '30 gpm', '40 psi', '0.6 -'], ['=C1*0.7457', 'kW', '30 hp'], ['=C1*0.746*C2*C3', '$/yr', '30 hp', '6000 h/yr', '0.11 $/kWh'], ['=C1*C2', 'kWh/yr', '30 kW', '6000 h/yr'], ['=C1*C2*C3/1000', 'k$', '30 kW', '6000 h', '0.11 $/kWh'], ['=C1/C2', 'hp/TR', '30 hp', '85 TR'], ['=C1/C2', '-', '300 kW', '80 kW'], ['=C1*C2+C3', '$', '3 $/lb', '900 lb', '400 $'],
    ['=C1*C2/1000', 'kW', '0.003 m3/s', '300000 Pa'], ['=C1*C2/C3', 'kW', '0.003 m3/s', '300 kPa', '0.6'],
  ],
}

describe('plain arithmetic of the trade', () => {
  it.each(Object.entries(SHEETS))('%s: nothing is found', (_, lines) => {
    for (const [formula, unit, ...inputs] of lines) expect.soft([formula, unit, ...inputs, ...kindsFound(formula, unit, inputs)]).toEqual([formula, unit, ...inputs])
  })
})
