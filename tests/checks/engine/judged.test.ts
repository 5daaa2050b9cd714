import { describe, expect, it } from 'vitest';
import { exactly } from '../../../src/calc/value.js';
import { type Finding, isOpen } from '../../../src/checks/engine/finding.js';
import { judged, judgementProblems, judgementsOf, judgementText } from '../../../src/checks/engine/judgements.js';
import { buildOf, findingOf, noteOf } from './made.js';

/** A person's word on a finding, a photo or a document. Names and figures are made up. */

const people = 'certifier: { name: R. Ansell }\npeople: [{ id: JO, name: J. Okoro, role: builder }]';
const ratio = findingOf({
  outcome: 'does-not-conform',
  item: 'body.ratio',
  subject: 'cross',
  measured: exactly(0.00248, 'mm'),
  limit: { document: 'a text', basis: 'published', unit: 'mm' },
});
const answer = findingOf({ outcome: 'answered', item: 'body.joint', answer: 'fillets all round', form: 'answer' });
const shown = findingOf({
  outcome: 'seen',
  item: 'body.welds',
  form: 'evidence',
  proof: [
    { part: 'left', by: [{ is: 'photo', note: '010-a', file: 'photos/weld.jpg' }] },
    {
      part: 'right',
      by: [
        { is: 'photo', note: '010-a', file: 'photos/weld.jpg' },
        { is: 'paper', note: '010-a', file: 'papers/report.pdf' },
      ],
    },
  ],
});
const other = findingOf({
  outcome: 'not-shown',
  note: '020-b',
  item: 'body.welds',
  subject: 'sill',
  says: 'no  photo',
});
const findings = [ratio, answer, shown, other];

const files = `photos: [{ file: photos/weld.jpg, shows: left weld bare }, { file: photos/other.jpg, shows: another }]
papers: [{ file: papers/report.pdf, shows: crack test }, { file: papers/letter.pdf, shows: letter of the visit }]`;
const noteWith = (entry: string) =>
  noteOf(
    '010-a',
    `title: Tried\njudgements: [{ id: one, words: it will do here., basis: seen, on: 2026-03-15, ${entry} }]\n${files}`,
  );
const build = (entry: string) =>
  buildOf([noteOf('005-z', 'papers: [{ file: papers/old.pdf, shows: old report }]'), noteWith(entry)], people);
// Made-up digests: one for each file by its name.
const digests = new Map([
  ['photos/weld.jpg', 'a'.repeat(64)],
  ['photos/other.jpg', 'b'.repeat(64)],
  ['papers/report.pdf', 'c'.repeat(64)],
]);
const digestOf = (path: string) => digests.get(path);
const given = (entry: string) => judgementsOf(build(entry), findings, digestOf);
const one = (entry: string) => {
  const [found, ...more] = given(entry);
  expect(more).toEqual([]);
  return found!;
};
const about = (text: string, of = 'x', by = 'JO') => `about: ${text}, of: '${of}', by: ${by}`;
const allFiles = `sha256: [${[...digests.values()].map((d) => d.slice(0, 12)).join(', ')}]`;

describe('a judgement', () => {
  it('says who gave it, on what it rests and what was judged', () => {
    expect(one(`${about('body.ratio cross', '2.48 mm', 'R. Ansell')}, letter: letter`)).toEqual({
      about: { is: 'finding', id: ratio.id },
      judgement: {
        id: '010-a/one',
        words: 'it will do here.',
        basis: 'seen',
        by: 'R. Ansell',
        role: 'certifying engineer',
        on: '2026-03-15',
        letter: 'letter',
        of: '2.48 mm',
        lapsed: undefined,
        place: expect.objectContaining({ line: 3, path: 'judgements.one' }),
      },
    });
    for (const by of ['JO', 'J. Okoro'])
      expect(one(about('body.joint', 'x', by)).judgement).toMatchObject({ by: 'J. Okoro', role: 'builder' });
  });

  it.each([
    ['body.ratio cross', { is: 'finding', id: '010-a/cross/body.ratio' }],
    ['010-a/cross/body.ratio', { is: 'finding', id: '010-a/cross/body.ratio' }],
    ['body.welds sill', { is: 'finding', id: '020-b/sill/body.welds' }],
    ['body.welds', { is: 'finding', id: '010-a/body.welds' }],
    ['photo weld', { is: 'photo', note: '010-a', file: 'photos/weld.jpg' }],
    ['paper report', { is: 'paper', note: '010-a', file: 'papers/report.pdf' }],
    ['paper old', { is: 'paper', note: '005-z', file: 'papers/old.pdf' }],
  ])('about %s', (text, expected) => expect(one(about(text)).about).toEqual(expected));

  it('of the own note comes before one of another note', () => {
    const twin = { ...answer, note: '005-z', id: '005-z/body.joint' };
    const [found] = judgementsOf(build(about('body.joint')), [twin, ...findings], digestOf);
    expect(found!.about).toEqual({ is: 'finding', id: '010-a/body.joint' });
  });

  it.each([
    about('body.rati cross'),
    about('body.ratio'),
    about('photo wel'),
    about('photo letter'),
    about('paper weld'),
    about('body.joint', 'x', 'A. Nother'),
    about('nophoto weld'),
  ])('that leads nowhere is none: %s', (entry) => expect(given(entry)).toEqual([]));

  it('is of nobody where build.md names nobody', () => {
    expect(judgementsOf(buildOf([noteWith(about('body.joint'))]), findings, digestOf)).toEqual([]);
    expect(judgementsOf(buildOf([noteOf('010-a')], people), findings, digestOf)).toEqual([]);
  });
});

