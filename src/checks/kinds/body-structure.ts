import { thicknessRatio } from '../../calc/sections/thickness-ratio.js';

import { showQuantity } from '../../units/show.js';
import { kind } from '../engine/kind.js';
import type { Work } from '../engine/work.js';
import { type Body, type Piece, shape, stateOf } from './body-structure-fields.js';
import { examineEquivalence } from './parts/equivalence.js';
import { memberProperties } from './parts/member.js';
import { asksWelds, examineWeld } from './parts/weld.js';

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
  holds: asks,
  cautions: ['stands', 'welding', 'structure', 'fuel'],
  proofParts: (d) => ({ 'body.material-paper': eachPiece(d) }),
  answers: (d) => ({
    'body.structure-cut': d['structure-cut'] && { answer: d['structure-cut'], from: ['structure-cut'] },
  }),
  states: (d) => ({ 'structure-cut': d['structure-cut'] }),
  raises: asks,
  evaluate: ({ data }, work) => {
    const pieces = data.pieces ?? [];
    if (pieces.length === 0) work.compare('body.thickness-ratio', '', work.lacks('pieces'));
    for (const piece of pieces) examinePiece(piece, data, work);
    steelKnown(pieces, work);
    platesLaidOn(pieces, work);
  },
});

/** What is asked about welds where there are any, and about plates where one was laid on. */
function asks(what: string, data: Body): boolean {
  const { pieces = [], answers } = data;
  if (what === 'body.fish-plate' && answers?.[what] === undefined)
    return pieces.length === 0 || pieces.some((p) => p.role === 'doubler');
  const listed = pieces.flatMap((p) => {
    const state = p[stateOf(p)];
    const shape = state?.section?.shape;
    const beside = [
      p['joined-to']?.quantity.si,
      state?.wall?.quantity.si ?? (shape && 'wall' in shape ? shape.wall : undefined),
    ];
    return (p.welds ?? []).map((weld) => ({ weld, beside }));
  });
  return asksWelds(what, data, listed);
}

function examinePiece(piece: Piece, data: Body, work: Work): void {
  const state = stateOf(piece);
  const path = (part: string) => ['pieces', piece.id, part];
  const was = memberProperties(piece.was, `${piece.id}/was`, path('was'), work, 'made');
  const now = memberProperties(piece[state], `${piece.id}/${state}`, path(state), work);
  const joined = piece['joined-to'] && work.take(piece['joined-to'], ...path('joined-to'));
  const ratio = work.sheet(thicknessRatio, piece.id, { original: joined ?? was.kept, replacement: now.thickest });
  work.compare('body.thickness-ratio', piece.id, ratio.get('ratio'));
  if (piece.role !== 'bracket' && piece.role !== 'doubler') examineEquivalence(piece, was, now, work);
  for (const one of piece.welds ?? [])
    examineWeld(
      one,
      `${piece.id}-${one.id}`,
      ['pieces', piece.id, 'welds', one.id],
      { thickness: now.wall, ...(joined ? { other: joined } : {}), coupons: data.coupons },
      work,
    );
}

/** A plate laid on replaces nothing: what is recorded is its thickness, how it is welded and how it ends. */
function platesLaidOn(pieces: readonly Piece[], work: Work): void {
  const plates = pieces.filter((p) => p.role === 'doubler');
  if (plates.length === 0 || work.isAnswered('body.fish-plate')) return;
  const lacking = plates.flatMap((p) =>
    (['weld-pattern', 'ends', 'joined-to'] as const)
      .filter((field) => p[field] === undefined)
      .map((field) => ['pieces', p.id, field]),
  );
  const [first] = lacking;
  if (first)
    return work.state('body.fish-plate', '', 'missing', 'not stated for every plate laid on', {
      todo: `fill in ${lacking.map((path) => path.join('.')).join(', ')}`,
      path: first,
    });
  const answer = plates.map(plateWords).join('; ');
  work.state('body.fish-plate', '', 'met', `stated: ${answer}; recorded, not judged`, { answer });
}

function plateWords(piece: Piece): string {
  const { wall, section } = piece[stateOf(piece)] ?? {};
  const under = piece['joined-to']!.quantity;
  const thickness = wall?.quantity.text ?? section?.written ?? 'plate';
  return `${piece.id} ${thickness} on ${showQuantity(under.si, 'mm')}, ${piece['weld-pattern']}, ends ${piece.ends}`;
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
  const [first] = unknown.filter((p) => p.was?.hardness === undefined);
  if (!first) {
    const answer = unknown
      .map((p) => `${p.id} ${p.was!.hardness!.quantity.text} ${p.was!['hardness-scale'] ?? ''}`.trim())
      .join(', ');
    return work.state('body.steel-known', '', 'unclear', `by hardness only: ${answer}; the certifier decides`, {
      answer,
    });
  }
  work.state(
    'body.steel-known',
    '',
    'missing',
    `the steel of the original is not known: ${unknown.map((p) => p.id).join(', ')}; it may be high-strength or press-hardened`,
    {
      // Only against an answer: left alone it is a question.
      ...(work.isAnswered('body.steel-known') && unknown.some((p) => p.was?.steel) ? { answer: 'no' } : {}),
      todo: 'have it identified (maker’s repair data, hardness test) and ask the certifier how to assess it',
      path: ['pieces', first.id, 'was', 'steel'],
    },
  );
}
