/** Where a value comes from. */
export type Kind = 'printed in a published document' | 'computed with an independent library' | 'derived in closed form' | 'from memory'

export type Tolerance = { readonly relative: number } | { readonly absolute: number } | 'same text'

export interface CheckValue {
  /** The function it checks; others may stand in the formula too. */
  readonly function: string
  /** As a user types it. */
  readonly formula: string
  readonly value: number | string
  readonly tolerance: Tolerance
  readonly source: string
  readonly kind: Kind
}

interface Origin {
  readonly kind: Kind
  readonly source: string
}

const printed = (source: string): Origin => ({ kind: 'printed in a published document', source })
const library = (source: string): Origin => ({ kind: 'computed with an independent library', source })
const derived = (source: string): Origin => ({ kind: 'derived in closed form', source })
const memory = (source: string): Origin => ({ kind: 'from memory', source })

const SPS_343 = printed('Wisconsin SPS 343, appendix, ammonia at -28 °F')
const SP_811 = printed('NIST Special Publication 811, appendix B')
const TEXTBOOK = printed('Textbook table after Haar and Gallagher, J. Phys. Chem. Ref. Data 7, 635 (1978); heat content from liquid at -40 °C')
const FENGHOUR = printed('Fenghour et al., J. Phys. Chem. Ref. Data 24, 1649 (1995), table: 300 K at the density of saturation')
const JEKEL = printed('Jekel, IRC Research and Technology Forum 2005: steel pipe of schedule 40')
const GAO = library('CoolProp 8.0.0, equation of state of Gao et al. 2023')
const TILLNER_ROTH = library('CoolProp 8.0.0, equation of state of Tillner-Roth et al. 1993')
const TRANSPORT = library('CoolProp 8.0.0, viscosity of Fenghour 1995, surface tension of Mulero 2012')
const STANDARD_ATMOSPHERE = library('a separate computation of the U.S. Standard Atmosphere, the same as ISO 2533 there')
const FLUIDS = library('fluids (C. Bell)')
const FLUIDS_TANK = library('fluids (C. Bell), class TANK')
const FLUIDS_WITH_COOLPROP = library('fluids (C. Bell) with properties of CoolProp 8.0.0')
const NBS = memory('NBS Circular 142 (1923)')

/** What good sources of ammonia data differ by (common practice). */
const PRESSURE = { relative: 0.003 }
const LIQUID = { relative: 0.002 }
const VAPOR = { relative: 0.005 }
const HEAT = { relative: 0.003 }
const FLOW = { relative: 0.004 }
const HEAD = { relative: 0.015 }
const SATURATION_F = { absolute: 0.18 } // 0.1 K

type Row = readonly [formula: string, value: number | string]

/** Rows of one function that share origin and tolerance. Where the formula is a call of that function alone, only its arguments are written. */
const rows = (name: string, { kind, source }: Origin, tolerance: Tolerance, ...given: readonly Row[]): readonly CheckValue[] =>
  given.map(([formula, value]) => ({ function: name, formula: formula.startsWith('=') ? formula : `=${name}(${formula})`, value, tolerance, source, kind }))

const siteAndUnits: readonly CheckValue[] = [
  ...rows('UNIT.CONVERT', SP_811, { relative: 1e-5 },
    ['"1 psi","Pa"', 6894.757], ['"1 inHg","Pa"', 3386.389], ['"1 TR","W"', 3516.853], ['"1 Btu/lb","J/kg"', 2326], ['"1 lb/ft3","kg/m3"', 16.018463],
    ['"1 lb/min","kg/s"', 7.559873e-3], ['"1 cfm","m3/s"', 4.719474e-4], ['"1 gpm","m3/s"', 6.30902e-5]),
  ...rows('UNIT.CONVERT', printed('ASHRAE, table of conversion factors'), { relative: 1e-5 }, ['"1 Btu/h","W"', 0.2930711], ['"1 atm","kPa"', 101.325]),
  ...rows('UNIT.CONVERT', derived('factors of NIST SP 811'), { relative: 1e-5 },
    ['"50 TR","kW"', 175.8426], ['"100 fpm","m/s"', 0.508], ['"10 Δ°F","ΔK"', 5.5555556], ['"1 Cv","Kv"', 0.864978], ['"1 lb/TR","kg/kW"', 0.128978]),
  ...rows('UNIT.CONVERT', derived('factors of NIST SP 811, to the printed digits'), { absolute: 0.0005 }, ['"12 inHg vac","psia"', 8.802]),
  ...rows('SITE.PRESSURE', STANDARD_ATMOSPHERE, { relative: 5e-4 },
    ['"1000 ft","Pa"', 97716.7], ['"3000 ft","Pa"', 90812], ['"5280 ft","psia"', 12.1], ['"10000 ft","Pa"', 69688]),
]

