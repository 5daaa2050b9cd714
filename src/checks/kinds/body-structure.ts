import { z } from 'zod';
import { equivalentStiffness } from '../../calc/sections/equivalent-stiffness.js';
import { equivalentStrength } from '../../calc/sections/equivalent-strength.js';
import { thicknessRatio } from '../../calc/sections/thickness-ratio.js';
import { readSection } from '../../project/designations/section.js';
import { readSteel } from '../../project/designations/steel.js';
import { choice, designation, idOf, onDay, quantity, text, yesNo } from '../../project/fields.js';
import { type Data, kind } from '../engine/kind.js';
import type { Maybe, Work } from '../engine/work.js';
import { given } from './parts/maybe.js';
import { memberProperties, type Properties } from './parts/member.js';
import { examineWeld, weldsField } from './parts/weld.js';

const member = (state: string) =>
  z
    .strictObject({
      section: designation(readSection, `section ${state}, with its measured sizes`, 'RHS 50x30x2.5 (EN 10219)'),
      steel: designation(readSteel, `steel ${state}; \`unknown\` opens a question`, 'S355'),
      wall: quantity('mm', `wall or sheet thickness ${state}`, {
        how: 'caliper on a cut edge cleaned to bright metal, or ultrasonic gauge, three places',
        typical: '2.48 mm',
        usual: [0.6, 12],
      }),
      loss: quantity('mm', `wall lost to corrosion, ${state}`, {
        measuredAs: 'thickness',
        how: 'original thickness less the thinnest place after cleaning',
        typical: '0.2 mm',
      }),
      on: onDay('day on which it was measured'),
      by: text('who measured it'),
    })
    .optional()
    .meta({ form: 'block', says: `the member ${state}` });

const shape = {
  pieces: z
    .array(
      z.strictObject({
        id: idOf,
        role: choice(
          {
            replacement: 'takes the place of an original member',
            doubler: 'laid on an original member',
            bracket: 'new bracket or mount',
          },
          'what the piece does',
        ),
        was: member('as it came'),
        planned: member('as planned'),
        now: member('as built'),
        'joined-to': quantity('mm', 'thickness of the original metal that it is welded to', {
          how: 'caliper on a cut edge or ultrasonic gauge, cleaned to bright metal',
          typical: '1.2 mm',
          usual: [0.6, 12],
        }),
        welds: weldsField,
      }),
    )
    .optional()
    .meta({ form: 'list', says: 'pieces let in, laid on or welded to the body' }),
  'structure-cut': yesNo('was a roof, floor, chassis, frame or inner panel cut, or a member replaced'),
};
type Body = Data<typeof shape>;
type Piece = NonNullable<Body['pieces']>[number];

const eachPiece = (d: Body) => (d.pieces ?? []).map((p) => p.id);
const replaced = (d: Body) => (d.pieces ?? []).filter((p) => p.role === 'replacement').map((p) => p.id);

/** Each weld; of a piece that lists none, the piece. A weld whose id another piece has too is named with its piece. */
function eachWeld(d: Body): string[] {
  const all = (d.pieces ?? []).flatMap((p) => (p.welds ?? []).map((w) => w.id));
  const isAlone = (id: string) => all.filter((other) => other === id).length === 1;
  return (d.pieces ?? []).flatMap((p) =>
    p.welds?.length ? p.welds.map((w) => (isAlone(w.id) ? w.id : `${p.id}/${w.id}`)) : [p.id],
  );
}

/** Body and chassis members cut, replaced, reinforced or welded to. */
export const bodyStructure = kind({
  id: 'body-structure',
  title: 'Body structure',
  covers:
    'Chassis, subframe, crossmember and body members that were cut, replaced, reinforced or welded to: thickness against the original, equivalence in stiffness and strength, welds.',
  shape,
  holdPoints: [
    {
      id: 'member-as-received',
      shows: 'The original member with a scale, before it is cut',
      level: 'record',
      during: 'as-received',
      before: 'cut',
      parts: replaced,
      serves: 'body.before-cut',
    },
    {
      id: 'cut-edge',
      shows: 'The cut edge with a caliper on the wall',
      level: 'record',
      during: 'cut',
      before: 'welded',
    },
    {
      id: 'tacked',
      shows: 'Each new piece tacked, square and in place',
      level: 'hold',
      during: 'tacked',
      before: 'welded',
      parts: eachPiece,
      serves: 'body.tacked',
    },
    {
      id: 'welds-bare',
      shows: 'All welds bare, before grinding and paint',
      level: 'witness',
      during: 'welded',
      before: 'painted',
      parts: eachWeld,
      serves: 'body.welds-shown',
    },
  ],
  cautions: ['stands', 'welding', 'structure', 'fuel'],
  proofParts: (d) => ({ 'body.material-paper': eachPiece(d) }),
  answers: (d) => ({
    'body.structure-cut': d['structure-cut'] && { answer: d['structure-cut'], from: ['structure-cut'] },
  }),
  states: (d) => ({ 'structure-cut': d['structure-cut'] }),
  evaluate: ({ data }, work) => {
    const pieces = data.pieces ?? [];
    if (pieces.length === 0) work.compare('body.thickness-ratio', '', work.lacks('pieces'));
    for (const piece of pieces) examinePiece(piece, work);
    steelKnown(pieces, work);
  },
});

