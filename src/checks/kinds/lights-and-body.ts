import { lengthDifference } from '../../calc/uncertainty/difference.js';
import type { Answer } from '../../project/common.js';
import { type Data, kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { shape } from './lights-and-body-fields.js';
import { makerLimit } from './parts/maker-window.js';

type Lights = Data<typeof shape>;

/** Lamps, guards, bumpers, bonnet and what can be touched outside. */
export const lightsAndBody = kind({
  id: 'lights-and-body',
  title: 'Lights and body',
  covers:
    'Lamps and reflectors with their places before and after, aim, mudguards, bumpers, bonnet latch, scoops, and edges that can be touched.',
  shape,
  holdPoints: [
    {
      id: 'outside-as-received',
      shows: 'Front, rear and both sides with the lamps lit and a tape at each lamp and bumper',
      level: 'record',
      during: 'as-received',
      before: 'dismantled',
      parts: ['front', 'rear', 'left', 'right'],
    },
    {
      id: 'edges-bare',
      shows: 'Added panels, edges and fixings before paint',
      level: 'record',
      during: 'assembled',
      before: 'painted',
      serves: 'lights-and-body.edges-shown',
    },
    {
      id: 'lamps-lit',
      shows: 'Front and rear with each lamp lit, at the finished ride height',
      level: 'record',
      during: 'tested',
      before: 'finished',
      parts: ['front', 'rear'],
      serves: 'lights-and-body.lamps-shown',
    },
  ],
  cautions: ['stands', 'electrical'],
  answers: (d) => ({
    'lights-and-body.lamps': lamps(d),
    'lights-and-body.bumper': allOf(d.bumpers?.map((b) => ({ name: b.end ?? b.id, word: b.kept }))),
    'lights-and-body.bonnet-latch':
      d['bonnet-opens'] && d['bonnet-opens'] !== 'front'
        ? { answer: 'not applicable', because: 'the bonnet does not open at the front', from: ['bonnet-opens'] }
        : d['second-latch'] && { answer: d['second-latch'], from: ['second-latch'] },
    'lights-and-body.bonnet-pins': d['bonnet-pins'] && { answer: d['bonnet-pins'], from: ['bonnet-pins'] },
    'lights-and-body.bonnet-scoop':
      d.scoop === 'none'
        ? { answer: 'not applicable', because: 'no scoop on the bonnet', from: ['scoop'] }
        : d.scoop && { answer: d.scoop === 'safe' ? 'yes' : 'no', from: ['scoop'] },
    'lights-and-body.guard-cover': cover(d),
    'body.chassis-number': d['chassis-number'] && {
      answer: d['chassis-number'] === 'other' ? 'no' : 'yes',
      because: d['chassis-number'] === 'agreed' ? 'the authority agreed' : undefined,
      from: ['chassis-number'],
    },
  }),
  states: (d) => ({ 'street-rod': d['street-rod'] }),
  evaluate: ({ data }, work) => {
    lampPlaces(data, work);
    const dark = data.lamps?.find((l) => l.lamp === 'reversing' && l.works === 'no');
    if (dark)
      work.derive('gearbox.reversing-lamp', {
        answer: 'no',
        because: `${nameOf(dark)} does not light as it should`,
        from: ['lamps', dark.id, 'works'],
      });
    aim(data, work);
    edges(data, work);
    for (const b of data.bumpers ?? [])
      if (b['height-was'] && b['height-now'])
        change(
          `bumper-${b.id}`,
          work.take(b['height-was'], 'bumpers', b.id, 'height-was'),
          work.take(b['height-now'], 'bumpers', b.id, 'height-now'),
          work,
        );
    if (data['width-was'] && data['width-now'])
      change('width', work.take(data['width-was'], 'width-was'), work.take(data['width-now'], 'width-now'), work);
  },
});

const change = (subject: string, before: ReturnType<Work['take']>, after: ReturnType<Work['take']>, work: Work) =>
  work.sheet(lengthDifference, subject, { before, after });

/** No with the names of those that are not, yes when each is, silent while one is open. */
function allOf(words: readonly { name: string; word: 'yes' | 'no' | undefined }[] | undefined): Answer | undefined {
  const not = words?.filter((w) => w.word === 'no').map((w) => w.name) ?? [];
  if (not.length > 0) return { answer: 'no', because: not.join(', ') };
  if (!words?.length || words.some((w) => !w.word)) return undefined;
  return { answer: 'yes', because: words.map((w) => w.name).join(', ') };
}

const nameOf = (l: NonNullable<Lights['lamps']>[number]) => [l.lamp ?? l.id, l.side].filter(Boolean).join(' ');

function lamps(d: Lights): Answer | undefined {
  const working = allOf(d.lamps?.map((l) => ({ name: nameOf(l), word: l.works })));
  const dark = working?.answer === 'no' ? working.because : undefined;
  const early = d.aim?.['after-ride-height'] === 'no' ? 'not aimed after the ride height was set' : undefined;
  if (dark || early) return { answer: 'no', because: [dark, early].filter(Boolean).join('; ') };
  return d.aim?.['after-ride-height'] ? working : undefined;
}

function cover({ guards }: Lights): Answer | undefined {
  if (!guards?.length || guards.some((g) => !g.uncovered || !g.ahead || !g.behind)) return undefined;
  const behind = (written: string): string =>
    `${written.replace(/^[-−]/, '')} ${/^[-−]/.test(written) ? 'below' : 'above'}`;
  return {
    answer: guards
      .map(
        (g) =>
          `${g.wheel ?? g.id}: ${g.uncovered!.quantity.text} of tread uncovered, from ${g.ahead!.quantity.text} ahead of the vertical to ${behind(g.behind!.quantity.text)} the level of the axle behind`,
      )
      .join('; '),
  };
}

/** Lamps whose height the codes ask for, with the item of each. */
const heightItems: Readonly<Partial<Record<string, string>>> = {
  dipped: 'lights-and-body.lamp-height',
  turn: 'lights-and-body.lamp-height-turn',
  rear: 'lights-and-body.lamp-height-rear',
  stop: 'lights-and-body.lamp-height-rear',
};

/** Each lamp at its new place, and how far it moved. Figures differ between kinds of lamp; those of the others are recorded. */
function lampPlaces({ lamps: all = [] }: Lights, work: Work): void {
  for (const lamp of all) {
    const at = (when: 'was' | 'now', what: 'lower' | 'upper' | 'from-side') =>
      work.take(lamp[when]?.[what], 'lamps', lamp.id, when, what);
    if (lamp.was?.lower && lamp.now?.lower) change(`lamp-${lamp.id}`, at('was', 'lower'), at('now', 'lower'), work);
    const item = heightItems[lamp.lamp ?? ''];
    if (!item) continue;
    for (const edge of ['lower', 'upper'] as const) work.compare(item, `${lamp.id}-${edge}`, at('now', edge));
    if (lamp.lamp !== 'stop') work.compare('lights-and-body.lamp-side', lamp.id, at('now', 'from-side'));
  }
  const compared = new Set(all.map((l) => heightItems[l.lamp ?? '']));
  for (const item of new Set(Object.values(heightItems)))
    if (!compared.has(item)) work.compare(item!, '', work.lacks('lamps'));
  if (![...compared].some((item) => item)) work.compare('lights-and-body.lamp-side', '', work.lacks('lamps'));
}

function aim({ aim: beams }: Lights, work: Work): void {
  for (const side of ['left', 'right'] as const)
    work.compare('lights-and-body.aim', side, work.take(beams?.[side], 'aim', side), {
      limit: makerLimit(beams?.maker, '%'),
    });
}

/** Guards, ends of bumpers and added edges by the radius that a hand meets. */
function edges({ guards = [], bumpers = [], edges: added = [] }: Lights, work: Work): void {
  if (guards.length === 0) work.compare('lights-and-body.guard-radius', '', work.lacks('guards'));
  for (const g of guards)
    work.compare('lights-and-body.guard-radius', g.id, work.take(g.radius, 'guards', g.id, 'radius'));
  if (bumpers.length + added.length === 0) work.compare('lights-and-body.edge-radius', '', work.lacks('edges'));
  for (const b of bumpers)
    work.compare('lights-and-body.edge-radius', `bumper-${b.id}`, work.take(b.ends, 'bumpers', b.id, 'ends'));
  for (const e of added)
    work.compare('lights-and-body.edge-radius', `edge-${e.id}`, work.take(e.radius, 'edges', e.id, 'radius'));
}