const saturation: readonly CheckValue[] = [
  ...rows('SAT.PRESSURE', TEXTBOOK, PRESSURE, ['"-40 °C","kPa"', 71.7], ['"-20 °C","kPa"', 190.2], ['"0 °C","kPa"', 429.6], ['"40 °C","kPa"', 1554.9]),
  ...rows('SAT.PRESSURE', GAO, PRESSURE, ['"-60 °F","psia"', 5.535], ['"5 °F","psia"', 34.245], ['"95 °F","psia"', 195.8]),
  ...rows('SAT.PRESSURE', TILLNER_ROTH, PRESSURE, ['"-60 °F","psia"', 5.544], ['"5 °F","psia"', 34.253], ['"95 °F","psia"', 195.91]),
  ...rows('SAT.PRESSURE', GAO, { absolute: 0.06 },
    ['"0 °F","psig",SITE.PRESSURE("5280 ft","Pa")&" Pa"', 18.29], ['"28 °F","psig",SITE.PRESSURE("5000 ft","Pa")&" Pa"', 45.02]),
  ...rows('SAT.PRESSURE', NBS, PRESSURE, ['"5 °F","psia"', 34.27], ['"86 °F","psia"', 169.2]),
  ...rows('SAT.TEMPERATURE', printed('Wisconsin SPS 343, appendix: boiling point of ammonia'), SATURATION_F, ['"101.325 kPa","°F"', -28]),
  ...rows('SAT.TEMPERATURE', TEXTBOOK, { absolute: 0.1 }, ['"190.2 kPa","°C"', -20], ['"1167.0 kPa","°C"', 30]),
  ...rows('SAT.TEMPERATURE', GAO, { absolute: 0.1 },
    ['"101.325 kPa","K"', 239.834], ['"20 psig","°F"', 5.56], ['"20 psig","°F",SITE.PRESSURE("5280 ft","Pa")&" Pa"', 2.28], ['"5 inHg vac","°F"', -34.41]),
  ...rows('SAT.SLOPE', GAO, { relative: 0.005 }, ['"-40 °F","psi/Δ°F"', 0.3093], ['"0 °F","psi/Δ°F"', 0.7349], ['"40 °F","psi/Δ°F"', 1.4688]),
  ...rows('LIQUID.DENSITY', SPS_343, LIQUID, ['"-28 °F","lb/ft3"', 42.57], ['=LIQUID.DENSITY("-28 °F","lb/ft3")*UNIT.CONVERT("1 gal","ft3")', 5.69]),
  ...rows('LIQUID.DENSITY', GAO, LIQUID, ['"-40 °C","kg/m3"', 689.78], ['"86 °F","lb/ft3"', 37.167]),
  ...rows('LIQUID.DENSITY', TILLNER_ROTH, LIQUID, ['"-40 °C","kg/m3"', 690.15], ['"86 °F","lb/ft3"', 37.155]),
  ...rows('VAPOR.DENSITY', SPS_343, VAPOR, ['"-28 °F","lb/ft3"', 0.05555]),
  ...rows('VAPOR.DENSITY', GAO, VAPOR, ['"-40 °C","kg/m3"', 0.6436], ['"20 °F","ft3/lb"', 5.9068]),
  ...rows('VAPOR.DENSITY', TILLNER_ROTH, VAPOR, ['"-40 °C","kg/m3"', 0.6438], ['"20 °F","ft3/lb"', 5.9067]),
  ...rows('VAPOR.DENSITY', NBS, VAPOR, ['"5 °F","ft3/lb"', 8.15]),
  // From 10 °C up. Colder, that table's liquid has taken up 0.4 to 0.8 % less heat than by Gao et al., 0.3 to 0.4 % less than by Tillner-Roth et al.:
  // the older equation of state differs. ammonia-trade-tables.test.ts holds those rows.
  ...rows('LIQUID.ENTHALPY', TEXTBOOK, HEAT, ...([[10, 226.97], [20, 274.3], [30, 322.42], [40, 371.43]] as const)
    .map(([celsius, rise]) => [`=LIQUID.ENTHALPY("${celsius} °C","kJ/kg")-LIQUID.ENTHALPY("-40 °C","kJ/kg")`, rise] as const)),
  ...rows('LIQUID.ENTHALPY', GAO, { absolute: 0.01 }, ['"-40 °C","kJ/kg"', 18.94], ['"0 °C","kJ/kg"', 200], ['"40 °C","kJ/kg"', 390.45]),
  ...rows('LIQUID.ENTHALPY', TILLNER_ROTH, HEAT,
    ['=LIQUID.ENTHALPY("0 °C","kJ/kg")-LIQUID.ENTHALPY("-40 °C","kJ/kg")', 180.83], ['=LIQUID.ENTHALPY("40 °C","kJ/kg")-LIQUID.ENTHALPY("0 °C","kJ/kg")', 190.64]),
  ...rows('VAPOR.ENTHALPY', TEXTBOOK, HEAT, ...([[-20, 1418], [0, 1442.2], [40, 1470.2]] as const)
    .map(([celsius, rise]) => [`=VAPOR.ENTHALPY("${celsius} °C","kJ/kg")-LIQUID.ENTHALPY("-40 °C","kJ/kg")`, rise] as const)),
  ...rows('VAPOR.ENTHALPY', GAO, HEAT, ['"-40 °C","kJ/kg"', 1408.14], ['"0 °C","kJ/kg"', 1461.77]),
  ...rows('VAPOR.ENTHALPY', TILLNER_ROTH, HEAT, ['"-40 °C","kJ/kg"', 1407.76], ['"0 °C","kJ/kg"', 1462.24]),
  ...rows('LATENT.HEAT', SPS_343, HEAT, ['"-28 °F","Btu/lb"', 589.3]),
  ...rows('LATENT.HEAT', TEXTBOOK, HEAT, ['"-40 °C","kJ/kg"', 1388.8], ['"0 °C","kJ/kg"', 1261.8], ['"40 °C","kJ/kg"', 1098.8]),
  ...rows('LATENT.HEAT', GAO, HEAT, ['"-40 °C","kJ/kg"', 1389.2], ['"40 °C","kJ/kg"', 1099.7]),
  ...rows('LIQUID.VISCOSITY', FENGHOUR, { relative: 0.002 }, ['"300 K","µPa·s"', 129.33]),
  ...rows('LIQUID.VISCOSITY', TRANSPORT, { relative: 0.001 }, ['"-40 °C","Pa·s"', 2.802e-4], ['"-20 °C","Pa·s"', 2.141e-4], ['"30 °C","Pa·s"', 1.256e-4]),
  ...rows('VAPOR.VISCOSITY', FENGHOUR, { relative: 0.002 }, ['"300 K","µPa·s"', 9.89]),
  ...rows('VAPOR.VISCOSITY', TRANSPORT, { relative: 0.001 }, ['"-40 °C","Pa·s"', 7.859e-6], ['"-20 °C","Pa·s"', 8.449e-6], ['"30 °C","Pa·s"', 9.995e-6]),
  ...rows('SURFACE.TENSION', TRANSPORT, { relative: 0.001 }, ['"-40 °C","N/m"', 0.03567], ['"0 °C","N/m"', 0.02629], ['"30 °C","N/m"', 0.01935]),
  ...rows('SURFACE.TENSION', derived('the printed equation of Mulero et al., J. Phys. Chem. Ref. Data 41, 043105 (2012)'), { relative: 1e-9 },
    ['"304.05 K","N/m"', 0.1028 * 0.25 ** 1.211 - 0.09453 * 0.25 ** 5.585]),
]

