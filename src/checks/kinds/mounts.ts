import { cantilever } from '../../calc/beams/beam.js';
import { mountReaction } from '../../calc/engine/mounts.js';
import { spread } from '../../calc/value.js';
import { readSection } from '../../project/designations/section.js';
import { readSteel } from '../../project/designations/steel.js';
import { choice, designation, list, named, quantity, text, yesNo } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { compareAgainst } from './parts/against.js';
import { boltAnswers, boltsField, examineEngagement } from './parts/engagement.js';
import { examineGaps, gapsField } from './parts/gaps.js';
import { makerFigures, makerLimit } from './parts/maker-window.js';
import { given, product } from './parts/maybe.js';
import { memberProperties } from './parts/member.js';
import { couponsField } from './parts/thin-weld.js';
import { examineTorques, torqueAnswers, torquesField } from './parts/torques.js';
import { asksWelds, examineWeld, weldsField } from './parts/weld.js';

const brackets = list(
  {
    says: text('which bracket, and what it joins', 'engine side, block to rubber'),
    section: designation(readSection, 'section at its root, with its measured sizes', 'RHS 50x30x3 (EN 10219)'),
    steel: designation(readSteel, 'steel, from its certificate', 'S355'),
    wall: quantity('mm', 'wall or plate thickness as measured', {
      places: 'smallest',
      how: 'caliper on a cut edge, three places',
      typical: '3.02 mm',
    }),
    bends: choice(
      {
        x: 'about the x axis of its section: the load lies along its first dimension',
        y: 'about the y axis: the load lies along its second dimension',
      },
      'axis that it bends about',
    ),
    reach: quantity('mm', 'distance of the rubber from the root of the bracket', {
      how: 'tape from the centre of the rubber to the weld or the first bolts',
      typical: '95 mm',
      usual: [10, 600],
    }),
    welds: weldsField,
  },
  'brackets of the mount on both sides of its rubber, each an item',
);

const swing =
  'rule or dial from the body to the top of the engine, brakes held, clutch let in gently in first gear; the same in reverse';
const shape = {
  mounts: list(
    {
      place: text('where it sits', 'left of the engine'),
      takes: choice(
        {
          torque: 'a side mount: takes weight and torque',
          weight: 'near the axis of the crankshaft, such as under the gearbox: takes weight only',
        },
        'what it takes',
      ),
      was: text('what was there', "the maker's rubber on a pressed bracket"),
      now: text('what is there now', 'rubber of another model, part number kept'),
      load: quantity('kg', 'mass that it carries at rest', {
        how: 'scale under a jack at the mount, or the engine weighed and shared out by the distances',
        typical: '85 kg',
      }),
      rating: quantity('N', 'load that mount and bracket are rated or calculated for', {
        measuredAs: 'paper',
        how: 'data sheet of the mount, or a sheet for the bracket',
        typical: '9 kN',
        usual: [1000, 60000],
      }),
      'rating-up': quantity('N', 'load that it takes when it is pulled upwards', {
        measuredAs: 'paper',
        how: 'data sheet of the mount; what holds it once the rubber tears',
        typical: '4 kN',
        usual: [450, 39000],
      }),
      hardness: quantity('1', 'hardness of the rubber, points of Shore A', {
        places: 'each',
        measuredAs: 'hardness',
        how: 'durometer pressed square to a flat of the rubber, at room temperature, three places',
        typical: '[58, 60, 59]',
        usual: [20, 95],
      }),
      'hardness-maker': makerFigures('1', 'hardness in points of Shore A', [20, 95]),
      'load-case': text('load case in build.md, for a mount that takes weight only', 'gearbox-drop'),
      brackets,
    },
    'mounts, each an item',
  ),
  spacing: quantity('mm', 'distance between left and right mount, square to the crankshaft', {
    how: 'tape between the centres of the rubbers',
    typical: '560 mm',
  }),
  layout: choice(
    {
      separate: 'gearbox with a shaft to the axle',
      transaxle: 'final drive in the same housing, so that the mounts take the torque behind it',
    },
    'layout; without a word, a gearbox with a shaft',
  ),
  'converter-ratio': named('1', 'torque multiplication of the converter at stall, automatic gearbox only', {
    typical: '2.0',
    usual: [1, 4],
  }),
  'load-case': text('load case in build.md with the factor for the torque reaction', 'engine-torque'),
  'movement-drive': quantity('mm', 'movement of the engine under drive torque, where it moves most', {
    measuredAs: 'rule',
    how: swing,
    typical: '12 mm',
    usual: [1.3, 110],
  }),
  'movement-overrun': quantity('mm', 'movement of the engine the other way', {
    measuredAs: 'rule',
    how: swing,
    typical: '9 mm',
    usual: [1, 85],
  }),
  gaps: gapsField,
  bolts: boltsField,
  torques: torquesField,
  'held-if-torn': yesNo('is the engine kept off brakes, steering and suspension if a rubber tears'),
  'clear-of-heat': yesNo('is every rubber clear of the exhaust or shielded from it'),
  welded: yesNo('was anything welded'),
  coupons: couponsField,
  welder: text('who welded, with which qualification, to which standard', 'M. Brandt (invented), AS/NZS 1554.1 GP'),
};
type Mounts = Data<typeof shape>;
type Mount = NonNullable<Mounts['mounts']>[number];
type Bracket = NonNullable<Mount['brackets']>[number];

