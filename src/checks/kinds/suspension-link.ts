import { adjusterTurn } from '../../calc/links/adjuster.js';
import { adjusterRange } from '../../calc/links/adjuster-range.js';
import { rodBuckling, tubeBuckling } from '../../calc/links/buckling.js';
import { rodTension, tubeTension } from '../../calc/links/tension.js';
import { readPropertyClass } from '../../project/designations/property-class.js';
import { readSteel } from '../../project/designations/steel.js';
import { readThread } from '../../project/designations/thread.js';
import { designation, list, quantity, text, yesNo } from '../../project/fields.js';
import { exactBound, type Limit } from '../codes/limit.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { given } from './parts/maybe.js';
import { examineStops, quietAnswers, singleShearField, stopStates, workedField } from './parts/stop.js';

const shape = {
  links: list(
    {
      place: text('which link it is', 'rear lower, left'),
      was: text('what was there', 'pressed steel link, rubber bushes, 610 mm between centres'),
      length: quantity('mm', 'length between the centres of its joints now', {
        how: 'tape or long caliper between the bolt centres, at ride height',
        typical: '612 mm',
        usual: [60, 1500],
      }),
      diameter: quantity('mm', 'outside diameter of the body', {
        how: 'caliper, the smallest of three places',
        typical: '30 mm',
        usual: [10, 80],
      }),
      wall: quantity('mm', 'wall of a tube; left out for a solid bar', {
        how: 'caliper at the end before the bung goes in, or ultrasonic gauge',
        typical: '4.0 mm',
        usual: [1, 12],
      }),
      steel: designation(readSteel, 'steel of the body, from its certificate', 'S355'),
      'thread-a': designation(readThread, 'thread of end A', '3/4-16 UNF'),
      'thread-b': designation(readThread, 'thread of end B, left-hand', '3/4-16 UNF LH'),
      'thread-class': designation(readPropertyClass, 'property class of the threaded ends', '8.8'),
      'engaged-a': quantity('mm', 'thread engaged at end A now', {
        how: 'thread length less what stands out of the nut',
        typical: '30 mm',
      }),
      'engaged-b': quantity('mm', 'thread engaged at end B now', {
        how: 'thread length less what stands out of the nut',
        typical: '30 mm',
      }),
      'home-a': quantity('mm', 'thread engaged at end A when screwed home', {
        measuredAs: 'thickness',
        how: 'the shorter of male thread and tapped depth',
        typical: '42 mm',
      }),
      'home-b': quantity('mm', 'thread engaged at end B when screwed home', {
        measuredAs: 'thickness',
        how: 'the shorter of male thread and tapped depth',
        typical: '42 mm',
      }),
      'least-engagement': quantity('mm', 'least engagement that the maker of the ends asks for', {
        how: "maker's sheet, kept as a paper",
        typical: '25 mm',
      }),
      'least-engagement-from': text('the sheet that says so', 'data sheet of the rod end, 2025'),
      'load-case': text('load case in build.md', 'link-pull'),
    },
    'links, each an item of its own',
  ),
  'suspension-exchanged': yesNo('were mounts of the suspension moved, or the suspension of another vehicle fitted'),
  worked: workedField,
  'single-shear': singleShearField,
};
type Links = Data<typeof shape>;
type Link = NonNullable<Links['links']>[number];

/** Suspension links, adjustable ones among them. */
export const suspensionLink = kind({
  id: 'suspension-link',
  title: 'Suspension link',
  covers:
    'A suspension link made, altered or replaced by an adjustable one: strength, threads at both ends of adjustment, and the weld report where a part was welded.',
  shape,
  holdPoints: [
    {
      id: 'link-as-received',
      shows: 'Original link in place, with its length',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
    },
    {
      id: 'engagement',
      shows: 'Thread engagement of both ends with a rule beside it',
      level: 'record',
      during: 'assembled',
      before: 'finished',
    },
  ],
  cautions: ['stands', 'steering', 'springs', 'structure'],
  answers: (d) => ({
    ...quietAnswers(d),
    'links.altered': d['suspension-exchanged'] && { answer: d['suspension-exchanged'] },
  }),
  states: (d) => ({ ...stopStates(d), 'suspension-exchanged': d['suspension-exchanged'] }),
  evaluate: ({ data }, work) => {
    const links = data.links ?? [];
    if (links.length === 0) work.compare('links.engagement', '', work.lacks('links'));
    for (const link of links) strength(link, adjustment(link, work), work);
    examineStops(data, work);
  },
});