const loadAndFlow: readonly CheckValue[] = [
  ...rows('FLASH.FRACTION', GAO, FLOW, ['"86 °F","5 °F"', 0.1602], ['"95 °F","20 °F"', 0.153], ['"0 °F","-40 °F"', 0.0718]),
  ...rows('FEED.FLOW', GAO, FLOW, ['"1 TR","5 °F","86 °F","lb/min"', 0.42197], ['"1 TR","-40 °F","86 °F","lb/min"', 0.4362], ['"50 TR","20 °F","95 °F","kg/s"', 0.161563]),
  ...rows('FEED.FLOW', NBS, FLOW, ['"1 TR","5 °F","86 °F","lb/min"', 0.4216]),
  ...rows('SUCTION.FLOW', GAO, FLOW, ['"1 TR","5 °F","86 °F","cfm"', 3.438], ['"1 TR","-40 °F","86 °F","cfm"', 10.856], ['"50 TR","20 °F","95 °F","m3/s"', 0.059577]),
  ...rows('SUCTION.FLOW', NBS, FLOW, ['"1 TR","5 °F","86 °F","cfm"', 3.436]),
  ...rows('BOILING.FLOW', GAO, FLOW, ['"1 TR","-40 °F","lb/min"', 0.3349], ['"1 TR","0 °F","lb/min"', 0.352], ['"1 TR","40 °F","lb/min"', 0.3734]),
]

