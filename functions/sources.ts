import type { Source } from './define.ts'

const confirmed = (cite: string): Source => ({ cite, confidence: 'confirmed' })

/** Sources that several functions rest on; those of one function stand in its definition. */
export const GAO_2023 = confirmed(
  'Gao, Wu, Bell, Harvey, Lemmon, J. Phys. Chem. Ref. Data 52, 013102 (2023), doi 10.1063/5.0128269: equation of state of ammonia',
)
export const FENGHOUR_1995 = confirmed('Fenghour et al., J. Phys. Chem. Ref. Data 24, 1649 (1995), doi 10.1063/1.555961: viscosity of ammonia')
export const MULERO_2012 = confirmed(
  'Mulero, Cachadiña, Parra, J. Phys. Chem. Ref. Data 41, 043105 (2012), doi 10.1063/1.4768782: surface tension',
)
export const SP_811 = confirmed('NIST Special Publication 811 (2008), appendix B: conversion factors')
export const ISO_2533 = confirmed('ISO 2533:1975 Standard Atmosphere')
export const HYDROSTATICS = confirmed('Hydrostatics with the saturation curve of Gao et al. 2023')
export const ENERGY_BALANCE = confirmed('Energy balance of the drum with the enthalpies of Gao et al. 2023')