/** Tension and buckling; buckling at the longest setting where that is known, else at the present length. */
function strength(link: Link, longest: Maybe, work: Work): void {
  const take = taker(link, work);
  const yieldStrength = ofSteel(link, work);
  const proof = ofClass(link, work);
  const thread = link['thread-a']
    ? ({ thread: link['thread-a'].series === 'metric' ? 'metric' : 'unified' } as const)
    : { thread: work.lacks('links', link.id, 'thread-a') };
  const threadInputs = {
    ...thread,
    threadDiameter: ofThread(link, 'thread-a', 'diameter', work),
    pitch: ofThread(link, 'thread-a', 'pitch', work),
    bodyYield: yieldStrength,
    threadProof: proof,
  };
  const strut = { length: isMissing(longest) ? take('length') : longest, yieldStrength };
  const body = { diameter: take('diameter') };
  const tension = link.wall
    ? work.sheet(tubeTension, link.id, { ...body, wall: take('wall'), ...threadInputs })
    : work.sheet(rodTension, link.id, { ...body, ...threadInputs });
  const buckling = link.wall
    ? work.sheet(tubeBuckling, link.id, { ...body, wall: take('wall'), ...strut })
    : work.sheet(rodBuckling, link.id, { ...body, ...strut });
  const loadCase = work.loadCase(link['load-case']);
  const demand = loadCase?.force ? work.take(loadCase.force, 'links', link.id, 'load-case') : undefined;
  const common = { demand, loadCase, named: link['load-case'] };
  work.demandAgainst('links.tension', link.id, { ...common, capacity: tension.get('capacity') });
  work.demandAgainst('links.buckling', link.id, { ...common, capacity: buckling.get('critical') });
}

/** Travel of the adjuster and engagement; gives the longest setting. */
function adjustment(link: Link, work: Work): Maybe {
  if (link['thread-a'] && link['thread-b']) {
    const pitches = {
      pitchA: ofThread(link, 'thread-a', 'pitch', work),
      pitchB: ofThread(link, 'thread-b', 'pitch', work),
    };
    work.sheet(adjusterTurn, link.id, {
      hands: link['thread-a'].hand === link['thread-b'].hand ? 'same' : 'opposite',
      ...pitches,
    });
  }
  const limit = makersLimit(link);
  work.compare('links.engagement', `${link.id}-a`, taker(link, work)('engaged-a'), { limit });
  if (link['thread-b']) work.compare('links.engagement', `${link.id}-b`, taker(link, work)('engaged-b'), { limit });
  return rangeOf(link, work).get('longest');
}

function rangeOf(link: Link, work: Work) {
  const take = taker(link, work);
  const least = take('least-engagement');
  return work.sheet(adjusterRange, link.id, {
    length: take('length'),
    pitchA: ofThread(link, 'thread-a', 'pitch', work),
    pitchB: ofThread(link, 'thread-b', 'pitch', work),
    engagedA: take('engaged-a'),
    engagedB: take('engaged-b'),
    homeA: take('home-a'),
    homeB: take('home-b'),
    leastA: least,
    leastB: least,
  });
}

function makersLimit(link: Link): Limit | undefined {
  const least = link['least-engagement'];
  const from = link['least-engagement-from'];
  return least && from ? { min: exactBound(least.quantity.si), unit: 'mm', document: from, basis: 'maker' } : undefined;
}

type Field = 'length' | 'diameter' | 'wall' | 'engaged-a' | 'engaged-b' | 'home-a' | 'home-b' | 'least-engagement';
const taker = (link: Link, work: Work) => (name: Field) => work.take(link[name], 'links', link.id, name);

function ofThread(link: Link, end: 'thread-a' | 'thread-b', what: 'diameter' | 'pitch', work: Work): Maybe {
  const thread = link[end];
  return thread ? given(thread[what], 'mm', `${thread.written}`) : work.lacks('links', link.id, end);
}

function ofSteel(link: Link, work: Work): Maybe {
  const steel = link.steel;
  return steel?.yield === undefined
    ? work.lacks('links', link.id, 'steel')
    : given(steel.yield, 'MPa', `${steel.written}, nominal yield strength`);
}

function ofClass(link: Link, work: Work): Maybe {
  const property = link['thread-class'];
  const thread = link['thread-a'];
  if (!property || !thread) return work.lacks('links', link.id, property ? 'thread-a' : 'thread-class');
  const proof = property.proof(thread.diameter);
  if (proof === undefined)
    return { missing: [], reason: `${property.text} has no proof strength at ${thread.text} in ${property.standard}` };
  return given(proof, 'MPa', `class ${property.written}, proof strength, ${property.standard}`);
}