const separation: readonly CheckValue[] = [
  // Computed at 690 and 0.644 kg/m3 and 7.86 µPa s: ammonia of -40 °F to three digits.
  ...rows('DROPLET.VELOCITY', FLUIDS, { relative: 0.002 },
    ['"150 µm","-40 °F","m/s"', 0.638602], ['"150 µm","-40 °F","m/s","Clift"', 0.660547], ['"150 µm","-40 °F","m/s","Cheng"', 0.650431],
    ['"150 µm","-40 °F","m/s","Stokes"', 1.075107], ['"400 µm","-40 °F","m/s"', 2.043651]),
  ...rows('DROPLET.VELOCITY', FLUIDS_WITH_COOLPROP, { relative: 0.002 }, ['"200 µm","20 °F","m/s"', 0.5685], ['"200 µm","-40 °F","m/s"', 0.9319], ['"150 µm","0 °F","m/s"', 0.4707]),
  ...rows('DROPLET.DIAMETER', FLUIDS_WITH_COOLPROP, { relative: 0.002 }, ...([['0.18', -40, 353.402], ['0.18', 20, 290.471], ['0.24', 0, 410.319], ['0.12', 40, 188.062]] as const)
    .map(([factor, fahrenheit, micrometres]) =>
      [`=DROPLET.DIAMETER(SEPARATION.VELOCITY("${factor} ft/s","${fahrenheit} °F","m/s")&" m/s","${fahrenheit} °F","µm")`, micrometres] as const)),
  ...rows('SEPARATION.VELOCITY', FLUIDS_WITH_COOLPROP, { relative: 0.001 },
    ['"0.0549 m/s","20 °F","m/s"', 0.84661], ['"0.0549 m/s","-40 °F","m/s"', 1.79646], ['"0.04 m/s","0 °F","m/s"', 0.77537], ['"0.06 m/s","28 °F","m/s"', 0.84856]),
  ...rows('SEPARATION.FACTOR', FLUIDS_WITH_COOLPROP, { relative: 0.001 }, ['"0.84661 m/s","20 °F","m/s"', 0.0549], ['"0.77537 m/s","0 °F","m/s"', 0.04]),
  ...rows('SEPARATION.FACTOR', memory('ASHRAE Handbook, practice velocities for ammonia: 36 in of height, K 0.0626 to 0.0674 m/s'), { absolute: 0.0024 }, ['"195 ft/min","20 °F","m/s"', 0.065]),
  ...rows('DEMISTER.FACTOR', printed('Svrcek and Monnery, Chem. Eng. Prog., October 1993: York fit'), { relative: 1e-5 }, ['"25 psia","ft/s"', 0.35]),
  ...rows('DEMISTER.FACTOR', FLUIDS, { relative: 1e-9 }, ['"975 psia","m/s"', 0.08281536035331669], ['"975000 Pa","m/s"', 0.09635076944244816]),
  ...rows('DRUM.DIAMETER', FLUIDS_WITH_COOLPROP, { absolute: 0.005 },
    ['"0.059577 m3/s","0.84661 m/s","in"', 11.78], ['"0.153700 m3/s","1.79646 m/s","in"', 12.99], ['"0.186237 m3/s","0.77537 m/s","in"', 21.77]),
  ...rows('LIQUID.AREA', FLUIDS_TANK, { relative: 5e-4 },
    ['=LIQUID.AREA("0.9144 m","0.09144 m","m2")*3.048', 0.104171], ['=LIQUID.AREA("0.9144 m","0.36576 m","m2")*3.048', 0.747658], ['=LIQUID.AREA("1.2 m","0.96 m","m2")*4', 3.879788]),
  ...rows('VAPOR.AREA', FLUIDS_WITH_COOLPROP, { relative: 0.01 }, ['"0.9144 m","0.4572 m","m2"', 0.32835], ['"0.762 m","0.3048 m","m2"', 0.28569], ['"1.0668 m","0.37338 m","m2"', 0.61503]),
  ...rows('DRUM.TRAVEL', FLUIDS_WITH_COOLPROP, { relative: 0.01 },
    ['"0.9144 m","0.4572 m","0.05958 m3/s","0.5685 m/s","m"', 0.1459], ['"0.762 m","0.3048 m","0.12808 m3/s","0.9319 m/s","m"', 0.22],
    ['"1.0668 m","0.37338 m","0.18624 m3/s","0.4707 m/s","m"', 0.4461]),
]

