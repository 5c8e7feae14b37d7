import { deleteLines } from '../../../src/workbook/line-commands.ts'
import { demo, edited, template, typed, type Plant } from './plant.ts'

/** What is wrong is no formula: names, cases, rows, labels, figures. */
export const SURROUNDING_PLANTS: readonly Plant[] = [
  {
    fault: 'Labels swapped',
    matters: 'The alarm is set at the height of the cut-out and the cut-out at that of the alarm: compressors stop before anyone is told.',
    base: template('interlocks'), plant: typed({ 'Interlocks!B34': 'High-level cut-out', 'Interlocks!B35': 'High float, alarm' }), leads: ['Interlocks!B34:B35', 'Interlocks!C34:C35'], before: true,
  },
  {
    fault: 'A case with the values of another',
    matters: 'The summer peak condenses colder than the base: valves and flash gas are never looked at for the hot day.',
    base: demo,
    plant: edited(({ cases }) => cases === undefined ? [] : [{
      kind: 'cases',
      cases: {
        ...cases,
        list: cases.list.map((one) => (one.name !== 'Summer peak' ? one : {
          ...one, aside: one.aside.map((held) => (held.sheet === 'Basis' && held.row === 13 ? { ...held, content: 84 } : held.sheet === 'Basis' && held.row === 14 ? { ...held, content: 80 } : held)),
        })),
      },
    }]),
    leads: ['Basis!C14:C15', 'Summer peak'], before: true,
  },
  {
    fault: 'A vessel’s row deleted from the inventory',
    matters: 'The blast tunnel’s drum is not in the charge; the plant reports less ammonia than it has.',
    base: demo, plant: edited((base) => deleteLines(base, 'Charge', { axis: 'rows', at: 14, count: 1 })), leads: ['Charge!A15:R15'], before: true,
  },
  {
    fault: 'A name that points to another cell',
    matters: 'The velocity share reads the fill at the cut-out: 80 % in place of 75 %, and the input for it moves nothing.',
    base: demo, plant: edited(() => [{ kind: 'name', name: 'velocity_share', refersTo: 'Basis!$C$39:$D$39' }]), leads: ['Basis!C33', 'velocity_share'], before: true,
  },
  {
    fault: 'A figure that draws another cell',
    matters: 'The drawing of the drum, which goes to the vessel maker, has the high float at the height of the operating float.',
    base: demo,
    plant: edited(({ figures }) => [{
      kind: 'figures',
      figures: figures.map((one) => (one.title === 'Vertical drum in section' ? { ...one, bindings: { ...one.bindings, highFloat: "'Vertical drum'!$C$38:$D$38" } } : one)),
    }]),
    leads: ['Vertical drum in section'], before: true,
  },
]
