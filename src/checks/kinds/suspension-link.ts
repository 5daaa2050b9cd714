import { adjusterSetting, adjusterTurn } from '../../calc/links/adjuster.js';
import { adjusterRange } from '../../calc/links/adjuster-range.js';
import { rodBuckling, tubeBuckling } from '../../calc/links/buckling.js';
import { rodTension, tubeTension } from '../../calc/links/tension.js';
import { expanded } from '../../calc/value.js';
import { readPropertyClass } from '../../project/designations/property-class.js';
import { readSteel } from '../../project/designations/steel.js';
import { readThread } from '../../project/designations/thread.js';
import { designation, list, named, quantity, text, yesNo } from '../../project/fields.js';
import { showQuantity } from '../../units/show.js';
import { exactBound, type Limit } from '../codes/limit.js';
import { type Data, kind } from '../engine/kind.js';
import { isMissing, type Maybe, type Work } from '../engine/work.js';
import { comparePair, pairsOf } from './parts/link-pairs.js';
import { difference, given, sum } from './parts/maybe.js';
import { examineStops, quietAnswers, singleShearField, stopStates, workedField } from './parts/stop.js';

const shape = {
  links: list(
    {
      place: text('which link it is', 'rear lower, left'),
      was: text('what was there', 'pressed steel link, rubber bushes, 610 mm between centres').meta({
        recordedFor: 'whoever compares it with the link that is there now',
      }),
      length: quantity('mm', 'length between the centres of its joints now', {
        how: 'tape or long caliper between the bolt centres, at ride height',
        typical: '612 mm',
        usual: [65, 1500],
      }),
      longest: named('mm', 'longest setting that is allowed, between the same centres', {
        how: 'as marked on the link; where it stays as it is set, its length now',
        typical: '618 mm',
        usual: [65, 1500],
      }),
      diameter: quantity('mm', 'outside diameter of the body', {
        places: 'smallest',
        how: 'caliper, the smallest of three places',
        typical: '30 mm',
        usual: [10, 80],
      }),
      wall: quantity('mm', 'wall of a tube; left out for a solid bar', {
        places: 'smallest',
        how: 'caliper at the end before the bung goes in, or ultrasonic gauge',
        typical: '4.0 mm',
        usual: [1, 12],
      }),
      steel: designation(readSteel, 'steel of the body, from its certificate', 'S355'),
      'thread-a': designation(readThread, 'thread of end A', 'M20x2.0'),
      'thread-b': designation(readThread, 'thread of end B, left-hand', 'M20x2.0 LH'),
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
      'least-engagement-b': quantity('mm', 'the same of end B, where its thread is of another size', {
        how: "maker's sheet, kept as a paper",
        typical: '22 mm',
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

const eachLink = (d: Data<typeof shape>) => (d.links ?? []).map((l) => l.id);
const eachEnd = (d: Data<typeof shape>) => eachLink(d).flatMap((id) => [`${id}-a`, `${id}-b`]);

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
      shows: 'Each original link in place, with its length',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: eachLink,
    },
    {
      id: 'engagement',
      shows: 'Thread engagement of both ends of each link, with a rule beside it',
      level: 'record',
      during: 'assembled',
      before: 'finished',
      parts: eachEnd,
    },
  ],
  cautions: ['stands', 'steering', 'springs', 'structure'],
  proofParts: (d) => ({ 'links.in-place': eachLink(d).flatMap((id) => [`${id}-side`, `${id}-below`]) }),
  answers: (d) => ({
    ...quietAnswers(d),
    'links.altered': d['suspension-exchanged'] && { answer: d['suspension-exchanged'], from: ['suspension-exchanged'] },
    'links.pair-alike': pairsAlike(d.links),
  }),
  states: (d) => ({
    ...stopStates(d),
    'suspension-exchanged': d['suspension-exchanged'],
    'pair-of-links': pairsOf(d.links).length > 0 ? 'yes' : 'no',
  }),
  evaluate: ({ data }, work) => {
    const links = data.links ?? [];
    if (links.length === 0) work.compare('links.engagement', '', work.lacks('links'));
    for (const link of links) strength(link, adjustment(link, work), work);
    for (const pair of pairsOf(links)) examinePair(pair, work);
    examineStops(data, work);
  },
});

/** Tension and buckling; buckling at the longest setting where that is known, else at the present length. */
function strength(link: Link, longest: Maybe, work: Work): void {
  const take = taker(link, work);
  const strut = { length: isMissing(longest) ? take('length') : longest, yieldStrength: ofSteel(link, work) };
  const body = { diameter: take('diameter') };
  const buckling = link.wall
    ? work.sheet(tubeBuckling, link.id, { ...body, wall: take('wall'), ...strut })
    : work.sheet(rodBuckling, link.id, { ...body, ...strut });
  const loadCase = work.loadCase(link['load-case']);
  const demand = loadCase?.force ? work.take(loadCase.force, 'links', link.id, 'load-case') : undefined;
  const common = { demand, loadCase, named: link['load-case'] };
  work.demandAgainst('links.tension', link.id, { ...common, capacity: pull(link, work) });
  work.demandAgainst('links.buckling', link.id, { ...common, capacity: buckling.get('critical') });
}

/** What the link holds in tension: at end B too, where its thread is of another size; the weaker end governs. */
function pull(link: Link, work: Work): Maybe {
  const atA = tensionAt('thread-a', link.id, link, work);
  if (sameSize(link)) return atA;
  const atB = tensionAt('thread-b', `${link.id}-b`, link, work);
  return isMissing(atA) || (!isMissing(atB) && atA.si <= atB.si) ? atA : atB;
}

function tensionAt(end: End, subject: string, link: Link, work: Work): Maybe {
  const take = taker(link, work);
  const thread = link[end];
  const inputs = {
    diameter: take('diameter'),
    thread: thread ? (thread.series === 'metric' ? 'metric' : 'unified') : work.lacks('links', link.id, end),
    threadDiameter: ofThread(link, end, 'diameter', work),
    pitch: ofThread(link, end, 'pitch', work),
    bodyYield: ofSteel(link, work),
    threadProof: ofClass(link, end, work),
  } as const;
  return link.wall
    ? work.sheet(tubeTension, subject, { ...inputs, wall: take('wall') }).get('capacity')
    : work.sheet(rodTension, subject, inputs).get('capacity');
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
  examineEngagement(link, work);
  const longest = rangeOf(link, work).get('longest');
  return isMissing(longest) && link.longest ? taker(link, work)('longest') : longest;
}

/** The thread that stays engaged at the longest setting that the link promises, at both ends. */
function examineEngagement(link: Link, work: Work): void {
  const take = taker(link, work);
  const change = difference(take('longest'), take('length'));
  const both = link['thread-b'] !== undefined || link['engaged-b'] !== undefined;
  const beyond = !isMissing(change) && change.si < 0;
  const surely = beyond && change.si + expanded(change) < 0;
  const setting =
    link['thread-a'] && link['thread-b'] && link['thread-a'].hand !== link['thread-b'].hand
      ? work.sheet(adjusterSetting, link.id, {
          change,
          pitchA: ofThread(link, 'thread-a', 'pitch', work),
          pitchB: ofThread(link, 'thread-b', 'pitch', work),
          engagedA: take('engaged-a'),
          engagedB: take('engaged-b'),
        })
      : undefined;
  for (const end of both ? (['a', 'b'] as const) : (['a'] as const)) {
    const subject = `${link.id}-${end}`;
    const now = take(`engaged-${end}`);
    const limit = makersLimit(link, end);
    if (beyond && !isMissing(now)) {
      work.state(
        'links.engagement',
        subject,
        surely ? 'against' : 'unclear',
        surely
          ? 'the link is set longer than its longest setting'
          : 'as read, the link is set longer than its longest setting, though by less than both are uncertain by',
        {
          of: 'requirement',
          measured: now,
          todo: 'set it shorter, or correct `longest` or `length`',
          path: ['links', link.id, 'longest'],
        },
      );
      continue;
    }
    // Ends of one hand, and a single threaded end, are turned one by one: each is taken as if it alone made the change.
    const left = setting ? setting.get(end === 'a' ? 'leftA' : 'leftB') : difference(now, change);
    const short = !isMissing(now) && limit?.min !== undefined && now.si + expanded(now) < limit.min.si;
    work.compare('links.engagement', subject, isMissing(left) && short ? now : left, {
      limit,
      settle: (_, compared) =>
        compared === 'met' && isBeyondHome(now, take(`home-${end}`))
          ? {
              of: 'requirement',
              result: 'unclear',
              says: 'more thread is engaged now than when the end is screwed home, so that one of both is wrong',
              by: `\`engaged-${end}\` and \`home-${end}\`, measured again`,
              todo: `measure \`engaged-${end}\` and \`home-${end}\` again`,
            }
          : undefined,
    });
  }
}

/** Whether surely more thread is engaged than there is. */
const isBeyondHome = (now: Maybe, home: Maybe): boolean =>
  !isMissing(now) && !isMissing(home) && now.si - expanded(now) > home.si + expanded(home);

function rangeOf(link: Link, work: Work) {
  const take = taker(link, work);
  return work.sheet(adjusterRange, link.id, {
    length: take('length'),
    pitchA: ofThread(link, 'thread-a', 'pitch', work),
    pitchB: ofThread(link, 'thread-b', 'pitch', work),
    engagedA: take('engaged-a'),
    engagedB: take('engaged-b'),
    homeA: take('home-a'),
    homeB: take('home-b'),
    leastA: take('least-engagement'),
    leastB: take(leastOf(link, 'b')),
  });
}

/** The maker's figure for one end stands for the other only where both threads are of one size. */
function makersLimit(link: Link, end: 'a' | 'b'): Limit | undefined {
  const least = link[leastOf(link, end)];
  const from = link['least-engagement-from'];
  return least && from ? { min: exactBound(least.quantity.si), unit: 'mm', document: from, basis: 'maker' } : undefined;
}

const leastOf = (link: Link, end: 'a' | 'b') =>
  end === 'b' && !sameSize(link) ? 'least-engagement-b' : 'least-engagement';

function sameSize({ 'thread-a': a, 'thread-b': b }: Link): boolean {
  return !a || !b || (a.series === b.series && a.diameter === b.diameter && a.pitch === b.pitch);
}

type Pair = [left: Link, right: Link];

/** Length, and thread engaged at both ends together, which is what turning the body sets. */
function examinePair(pair: Pair, work: Work): void {
  const of = (value: (link: Link) => Maybe) => pair.map(value) as [Maybe, Maybe];
  comparePair(
    pair,
    'length',
    of((link) => taker(link, work)('length')),
    work,
  );
  if (pair.some((link) => link['engaged-a'] || link['engaged-b']))
    comparePair(
      pair,
      'engaged',
      of((link) => sum(taker(link, work)('engaged-a'), taker(link, work)('engaged-b'))),
      work,
    );
}

/** Whether threads, class, steel and longest setting of the pairs are alike; no answer while one side does not say, or the steel is unknown. */
function pairsAlike(links: Links['links']) {
  const pairs = pairsOf(links);
  const compared = pairs.flatMap(([left, right]) =>
    (['thread-a', 'thread-b', 'thread-class', 'steel', 'longest'] as const).map((name) => ({
      says: `${name}: ${left.id} ${said(left, name)}, ${right.id} ${said(right, name)}`,
      sides: [said(left, name), said(right, name)],
    })),
  );
  const apart = compared.filter(({ sides: [l, r] }) => l !== undefined && r !== undefined && l !== r);
  if (apart.length > 0) return { answer: 'no', because: apart.map(({ says }) => says).join('; ') };
  const half = compared.some(({ sides: [l, r] }) => (l === undefined) !== (r === undefined));
  const known = pairs.flat().every((link) => link['thread-a'] && link.steel && link.steel.known !== 'unknown');
  return pairs.length === 0 || half || !known
    ? undefined
    : { answer: 'yes', because: 'threads, class, steel and setting alike' };
}

function said(link: Link, name: 'thread-a' | 'thread-b' | 'thread-class' | 'steel' | 'longest'): string | undefined {
  if (name === 'longest') return link.longest && showQuantity(link.longest.quantity.si, 'mm');
  return link[name]?.text;
}

type End = 'thread-a' | 'thread-b';
type Field =
  | 'length'
  | 'longest'
  | 'diameter'
  | 'wall'
  | 'engaged-a'
  | 'engaged-b'
  | 'home-a'
  | 'home-b'
  | 'least-engagement'
  | 'least-engagement-b';
const taker = (link: Link, work: Work) => (name: Field) => work.take(link[name], 'links', link.id, name);

function ofThread(link: Link, end: End, what: 'diameter' | 'pitch', work: Work): Maybe {
  const thread = link[end];
  return thread ? given(thread[what], 'mm', `${thread.written}`) : work.lacks('links', link.id, end);
}

function ofSteel(link: Link, work: Work): Maybe {
  const steel = link.steel;
  return steel?.yield === undefined
    ? work.lacks('links', link.id, 'steel')
    : given(steel.yield, 'MPa', `${steel.written}, nominal yield strength`);
}

function ofClass(link: Link, end: End, work: Work): Maybe {
  const property = link['thread-class'];
  const thread = link[end];
  if (!property || !thread) return work.lacks('links', link.id, property ? end : 'thread-class');
  const proof = property.proof(thread.diameter);
  if (proof === undefined)
    return { missing: [], reason: `${property.text} has no proof strength at ${thread.text} in ${property.standard}` };
  return given(proof, 'MPa', `class ${property.written}, proof strength, ${property.standard}`);
}