const LOOP = '70,"kW";-10,"°C";2.5,"m";52.5,"mm";4,"m";2.5,"-";1.2,"m";12,"-";21,"mm";18,"m";102.3,"mm";3,"m";2,"-";1.3,"m";45.72,"µm"'
const loop = (given: string, changed: string): string => {
  if (!LOOP.includes(given)) throw new Error(`${given} is not in the loop`)
  return `{${LOOP.replace(given, changed)}}`
}
// Properties fixed at 652.0 and 2.391 kg/m3, 0.190 and 0.00875 mPa s, 1296.2 kJ/kg: ammonia of -10 °C to three digits.
const BALANCE = library('a separate computation of the same balance on routines of fluids (C. Bell), legs by Colebrook')

const headAndCirculation: readonly CheckValue[] = [
  ...rows('HEAD.PRESSURE', GAO, LIQUID, ['"1 ft","-40 °F","psi"', 0.299], ['"1 ft","0 °F","psi"', 0.287], ['"1 ft","40 °F","psi"', 0.2742]),
  ...rows('HEAD.TEMPERATURE', GAO, { absolute: 0.015 * 8.699 }, ['"-40 °F","10 ft","°F"', -31.301]),
  ...rows('HEAD.TEMPERATURE', GAO, { absolute: 0.015 * 2.595 }, ['"20 °F","10 ft","°F"', 22.595]),
  ...rows('HEAD.RISE', GAO, HEAD,
    ['"-60 °F","10 ft","Δ°F"', 13.694], ['"-40 °F","20 ft","Δ°F"', 15.94], ['"0 °F","5 ft","Δ°F"', 1.917], ['"28 °F","1 ft","Δ°F"', 0.229], ['"-40 °C","3 m","ΔK"', 4.764]),
  ...rows('HEAD.DRUM', GAO, { absolute: 0.015 * 8.699 }, ['"-31.301 °F","10 ft","°F"', -40]),
  ...rows('HEAD.DRUM', GAO, { absolute: 0.015 * 2.595 }, ['"22.595 °F","10 ft","°F"', 20]),
  ...rows('CIRCULATION.NUMBER', BALANCE, { relative: 0.02 },
    [`{${LOOP}}`, 12.307], [`{${LOOP}},"homogeneous"`, 15.761], [loop('12,"-"', '6,"-"'), 4.232], [`${loop('12,"-"', '6,"-"')},"homogeneous"`, 4.742],
    [loop('70,"kW"', '120,"kW"'), 5.323], [loop('52.5,"mm"', '77.9,"mm"'), 12.521], [loop('102.3,"mm"', '77.9,"mm"'), 11.679]),
  ...rows('CIRCULATION.PART', BALANCE, { relative: 0.02 },
    [`{${LOOP}},"leg velocity","m/s","homogeneous"`, 0.6031], [`{${LOOP}},"coil friction","Pa","homogeneous"`, 12195], [`{${LOOP}},"return friction","Pa","homogeneous"`, 442]),
  ...rows('CIRCULATION.PART', derived('hydrostatics, 652.0 kg/m3 and 2.5 m'), { relative: 0.002 }, [`{${LOOP}},"driving head","Pa"`, 652 * 9.80665 * 2.5]),
  // At the number of the separate computation all losses together are the driving head: hydrostatics again.
  ...rows('CIRCULATION.LOSS', BALANCE, { relative: 0.02 }, [`{${LOOP}},12.307,"Pa"`, 652 * 9.80665 * 2.5], [`{${LOOP}},15.761,"Pa","homogeneous"`, 652 * 9.80665 * 2.5]),
]

const SHAPE_LYING = '"0.9144 m","3.048 m"'
const SHAPE_STANDING = '"0.9144 m","2.4384 m"'
// Zivi, Chisholm, Smith and flow without slip depend on the ratio of the densities alone: 320 at -13.905549 °C, 240.74 at -6.871518 °C (Gao et al. 2023).
const RATIO_320 = '"-13.905549 °C"'
const RATIO_241 = '"-6.871518 °C"'

