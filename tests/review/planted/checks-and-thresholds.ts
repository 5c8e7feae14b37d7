import { chargeAsTyped } from '../by-hand/charge-as-typed.ts'
import { chargeByHand } from '../by-hand/charge.ts'
import { demo, typed, type Plant } from './plant.ts'

/** Checks that pass whatever is so, and limits compared with something else than they were made for. */
export const CHECK_PLANTS: readonly Plant[] = [
  {
    fault: 'Kilograms compared with a threshold in pounds',
    matters: '3 059 is far below 10 000, but it is kilograms: a plant of 20 000 lb would pass as well.',
    base: chargeByHand, plant: typed({ 'Charge!C18': '=C19<C17' }), leads: ['Charge!C18'], before: false,
  },
  {
    fault: 'A threshold compared with a rounded charge',
    matters: '4.542 t is above the threshold and rounds to 4.5: the plant counts itself below.',
    base: chargeAsTyped, plant: typed({ 'Charge!B8': '1302', 'Charge!B15': '=ROUND(B13,1)<B14' }), leads: ['Charge!B15'], before: false,
  },
  {
    fault: 'A check turned round',
    matters: 'A receiver of 18 in does not take the largest zone; since the comparison was turned, the sheet says that it does.',
    base: demo, plant: typed({ 'Charge!I58': '18', 'Charge totals!C62': '=C61>=C59' }), leads: ['Charge totals!C62'], before: true,
  },
  {
    fault: 'A check typed as TRUE',
    matters: 'The distance for droplets to fall in drum 4 is not looked at any more; all its checks still read as met.',
    base: demo, plant: typed({ 'Drums!AQ10': 'TRUE' }), leads: ['Drums!AQ10'], before: true,
  },
]