const eachMount = (d: Mounts) => (d.mounts ?? []).map((m) => m.id);
const withBrackets = (d: Mounts) => (d.mounts ?? []).filter((m) => m.brackets?.length).map((m) => m.id);

/** What carries engine and gearbox. */
export const mounts = kind({
  id: 'mounts',
  title: 'Mounts',
  covers:
    'What carries engine and gearbox: mounts, rubbers and brackets, the torque reaction in first gear, how far the engine moves, and what it clears.',
  shape,
  holdPoints: [
    {
      id: 'mounts-as-received',
      shows: 'Original mounts with the engine on them',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'mounts-tacked',
      shows: 'Brackets of each mount tacked, with the engine in its place',
      level: 'hold',
      during: 'tacked',
      before: 'welded',
      parts: eachMount,
      serves: 'mounts.shown',
    },
    {
      id: 'mount-welds',
      shows: 'Welds of the brackets, bare',
      level: 'witness',
      during: 'welded',
      before: 'painted',
      parts: withBrackets,
      serves: 'body.welds-shown',
    },
    {
      id: 'mounts-fitted',
      shows: 'Each mount under load, with the gap that its stop leaves',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: eachMount,
      serves: 'mounts.shown',
    },
  ],
  holds: asks,
  cautions: ['lifting', 'stands', 'welding', 'structure'],
  facts: (d) => ({
    engine_movement: [d['movement-drive'], d['movement-overrun']]
      .filter((m) => m !== undefined)
      .toSorted((a, b) => b.quantity.si - a.quantity.si)[0],
  }),
  answers: (d) => ({
    ...boltAnswers(d.bolts),
    ...torqueAnswers(d.torques),
    'mounts.retention': d['held-if-torn'] && { answer: d['held-if-torn'], from: ['held-if-torn'] },
    'mounts.heat': d['clear-of-heat'] && { answer: d['clear-of-heat'], from: ['clear-of-heat'] },
    'mounts.movement':
      d['movement-drive'] && d['movement-overrun']
        ? {
            answer: `${d['movement-drive'].quantity.text} under drive, ${d['movement-overrun'].quantity.text} on the overrun`,
          }
        : undefined,
    'body.weld-standard': d.welder ? { answer: d.welder } : undefined,
  }),
  proofParts: (d) => ({ 'body.material-paper': withBrackets(d) }),
  raises: (item, d) => {
    if (item === 'mounts.hardness') return d.mounts?.some((m) => m.hardness) ?? false;
    if (item === 'mounts.bracket-stress') return d.mounts?.some((m) => m.brackets?.length) ?? false;
    return asks(item, d);
  },
  evaluate: ({ data }, work) => {
    if (!data.mounts?.length) work.compare('mounts.torque-reaction', '', work.lacks('mounts'));
    for (const mount of data.mounts ?? []) examineMount(mount, data, work);
    examineGaps(data.gaps, work);
    examineEngagement(data.bolts, work);
    if (data.torques) examineTorques(data.torques, work);
  },
});

function asks(what: string, data: Mounts): boolean {
  const listed = (data.mounts ?? []).flatMap((m) =>
    (m.brackets ?? []).flatMap((b) => (b.welds ?? []).map((weld) => ({ weld, beside: [b.wall?.quantity.si] }))),
  );
  return asksWelds(what, data, listed, ['body.weld-test', 'body.crack-test']);
}