const holdupAndCharge: readonly CheckValue[] = [
  ...rows('VESSEL.VOLUME', FLUIDS_TANK, { relative: 5e-4 },
    [`${SHAPE_LYING},"flat","horizontal","m3"`, 2.0016], [`${SHAPE_LYING},"2:1","horizontal","m3"`, 2.20176], [`${SHAPE_LYING},"hemi","horizontal","m3"`, 2.40192]),
  ...rows('VESSEL.VOLUME', FLUIDS_TANK, { relative: 1e-3 },
    [`${SHAPE_LYING},"dished 6%","horizontal","m3"`, 2.125456], ['"1 m","0 m","dished 6%","vertical","m3"', 2 * 0.080999], ['"1 m","0 m","dished 10%","vertical","m3"', 2 * 0.098966]),
  ...rows('VESSEL.VOLUME', derived('half spheroid, π D³/24 a head'), { relative: 5e-4 }, ['"1 m","0 m","2:1","horizontal","m3"', 2 * 0.1309]),
  ...rows('VESSEL.LIQUID', FLUIDS_TANK, { relative: 5e-4 },
    [`${SHAPE_LYING},"2:1","horizontal","25 %","m3"`, 0.42259], [`${SHAPE_LYING},"hemi","horizontal","80 %","m3"`, 2.075302], [`${SHAPE_STANDING},"2:1","vertical","500 mm","m3"`, 0.278306]),
  ...rows('VESSEL.LIQUID', FLUIDS_TANK, { relative: 1e-3 }, [`${SHAPE_LYING},"dished 6%","horizontal","40 %","m3"`, 0.790693], [`${SHAPE_STANDING},"dished 6%","vertical","100 mm","m3"`, 0.02768]),
  ...rows('VESSEL.LEVEL', FLUIDS_TANK, { relative: 5e-4 },
    [`${SHAPE_LYING},"2:1","horizontal","1.895959 m3","m"`, 0.73152], [`${SHAPE_LYING},"flat","horizontal","0.104171 m3","m"`, 0.09144], [`${SHAPE_STANDING},"hemi","vertical","1.213306 m3","m"`, 2]),
  ...rows('VESSEL.CHARGE', FLUIDS_WITH_COOLPROP, { relative: 0.003 }, ['"36 in","10 ft","2:1","horizontal","40 %","20 °F","lb"', 1176.3]),
  ...rows('VESSEL.SURFACE', FLUIDS_TANK, { relative: 0.005 }, ['"1 m","3 m","2:1","m2"', 11.593], ['"0.9 m","2.4 m","2:1","m2"', 8.542], ['"1.2 m","4 m","2:1","m2"', 18.202]),
  ...rows('VESSEL.SURFACE', FLUIDS_TANK, { relative: 1e-3 }, ['"1 m","0 m","dished 6%","m2"', 2 * 0.9306]),
  ...rows('VOID.FRACTION', printed('documentation of fluids (C. Bell), examples at quality 0.4, 800 and 2.5 kg/m3'), { absolute: 1e-4 },
    [`0.4,${RATIO_320},"Zivi"`, 0.968934], [`0.4,${RATIO_320},"Chisholm"`, 0.949526], [`0.4,${RATIO_320},"Smith"`, 0.959981]),
  ...rows('VOID.FRACTION', FLUIDS, { absolute: 1e-4 },
    [`0.05,${RATIO_241},"Zivi"`, 0.670705], [`0.25,${RATIO_241},"homogeneous"`, 0.987692], [`0.25,${RATIO_241},"Chisholm"`, 0.911348], [`0.5,${RATIO_241},"Smith"`, 0.966771]),
  ...rows('VOID.FRACTION', FLUIDS_WITH_COOLPROP, { absolute: 1e-4 },
    ['0.25,"20 °F","Rouhani","25 kg/(m2·s)"', 0.820059], ['0.25,"20 °F","Steiner","25 kg/(m2·s)"', 0.863058], ['0.25,"20 °F","Baroczy"', 0.913124], ['0.25,"20 °F","Lockhart"', 0.908854]),
  ...rows('HOLDUP.MASS', GAO, { relative: 0.003 }, ['"20.063 ft3",0,"0 °F","lb"', 2.2], ['"2.330 ft3",1,"86 °F","lb"', 86.6]),
  ...rows('PIPE.VOLUME', derived('bores of schedule 40'), { absolute: 0.5e-5 },
    ['"2.067 in","1 ft","ft3"', 0.0233], ['"3.068 in","1 ft","ft3"', 0.05134], ['"4.026 in","1 ft","ft3"', 0.0884], ['"6.065 in","1 ft","ft3"', 0.20063]),
  ...rows('PIPE.VOLUME', GAO, { relative: 0.003 },
    ['=PIPE.VOLUME("6.065 in","100 ft","ft3")*VAPOR.DENSITY("0 °F","lb/ft3")', 2.2], ['=PIPE.VOLUME("2.067 in","100 ft","ft3")*LIQUID.DENSITY("86 °F","lb/ft3")', 86.6]),
  ...rows('PIPE.BORE', JEKEL, { absolute: 1e-9 }, ['"3/4","40","in"', 0.824], ['"1-1/4","40","in"', 1.38], ['"2-1/2","40","in"', 2.469], ['"4","40","in"', 4.026], ['"6","40","in"', 6.065]),
  ...rows('PIPE.BORE', memory('ASME B36.10M'), { absolute: 1e-9 }, ['"1-1/4","XS","in"', 1.278], ['"1","XS","in"', 0.957]),
  // The next of the bores that are printed there.
  ...rows('PIPE.NEXT', JEKEL, 'same text', ['"2.2 in","40"', '2-1/2'], ['"1.610 in","40"', '1-1/2'], ['"4.1 in","40"', '5']),
]

