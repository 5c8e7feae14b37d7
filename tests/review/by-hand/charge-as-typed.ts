import { bookOf, page } from './page.ts'

/** The charge of a small plant, in SI units, with nothing but what was typed: the roles of the cells are those that Lowside suggests. */
export const chargeAsTyped = bookOf('North block charge', page('Charge', {
  A1: 'Ammonia charge, north block, weighed at the last fill',
  A3: 'Drum 1', B3: 212, C3: 'kg', D3: 'Scale ticket 1',
  A4: 'Drum 2', B4: 236, C4: 'kg', D4: 'Scale ticket 2',
  A5: 'Drum 3', B5: 185, C5: 'kg', D5: 'Scale ticket 2',
  A6: 'Drum 4', B6: 402, C6: 'kg', D6: 'Scale ticket 3',
  A7: 'Drums together', B7: '=SUM(B3:B6)', C7: 'kg',
  A8: 'Coils', B8: 1290, C8: 'kg', D8: 'Coil maker, at 75 %',
  A9: 'Lines', B9: 655, C9: 'kg', D9: 'Line list',
  A10: 'Receiver', B10: 1550, C10: 'kg', D10: 'Level log, mean of May',
  A12: 'Charge', B12: '=B7+SUM(B8:B10)', C12: 'kg',
  A13: 'Charge in tonnes', B13: '=B12/1000', C13: 't',
  A14: 'Threshold', B14: 4.54, C14: 't', D14: 'House rule, from 10 000 lb',
  A15: 'Below the threshold', B15: ['=B13<B14', 'check'],
  A16: 'Share of the threshold', B16: '=B13/B14*100', C16: '%',
}))
