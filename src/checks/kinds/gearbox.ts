import { z } from 'zod';
import { choice, list, type Measured, named, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { examineUnbalance, rotating } from './assembly/unbalance.js';
import { examineGaps, gapsField } from './parts/gaps.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';

const box = (state: string) =>
  z
    .strictObject({
      gearbox: text(
        `gearbox ${state}: kind, maker's type, number as cast or stamped`,
        'five-speed manual, type M5 (invented), number 30412',
      ),
      mass: quantity('kg', `mass of the gearbox ${state}`, {
        how: 'hanging scale, with clutch housing, without lubricant',
        typical: '38 kg',
      }),
      length: quantity('mm', `length ${state}, engine face to the end of the output`, {
        how: 'tape along the axis, on the bench',
        typical: '660 mm',
      }),
    })
    .optional()
    .meta({ form: 'block', says: `the gearbox ${state}` });

const dial = 'dial indicator on the crankshaft flange, one full turn, highest less lowest reading; three times';
const shape = {
  was: box('as it came'),
  now: box('as fitted'),
  type: choice({ manual: 'manual', automatic: 'automatic, with a torque converter' }, 'type'),
  ratios: list(
    {
      ratio: named('1', 'ratio, engine turns for one turn of the output', {
        how: "maker's data, or turns of the input counted over ten turns of the output",
        typical: '3.50',
      }),
    },
    'all forward gears, each an item such as `1st`; reverse as `reverse`',
  ),
  'ratios-from': text('where the ratios come from', "maker's data; third and fourth counted on the bench"),
  'torque-rating': named('N*m', 'greatest input torque that the maker of the gearbox names', {
    measuredAs: 'paper',
    typical: '350 N·m',
  }),
  'rating-from': text('paper that names it', 'data sheet of the gearbox maker, 2019'),
  housing: choice(
    {
      original: 'the housing that was made for this engine and this gearbox',
      other: 'an adaptor, or another or altered housing',
    },
    'what joins engine and gearbox',
  ),
  'bore-runout': quantity('mm', 'run-out of the bore that centres the gearbox', {
    places: 'largest',
    measuredAs: 'dial',
    how: dial,
    typical: '[0.12, 0.13, 0.12] mm',
    usual: [0, 1.1],
  }),
  'bore-runout-maker': makerFigures('mm', 'run-out of the bore', [0, 1.1]),
  'face-runout': quantity('mm', 'run-out of the face that the gearbox is bolted to', {
    places: 'largest',
    measuredAs: 'dial',
    how: dial,
    typical: '[0.08, 0.08, 0.09] mm',
    usual: [0, 0.75],
  }),
  'face-runout-maker': makerFigures('mm', 'run-out of the face', [0, 0.75]),
  spigot: quantity('mm', 'length of the input shaft that stands in its spigot bearing, manual gearbox', {
    how: 'depth to the bearing less what the shaft falls short of the engine face',
    typical: '14.5 mm',
  }),
  'spigot-maker': makerFigures('mm', 'engagement of the spigot', [2.4, 87]),
  'converter-gap': quantity('mm', 'gap between converter and flexplate before they are bolted, automatic gearbox', {
    places: 'smallest',
    how: 'converter pushed home, gearbox bolted up, feeler gauges at three places',
    typical: '[3.0, 3.2, 3.1] mm',
    usual: [0.5, 25],
  }),
  'converter-maker': makerFigures('mm', 'gap before the converter is bolted', [0.5, 25]),
  crossmember: choice(
    { original: 'as its maker made it', altered: 'altered', new: 'made anew' },
    'the cross-member that carries the gearbox',
  ),
  tunnel: choice({ untouched: 'untouched', dressed: 'dressed without cutting', cut: 'cut or replaced' }, 'the tunnel'),
  gaps: gapsField,
  'neutral-start': yesNo('automatic: does the engine start in park and neutral only, tried in every position'),
  'selector-shown': yesNo('automatic: does the driver see which position is selected'),
  'speedometer-checked': yesNo('was the speedometer checked or corrected after the change'),
  lubricant: text('lubricant filled in', 'gear oil 75W-90, GL-4'),
  'lubricant-asked': text('what the gearbox maker asks for', 'GL-4 75W-90, not GL-5'),
  'lubricant-quantity': quantity('L', 'quantity filled in', {
    how: 'measuring jug, to the filler plug on level ground',
    typical: '1.8 L',
    usual: [0.3, 17],
  }),
  rotating,
  'rotating-replaced': yesNo('was the flywheel or flexplate replaced'),
};
type Gearbox = Data<typeof shape>;

/** Another gearbox between engine and shaft. */
export const gearbox = kind({
  id: 'gearbox',
  title: 'Gearbox',
  covers:
    'Another gearbox: ratios and torque rating, how it is joined to the engine and lined up, what carries it and what it clears, selector and lubricant.',
  shape,
  holdPoints: [
    {
      id: 'gearbox-as-received',
      shows: 'Original gearbox with its cross-member and tunnel from below, before it is taken out',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'housing-alignment',
      shows: 'Dial indicator on the crankshaft in the bore of the housing',
      level: 'record',
      during: 'dismantled',
      before: 'assembled',
    },
    {
      id: 'gearbox-fitted',
      shows: 'Gearbox on its mount and cross-member, with its gaps, from below',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: ['mount', 'gaps'],
      serves: 'gearbox.fitted-shown',
    },
  ],
  cautions: ['stands', 'lifting', 'spinning'],
  facts: (d) => ({ first_gear: gearOf(d, 'first'), top_gear: gearOf(d, 'top') }),
  answers: (d) => ({
    'gearbox.structure': structure(d),
    'gearbox.neutral-start': d['neutral-start'] && { answer: d['neutral-start'], from: ['neutral-start'] },
    'gearbox.selector-shown': d['selector-shown'] && { answer: d['selector-shown'], from: ['selector-shown'] },
    'gearbox.speedometer': d['speedometer-checked'] && {
      answer: d['speedometer-checked'],
      from: ['speedometer-checked'],
    },
    'gearbox.lubricant':
      d.lubricant && d['lubricant-asked']
        ? {
            answer: [d.lubricant, d['lubricant-quantity']?.quantity.text].filter(Boolean).join(', '),
            because: `its maker asks for ${d['lubricant-asked']}`,
          }
        : undefined,
    'assembly.unbalance':
      d['rotating-replaced'] === 'no'
        ? {
            answer: 'not applicable',
            because: 'no rotating part of the crankshaft was replaced',
            from: ['rotating-replaced'],
          }
        : undefined,
  }),
  states: (d) => ({ gearbox: d.type, crossmember: d.crossmember }),
  raises: (item, d) =>
    !(item === 'gearbox.converter' && d.type !== 'automatic') && !(item === 'gearbox.spigot' && d.type !== 'manual'),
  evaluate: ({ data }, work) => {
    const marks = data['rating-from'] === undefined ? ['no paper is named for the rating'] : [];
    work.compare('gearbox.torque-rating', '', work.take(data['torque-rating'], 'torque-rating'), { marks });
    examineHousing(data, work);
    if (data.type === 'manual')
      work.compare('gearbox.spigot', '', work.take(data.spigot, 'spigot'), {
        limit: makerLimit(data['spigot-maker'], 'mm'),
      });
    if (data.type === 'automatic')
      work.compare('gearbox.converter', '', work.take(data['converter-gap'], 'converter-gap'), {
        limit: makerLimit(data['converter-maker'], 'mm'),
      });
    examineGaps(data.gaps, work);
    examineUnbalance(data.rotating, work);
  },
});

/** First gear turns the shaft slowest, top gear fastest, whatever they are called. */
function gearOf({ ratios }: Gearbox, which: 'first' | 'top'): Measured | undefined {
  const forward = (ratios ?? []).flatMap(({ id, ratio }) => (ratio && !/^r(?:everse)?$/.test(id) ? [ratio] : []));
  const rising = forward.toSorted((a, b) => a.quantity.si - b.quantity.si);
  return which === 'first' ? rising.at(-1) : rising[0];
}

function structure({ crossmember, tunnel }: Gearbox) {
  if (tunnel === 'cut' || crossmember === 'altered' || crossmember === 'new') {
    const done = [
      tunnel === 'cut' && 'the tunnel was cut',
      crossmember === 'altered' && 'the cross-member was altered',
      crossmember === 'new' && 'the cross-member was made anew',
    ];
    return {
      answer: 'yes',
      because: done.filter(Boolean).join(' and '),
      from: [tunnel === 'cut' ? 'tunnel' : 'crossmember'],
    };
  }
  return tunnel && crossmember ? { answer: 'no', from: ['crossmember'] } : undefined;
}

/** Engine and gearbox that were made for each other are lined up by their maker. */
function examineHousing(data: Gearbox, work: Work): void {
  const runouts = [
    ['gearbox.alignment', 'bore-runout'],
    ['gearbox.face-alignment', 'face-runout'],
  ] as const;
  for (const [item, name] of runouts) {
    if (data.housing === 'original' && !data[name])
      work.state(item, '', 'out', 'engine and gearbox are joined by the housing that was made for both', {
        path: ['housing'],
      });
    else work.compare(item, '', work.take(data[name], name), { limit: makerLimit(data[`${name}-maker`], 'mm') });
  }
}