const linesAndValves: readonly CheckValue[] = [
  ...rows('PIPE.VELOCITY', FLUIDS_WITH_COOLPROP, { relative: 0.02 },
    ['=PIPE.VELOCITY(SUCTION.FLOW("50 TR","20 °F","95 °F","m3/s")&" m3/s","4.026 in","m/s")', 7.254],
    ['=PIPE.VELOCITY(SUCTION.FLOW("60 TR","-40 °F","86 °F","cfm")&" cfm","6.065 in","ft/min")', 3247]),
  ...rows('FRICTION.FACTOR', { ...JEKEL, source: `${JEKEL.source}, fully rough` }, { absolute: 0.5e-4 },
    ...([[1.049, 0.0225], [2.067, 0.019], [4.026, 0.0163], [6.065, 0.0149]] as const).map(([inches, factor]) => [`1E8,0.00015*12/${inches}`, factor] as const)),
  ...rows('FRICTION.FACTOR', FLUIDS, { relative: 1e-5 }, ['10000,0.001', 0.0326902], ['100000,0.00045', 0.02020098], ['1000000,0.00001', 0.01185816], ['1000,0', 0.064]),
  ...rows('PIPE.LOSS', FLUIDS_WITH_COOLPROP, { relative: 0.02 },
    ['"0.5 kg/s","1.278 in","100 ft","95 °F","liquid","Pa"', 6628], ['"1 kg/s","2.067 in","30 ft","-40 °F","liquid","Pa"', 594.4],
    ['=PIPE.LOSS(FEED.FLOW("50 TR","20 °F","95 °F","kg/s")&" kg/s","4.026 in","100 ft","20 °F","vapor","Pa")', 389.67],
    ['=PIPE.LOSS(FEED.FLOW("60 TR","-40 °F","86 °F","kg/s")&" kg/s","6.065 in","100 ft","-40 °F","vapor","Pa")', 305.15]),
  ...rows('WETRETURN.LOSS', FLUIDS_WITH_COOLPROP, { relative: 0.03 }, ...([
    [50, '20 °F', 4, '4.026 in', 64.3, 51.38], [50, '-40 °F', 4, '6.065 in', 28.34, 22.33], [25, '28 °F', 3, '3.068 in', 43.69, 38.65],
  ] as const).flatMap(([tons, drum, times, bore, msh, friedel]) => ([['MSH', msh], ['Friedel', friedel]] as const).map(([model, loss]) =>
    [`=WETRETURN.LOSS(${times}*BOILING.FLOW("${tons} TR","${drum}","kg/s")&" kg/s",1/${times},"${bore}","1 m","${drum}","Pa","${model}")`, loss] as const))),
  ...rows('LINE.PENALTY', GAO, { relative: 0.02 }, ['"-40 °F","2 psi","Δ°F"', 7.04], ['"20 °F","2 psi","Δ°F"', 1.92], ['"20 °F","389.67 Pa","Δ°F"', 0.0534], ['"-40 °F","305.15 Pa","Δ°F"', 0.1433]),
  ...rows('VALVE.LIQUID', { ...GAO, source: `IEC 60534-2-1 with ${GAO.source}` }, { relative: 0.003 },
    ['"0.16 kg/s","169.19 psia","48.18 psia","86 °F",0.9,"Kv"', 0.6746], ['"0.16 kg/s","169.19 psia","48.18 psia","76 °F",0.9,"Kv"', 0.4745],
    ['"0.5 kg/s","50 psia","48.18 psia","20 °F",0.9,"Cv"', 7.303], ['"0.5 kg/s","195.8 psia","193 psia","95 °F",0.85,"Kv"', 5.347], ['"1 kg/s","40 psia","12 psia","-40 °F",0.8,"Kv"', 3.753]),
  ...rows('VALVE.CHOKE', { ...GAO, source: `IEC 60534-2-1 with ${GAO.source}` }, { relative: 0.003 },
    ['"169.19 psia","86 °F",0.9,"kPa"', 122.56], ['"169.19 psia","76 °F",0.9,"kPa"', 244.3], ['"40 psia","-40 °F",0.8,"kPa"', 133.5]),
  ...rows('VALVE.VAPOR', derived('IEC 60534-2-1 by hand, properties of Gao et al. 2023'), { relative: 0.003 },
    ['"0.16 kg/s","20 °F","2 psi",0.7,"Kv"', 30.46], ['"0.1 kg/s","0 °F","1 psi",0.7,"Cv"', 38.49], ['"0.1 kg/s","-40 °F","0.5 psi",0.7,"Cv"', 90.66]),
  ...rows('VALVE.VAPOR', FLUIDS_WITH_COOLPROP, { relative: 0.003 },
    ['"0.16 kg/s","20 °F","2 psi",0.7,"Kv"', 30.4107], ['"0.1 kg/s","0 °F","1 psi",0.7,"Kv"', 33.2398], ['"0.1 kg/s","-40 °F","0.5 psi",0.7,"Kv"', 78.3014]),
]