describe('what was judged, against what is there now', () => {
  const lapsed = (text: string, of: string, all: readonly Finding[] = findings) =>
    judgementsOf(build(`${about(text, of)}, ${allFiles}`), all, digestOf)[0]!.judgement.lapsed;

  it.each([
    ['2.48 mm', undefined],
    ['2.5 mm', undefined],
    ['2.53 mm', 'was given of 2.53 mm, now 2.48 mm'],
    ['2.47 mm', 'was given of 2.47 mm, now 2.48 mm'],
    ['2.475 mm', 'was given of 2.475 mm, now 2.48 mm'],
    ['2.48 kg', 'was given of 2.48 kg, now 2.48 mm'],
    ['as it is', 'was given of as it is, now 2.48 mm'],
  ])('a value of 2.48 mm, judged as %s', (of, expected) => expect(lapsed('body.ratio cross', of)).toBe(expected));

  it('a value holds to half the last digit, both ways', () => {
    const now = (mm: number) =>
      lapsed('body.ratio cross', '2.5 mm', [{ ...ratio, measured: exactly(mm / 1000, 'mm') }]);
    expect([2.45, 2.55].map(now)).toEqual([undefined, undefined]);
    expect([2.4499, 2.5501].map((mm) => now(mm) !== undefined)).toEqual([true, true]);
  });

  it('a value without a limit is read in its own unit', () => {
    expect(lapsed('body.ratio cross', '2.48 mm', [{ ...ratio, limit: undefined }])).toBeUndefined();
    expect(
      lapsed('body.ratio cross', '2.48', [{ ...ratio, measured: exactly(2.48, '1'), limit: undefined }]),
    ).toBeUndefined();
  });

  it('a limit without a value is told in words', () => {
    expect(lapsed('body.ratio cross', 'says of body.ratio', [{ ...ratio, measured: undefined }])).toBeUndefined();
    expect(lapsed('body.ratio cross', '2.48 mm', [{ ...ratio, measured: undefined }])).toBe(
      'was given of 2.48 mm, now says of body.ratio',
    );
  });

  it.each([
    ['body.joint', 'Fillets  all round', undefined],
    ['body.joint', ' fillets all round ', undefined],
    ['body.joint', 'butt welds', 'was given of butt welds, now fillets all round'],
    ['body.welds', 'weld.jpg, report.pdf', undefined],
    ['body.welds', 'weld.jpg', 'was given of weld.jpg, now weld.jpg, report.pdf'],
    ['body.welds sill', 'no photo', undefined],
    ['photo weld', 'left weld bare', undefined],
    ['photo weld', 'right weld bare', 'was given of right weld bare, now left weld bare'],
    ['photo other', 'another', undefined],
    ['paper report', 'Crack test', undefined],
    ['paper report', 'mill sheet', 'was given of mill sheet, now crack test'],
  ])('%s judged as `%s`', (text, of, expected) => expect(lapsed(text, of)).toBe(expected));
});