function examinePiece(piece: Piece, work: Work): void {
  const state = piece.now ? 'now' : 'planned';
  const path = (part: string) => ['pieces', piece.id, part];
  const was = memberProperties(piece.was, `${piece.id}/was`, path('was'), work);
  const now = memberProperties(piece[state], `${piece.id}/${state}`, path(state), work);
  const parent = piece['joined-to'] ? work.take(piece['joined-to'], ...path('joined-to')) : was.wall;
  const ratio = work.sheet(thicknessRatio, piece.id, { original: parent, replacement: now.wall });
  work.compare('body.thickness-ratio', piece.id, ratio.get('ratio'));
  if (piece.role !== 'bracket') equivalence(piece, was, now, state, work);
  for (const one of piece.welds ?? [])
    examineWeld(
      one,
      `${piece.id}-${one.id}`,
      ['pieces', piece.id, 'welds', one.id],
      { thickness: now.wall, ...(piece['joined-to'] ? { other: parent } : {}) },
      work,
    );
}

/** A replacement is shown to be as stiff and as strong as the original; a doubler adds to it and is compared alike. */
function equivalence(piece: Piece, was: Properties, now: Properties, state: 'now' | 'planned', work: Work): void {
  const stiffness = work.sheet(equivalentStiffness, piece.id, {
    originalA: was.get('A'),
    originalIx: was.get('Ix'),
    originalIy: was.get('Iy'),
    originalJ: was.get('J'),
    replacementA: now.get('A'),
    replacementIx: now.get('Ix'),
    replacementIy: now.get('Iy'),
    replacementJ: now.get('J'),
  });
  for (const name of ['bendingX', 'bendingY', 'torsion', 'axial'] as const)
    work.compare('body.equivalence-stiffness', `${piece.id}-${words[name]}`, stiffness.get(name));
  const strength = work.sheet(equivalentStrength, piece.id, {
    originalA: was.get('A'),
    originalZx: was.get('Zx'),
    originalZy: was.get('Zy'),
    originalYield: yieldOf(piece, 'was', work),
    replacementA: now.get('A'),
    replacementZx: now.get('Zx'),
    replacementZy: now.get('Zy'),
    replacementYield: yieldOf(piece, state, work),
  });
  for (const name of ['bendingX', 'bendingY', 'axial'] as const)
    work.compare('body.equivalence-strength', `${piece.id}-${words[name]}`, strength.get(name));
}

const words = { bendingX: 'bending-x', bendingY: 'bending-y', torsion: 'torsion', axial: 'axial' } as const;

function yieldOf(piece: Piece, state: 'was' | 'planned' | 'now', work: Work): Maybe {
  const steel = piece[state]?.steel;
  if (!steel) return work.lacks('pieces', piece.id, state, 'steel');
  if (steel.known === 'unknown' || steel.yield === undefined)
    return {
      missing: [],
      reason: `the steel of the member (${state}) is not known; it may be high-strength or press-hardened`,
    };
  return given(
    steel.yield,
    'MPa',
    `${steel.written}, ${steel.known === 'certificate' ? 'from its certificate' : 'least yield strength of the grade'}`,
  );
}

function steelKnown(pieces: readonly Piece[], work: Work): void {
  const unknown = pieces.filter(
    (p) => p.role !== 'bracket' && (p.was?.steel === undefined || p.was.steel.known === 'unknown'),
  );
  if (pieces.length === 0) return;
  if (unknown.length === 0)
    return work.state('body.steel-known', '', 'met', 'the steel of every original member is named', {
      answer: 'yes',
    });
  const [first] = unknown;
  work.state(
    'body.steel-known',
    '',
    'missing',
    `the steel of the original is not known: ${unknown.map((p) => p.id).join(', ')}; it may be high-strength or press-hardened`,
    {
      // Only against an answer: left alone it is a question.
      ...(work.isAnswered('body.steel-known') && unknown.some((p) => p.was?.steel) ? { answer: 'no' } : {}),
      todo: 'have it identified (maker’s repair data, hardness test) and ask the certifier how to assess it',
      path: ['pieces', first!.id, 'was', 'steel'],
    },
  );
}