const relief: readonly CheckValue[] = [
  ...rows('RELIEF.CAPACITY', printed('worked example in a valve maker’s bulletin after ASHRAE 15'), { relative: 0.001 }, ['"6 ft","16 ft","lb/min"', 48]),
  ...rows('RELIEF.CAPACITY', derived('f D L with f 0.5'), { relative: 0.001 }, ['"3 ft","10 ft","lb/min"', 15], ['"4 ft","12 ft","lb/min"', 24], ['"3 ft","10 ft","kg/s"', 0.1134]),
  ...rows('RELIEF.CAPACITY', memory('factor 2.5 for combustibles'), { relative: 0.001 }, ['"3 ft","10 ft","lb/min","within 20 ft"', 37.5]),
  ...rows('RELIEF.SCFM', library('CoolProp 8.0.0, density of air at 60 °F and 1 atm'), { relative: 0.001 }, ['"48 lb/min"', 628.5994], ['"15 lb/min"', 196.4373]),
  ...rows('RELIEF.SCFM', derived('air of 60 °F and 14.696 psia as a perfect gas'), { relative: 0.001 }, ['"48 lb/min"', 628.8], ['"15 lb/min"', 196.5], ['"24 lb/min"', 314.4]),
  ...rows('RELIEF.AMMONIA', { ...GAO, source: `ASME VIII, air and ammonia through one valve, temperature by ${GAO.source}` }, { relative: 0.003 },
    ['"1 lb/min","150 psig","lb/min"', 0.72901], ['"1 lb/min","250 psig","lb/min"', 0.70921], ['"1 lb/min","300 psig","lb/min"', 0.70183]),
  ...rows('RELIEF.PIPE', { ...FLUIDS_WITH_COOLPROP, source: `isothermal flow of air at 60 °F, ${FLUIDS_WITH_COOLPROP.source}` }, { relative: 0.005 },
    ['"1.610 in","24 lb/min","250 psig","ft"', 485.218], ['"2.067 in","24 lb/min","150 psig","ft"', 848.939], ['"1.049 in","24 lb/min","250 psig","ft"', 43.0356], ['"3.068 in","100 lb/min","250 psig","ft"', 809.4635]),
  ...rows('RELIEF.PIPE', derived('rule of ASHRAE 15-2004, Appendix H'), { relative: 0.005 },
    ['"1.610 in","24 lb/min","250 psig","ft"', 484.1], ['"2.067 in","48 lb/min","250 psig","ft"', 441.2], ['"1.610 in","30 lb/min","300 psig","ft"', 409.3], ['"40.894 mm","0.181437 kg/s","250 psig","m"', 147.56]),
  ...rows('RELIEF.FIRE', { ...GAO, source: `rule of EN 13136 (from memory), latent heat by ${GAO.source}` }, { relative: 0.005 },
    ['"11.593 m2","21 bar(g)","kg/h"', 410.85], ['"8.542 m2","17 bar(g)","kg/h"', 290.95], ['"18.202 m2","25 bar(g)","kg/h"', 670.38]),
]

/** Check values for every function of the catalogue, in its order. Values published for fixed properties stand at the temperature that has them. */
export const checkValues: readonly CheckValue[] = [
  ...siteAndUnits, ...saturation, ...loadAndFlow, ...separation, ...headAndCirculation, ...holdupAndCharge, ...linesAndValves, ...relief,
]