describe('the files that were judged, against those that are there now', () => {
  const [weld, , report] = [...digests.values()] as [string, string, string];
  const lapsed = (text: string, of: string, sha256?: string) =>
    one(`${about(text, of)}${sha256 === undefined ? '' : `, sha256: ${sha256}`}`).judgement.lapsed;
  const both = ['body.welds', 'weld.jpg, report.pdf'] as const;

  it('are known by a whole digest or by its first twelve digits', () => {
    for (const digits of [weld, weld.slice(0, 12), `[${report}, ${weld.slice(0, 20)}]`])
      expect(lapsed('photo weld', 'left weld bare', digits)).toBeUndefined();
    expect(lapsed('paper report', 'crack test', report)).toBeUndefined();
    expect(lapsed(...both, `[${weld}, ${report}]`)).toBeUndefined();
  });
  it('are others under the same name', () => {
    const another = 'is another file than the one that was judged';
    expect(lapsed('photo weld', 'left weld bare', report)).toBe(`weld.jpg ${another}`);
    expect(lapsed('photo weld', 'left weld bare', `${weld.slice(0, 20)}0`)).toBe(`weld.jpg ${another}`);
    expect(lapsed('paper report', 'crack test', weld)).toBe(`report.pdf ${another}`);
    // Each file that shows the finding has to be one that was judged.
    expect(lapsed(...both, weld)).toBe(`report.pdf ${another}`);
    expect(lapsed(...both, report)).toBe(`weld.jpg ${another}`);
  });
  it('have to be said', () =>
    expect(lapsed('photo weld', 'left weld bare')).toBe(
      'it does not say which file was judged: state `sha256: aaaaaaaaaaaa` of weld.jpg',
    ));
  it('have to be there', () =>
    expect(lapsed('paper old', 'old report', weld)).toBe(
      'old.pdf could not be compared with the file that was judged',
    ));
  it('are none where an answer or a value was judged', () => {
    expect(lapsed('body.joint', 'fillets all round')).toBeUndefined();
    expect(lapsed('body.ratio cross', '2.48 mm')).toBeUndefined();
  });
});

describe('a judgement of build.md', () => {
  const inBuild = (about: string, by = 'JO') =>
    buildOf(
      [noteOf('005-z', 'papers: [{ file: papers/old.pdf, shows: old report }]'), noteOf('010-a', `title: A\n${files}`)],
      `${people}\njudgements: [{ id: one, about: ${about}, of: x, words: it will do here, basis: seen, by: ${by}, on: 2026-03-15 }]`,
    );
  it.each([
    ['body.ratio cross', { is: 'finding', id: ratio.id }],
    ['010-a/body.joint', { is: 'finding', id: answer.id }],
    ['photo weld', { is: 'photo', note: '010-a', file: 'photos/weld.jpg' }],
    ['paper report', { is: 'paper', note: '010-a', file: 'papers/report.pdf' }],
  ])('is about any note: %s', (text, expected) => {
    const [found] = judgementsOf(inBuild(text), findings, digestOf);
    expect(found).toMatchObject({
      about: expected,
      judgement: { id: 'build/one', place: { file: 'build.md', line: 4 } },
    });
    expect(judgementProblems(inBuild(text), findings)).toEqual([]);
  });
  it('that leads nowhere is a problem of build.md', () => {
    expect(judgementsOf(inBuild('body.rati cross'), findings, digestOf)).toEqual([]);
    expect(judgementProblems(inBuild('body.rati cross'), findings)).toMatchObject([
      { code: 'reference-missing', file: 'build.md', line: 4, hint: 'did you mean `body.ratio cross`?' },
    ]);
    expect(judgementProblems(inBuild('body.joint', 'A. Nother'), findings)).toMatchObject([{ found: '`A. Nother`' }]);
  });
});