function examineMount(mount: Mount, data: Mounts, work: Work): void {
  const { id } = mount;
  const take = (name: 'load' | 'rating' | 'rating-up' | 'hardness') => work.take(mount[name], 'mounts', id, name);
  if (mount.hardness)
    work.compare('mounts.hardness', id, take('hardness'), { limit: makerLimit(mount['hardness-maker'], '1') });
  if (mount.takes === 'weight') {
    const loadCase = work.loadCase(mount['load-case']);
    const demand = loadCase?.force ? work.take(loadCase.force, 'mounts', id, 'load-case') : undefined;
    return work.demandAgainst('mounts.torque-reaction', id, {
      demand,
      capacity: take('rating'),
      loadCase,
      named: mount['load-case'],
    });
  }
  const loadCase = work.loadCase(data['load-case']);
  const reaction = work.sheet(mountReaction, id, {
    torque: work.fact('engine_torque'),
    ratio:
      data.layout === 'transaxle'
        ? product(work.fact('first_gear'), work.fact('final_drive'))
        : work.fact('first_gear'),
    spacing: work.take(data.spacing, 'spacing'),
    weight: take('load'),
    ...(data['converter-ratio'] ? { converter: work.take(data['converter-ratio'], 'converter-ratio') } : {}),
    ...(loadCase?.factor ? { factor: work.take(loadCase.factor, 'load-case') } : {}),
  });
  const against = { factored: true, loadCase, named: data['load-case'] };
  // Reverse and overrun turn the torque about, so that either side mount can be the one that is pressed.
  work.demandAgainst('mounts.torque-reaction', id, {
    ...against,
    demand: reaction.get('pressed'),
    capacity: take('rating'),
  });
  const lifted = reaction.get('lifted');
  if (mount['rating-up'] && (isMissing(lifted) || lifted.si > 0))
    work.demandAgainst('mounts.torque-reaction', `${id}-lifted`, {
      ...against,
      demand: lifted,
      capacity: take('rating-up'),
    });
  for (const bracket of mount.brackets ?? []) examineBracket(bracket, mount, reaction.get('pressed'), data, work);
}

/** Bending at the root of the bracket, and its welds. */
function examineBracket(bracket: Bracket, mount: Mount, force: Maybe, data: Mounts, work: Work): void {
  const path = ['mounts', mount.id, 'brackets', bracket.id];
  const subject = `${mount.id}-${bracket.id}`;
  const section = memberProperties(bracket, subject, path, work);
  const axis = bracket.bends ?? 'x';
  const { get } = work.sheet(cantilever, subject, {
    force,
    reach: work.take(bracket.reach, ...path, 'reach'),
    secondMoment: section.get(`I${axis}`),
    modulus: section.get(`Z${axis}`),
  });
  const stress = get('stress');
  const { steel } = bracket;
  const strength =
    steel?.yield === undefined
      ? work.lacks(...path, 'steel')
      : given(steel.yield, 'MPa', `${steel.written}, least yield strength`);
  const loadCase = work.loadCase(data['load-case']);
  if (!isMissing(stress) && !loadCase) {
    const why = data['load-case'] ? `no load case \`${data['load-case']}\` in build.md` : 'no load case is named';
    work.state(
      'mounts.bracket-stress',
      subject,
      'missing',
      `bending stress ${showQuantity(stress.si, 'MPa', spread(stress))} under engine torque alone; ${why}`,
      {
        of: 'element',
        measured: stress,
        todo: 'agree a load case with the certifier, state it in build.md and name it with `load-case:`',
        path: ['load-case'],
      },
    );
  } else {
    const agreed = loadCase?.['agreed-with'] !== undefined && loadCase['agreed-on'] !== undefined;
    compareAgainst('mounts.bracket-stress', subject, stress, ['bracket_yield', strength], work, {
      element: true,
      ...(agreed ? {} : { proposed: true, marks: ['proposed: load case not yet agreed with the certifier'] }),
    });
  }
  for (const weld of bracket.welds ?? [])
    examineWeld(
      weld,
      `${subject}-${weld.id}`,
      [...path, 'welds', weld.id],
      { thickness: section.wall, coupons: data.coupons },
      work,
    );
}