describe('findings with their judgements', () => {
  const withAll = (entry: string) => judged(findings, given(entry));
  it('keep their outcomes, and stay open', () => {
    const after = withAll(about('body.ratio cross', '2.48 mm', 'R. Ansell'));
    expect(after.map((f) => [f.outcome, isOpen(f)])).toEqual(findings.map((f) => [f.outcome, isOpen(f)]));
    expect(after[0]!.judgements).toHaveLength(1);
    expect(after.slice(1)).toEqual(findings.slice(1));
  });
  it('carry those on what shows them', () => {
    for (const text of ['photo weld', 'paper report'])
      expect(withAll(about(text)).map((f) => f.judgements?.length ?? 0)).toEqual([0, 0, 1, 0]);
    for (const text of ['photo other', 'paper letter', 'paper old']) expect(withAll(about(text))).toEqual(findings);
  });
  it('do not carry one on a file of the same name of another note or sort', () => {
    const on = (over: object) =>
      judged(
        [shown],
        [
          {
            ...one(about('photo weld')),
            about: { is: 'photo', note: '010-a', file: 'photos/weld.jpg', ...over } as never,
          },
        ],
      );
    expect(on({})[0]!.judgements).toHaveLength(1);
    expect(on({ note: '020-b' })).toEqual([shown]);
    expect(on({ is: 'paper' })).toEqual([shown]);
  });
  it('are marked where one lapsed, and only then', () => {
    expect(withAll(about('body.joint', 'butt welds'))[1]!.marks).toEqual([
      'judgement lapsed: was given of butt welds, now fillets all round',
    ]);
    expect(withAll(about('body.joint', 'fillets all round'))[1]!.marks).toEqual([]);
    const marked = judged([{ ...answer, marks: ['a mark'] }], given(about('body.joint', 'butt')));
    expect(marked[0]!.marks).toEqual(['a mark', 'judgement lapsed: was given of butt, now fillets all round']);
  });
  it('are the same where nothing was judged', () => {
    expect(judged(findings, [])).toEqual(findings);
    expect(judged(findings, [])).not.toBe(findings);
  });
});

describe('a judgement that cannot be read', () => {
  const problems = (entry: string) => judgementProblems(build(entry), findings);
  it('is none where all leads somewhere', () => {
    expect(problems(`${about('body.ratio cross')}, letter: letter.pdf`)).toEqual([]);
    expect(problems(about('paper report'))).toEqual([]);
    expect(judgementProblems(buildOf([noteOf('010-a')]), findings)).toEqual([]);
  });
  it('tells where it leads nowhere, with the nearest that there is', () => {
    expect(problems(about('body.rati cross'))).toMatchObject([
      {
        code: 'reference-missing',
        file: 'notes/010-a.md',
        line: 3,
        found: '`body.rati cross`',
        hint: 'did you mean `body.ratio cross`?',
        source: expect.stringContaining('judgements:'),
      },
    ]);
    expect(problems(about('020-b/sill/body.weld'))[0]!.hint).toBe('did you mean `020-b/sill/body.welds`?');
    expect(problems(about(`x${'y'.repeat(100)}`))[0]!.found).toBe(`\`x${'y'.repeat(79)}\``);
  });
  it('tells who is not known', () => {
    const hint = (by: string) => problems(about('body.joint', 'x', by)).map((p) => [p.expected, p.hint]);
    expect(hint('R. Ansel')).toEqual([['a person of build.md or the certifier', 'did you mean `R. Ansell`?']]);
    expect(hint('J. Okor')).toEqual([['a person of build.md or the certifier', 'did you mean `J. Okoro`?']]);
    expect(judgementProblems(buildOf([noteWith(about('body.joint'))]), findings)).toHaveLength(1);
  });
  it('tells a letter that is not there', () => {
    expect(problems(`${about('body.joint')}, letter: leter.pdf`)).toMatchObject([
      { found: '`leter.pdf`', expected: 'a document of this build', hint: 'did you mean `letter.pdf`?' },
    ]);
    expect(problems(`${about('body.joint')}, letter: weld.jpg`)).toHaveLength(1);
    expect(problems(`${about('body.joint')}, letter: old.pdf`)).toEqual([]);
  });
  it('tells each of them', () => {
    expect(problems(`${about('nothing', 'x', 'A. Nother')}, letter: none`).map((p) => p.found)).toEqual([
      '`nothing`',
      '`A. Nother`',
      '`none`',
    ]);
  });
});

describe('the words of a judgement', () => {
  const words = (over: object = {}) =>
    judgementText({ ...one(about('body.joint', 'fillets', 'R. Ansell')).judgement, lapsed: undefined, ...over });
  it('name all that counts', () => {
    expect(words()).toBe(
      'judged by R. Ansell, certifying engineer, on 2026-03-15, as seen: it will do here (of fillets)',
    );
    expect(words({ basis: 'calculated', letter: 'letter.pdf' })).toBe(
      'judged by R. Ansell, certifying engineer, on 2026-03-15, by calculation: it will do here (of fillets; letter.pdf)',
    );
    expect(words({ basis: 'document', words: 'good. so it is', lapsed: 'changed' })).toBe(
      'lapsed: judged by R. Ansell, certifying engineer, on 2026-03-15, by a document: good. so it is (of fillets)',
    );
  });
});
