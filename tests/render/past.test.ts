import { HtmlValidate } from 'html-validate';
import { beforeAll, describe, expect, it } from 'vitest';
import { load } from '../../src/app/load.js';
import { documentHistory } from '../../src/app/publish/document-history.js';
import { identify } from '../../src/app/publish/identity.js';
import { standingOf } from '../../src/app/repository/standing.js';
import { createTag } from '../../src/history/git/create-tag.js';
import { compose } from '../../src/render/compose.js';
import { htmlPage } from '../../src/render/page.js';
import { printable } from '../../src/render/printable.js';
import { buildFile, floorNote } from '../history/invented.js';
import { makeHistory, type Step } from '../history/make-history.js';
import { configure, jo, temporary } from '../history/throwaway.js';

const note = 'builds/t/notes/010-floor.md';
const evil = { name: '田中 &amp;\u202e', email: 'x@example.org' };
const step = (day: number, by: Step['by'], says: string, files: NonNullable<Step['files']>): Step => ({
  by,
  on: `2026-04-${String(day).padStart(2, '0')}T10:00:00+10:00`,
  says,
  files,
});
const query =
  '---\nfrom: R. Ansell (invented)\ndate: 2026-04-02\nabout: [010, body.thickness-ratio]\nquestion: Which steel is it?\nanswer: S355.\nanswered-by: JO\nanswered-on: 2026-04-03\nstate: answered\n---\n';
const more = (photo: string) =>
  `photos:\n  - { file: ${photo}, shows: The cut edge, stage: cut }\npapers:\n  - { file: tube.txt, shows: mill certificate }\n`;

let html: string;
let section: (name: string) => string;
beforeAll(async () => {
  const directory = temporary();
  const [first = ''] = makeHistory(directory, [
    step(1, jo, 'Let in', {
      'builds/t/build.md': buildFile,
      [note]: floorNote({ more: more('edge.jpg') }),
      'builds/t/photos/edge.jpg': 'not looked at',
      'builds/t/papers/tube.txt': 'one',
      'builds/t/notes/020-old.md': floorNote({ title: 'Soon gone' }),
    }),
    step(2, evil, '<script>alert(1)</script>', {
      [note]: floorNote({ wall: '3.60 mm', joined: '1.25 mm', more: more('other.jpg') }),
      'builds/t/photos/other.jpg': 'nor this',
      'builds/t/papers/tube.txt': 'two',
      'builds/t/notes/020-old.md': null,
      'builds/t/queries/01-steel.md': query,
      'builds/limits.yaml':
        'figures:\n  - { item: body.thickness-ratio, max: "2.0", edition: "2020", clause: "1.2", read-by: JO, on: 2026-04-02 }\n',
    }),
  ]);
  configure(directory, '');
  const loaded = await load(`${directory}/builds/t`);
  if (!('build' in loaded)) throw new Error(JSON.stringify(loaded.problems));
  const { standing } = await standingOf(loaded.build);
  await createTag(standing!.repo, {
    name: 't/issue-A',
    message: `Issue A\n\nDocument-SHA-256: ${'0'.repeat(64)}\nMade-with: gusset 0.0.1\nPrinted-by: B/1`,
    commit: first,
    sign: 'no',
  });
  const { inputs } = await standingOf(loaded.build);
  const { build, rules, evaluation } = loaded;
  const pictures = new Map(
    ['photos/other.jpg'].map((path) => [
      path,
      { url: 'data:image/gif;base64,R0lGODlhAQABAAAAACwAAAAAAQABAAA=', width: 30, height: 20, sha256: '0'.repeat(64) },
    ]),
  );
  const subject = {
    build,
    rules,
    evaluation,
    as: 'submission' as const,
    pictures,
    paperPages: new Map(),
    identity: await identify(build, inputs, standing),
    ...(await documentHistory(loaded, inputs, standing!)),
  };
  html = htmlPage(compose(subject, new Map(inputs.map((i) => [i.path, i.sha256]))), subject, '');
  section = (name) => new RegExp(`<section[^>]* id="section-${name}"[^]*?</section>`).exec(html)?.[0] ?? '';
});
const words = (of: string) => of.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');

describe('the past in the document', () => {
  it('opens a re-issue with all that changed, by meaning', () => {
    const changes = words(section('changes'));
    for (const told of [
      'What changed since issue A',
      'Issue A was made with gusset 0.0.1.',
      'notes/020-old.md taken out',
      '2.48 mm → 3.60 mm +1.12 mm',
      'does not conform',
      'at most 2.5',
      'at most 2 ',
      '2020, 1.2',
      'new photo',
      'photo taken out',
      'another paper under the same name',
      '01-steel',
      'not asked answered Which steel is it?',
    ]) {
      expect(changes).toContain(told);
    }
    expect(html.indexOf('section-changes')).toBeLessThan(html.indexOf('section-identity'));
  });

  it('tells who changed what, and the issues, with names of strangers made harmless', () => {
    const past = section('history');
    expect(words(past)).toMatch(/1\.20 mm → 1\.25 mm ! after “painted” on 2026-03-20 had covered it \+0\.05 mm/);
    expect(past).toContain('‹U+7530›‹U+4E2D› &#x26;amp;‹U+202E›');
    expect(past).toContain('&#x3C;script>alert(1)');
    expect(words(past)).toMatch(/A t\/issue-A [0-9a-f]{12} 2026-04-01 no/);
    expect(words(past)).toMatch(
      /\d+ values and designations are recorded .*; \d+ were entered once and never changed, \d+ changed since\./,
    );
  });

  it('tells among the open items what was changed when the work had covered it', () => {
    expect(words(section('open'))).toMatch(
      /Changed after it was covered What was recorded.* 010 pieces\.\S+\.joined-to/,
    );
  });

  it('is valid HTML whose every pointer lands', async () => {
    const ids = new Set([...html.matchAll(/\sid="([^"]+)"/g)].map(([, id]) => id));
    const lost = [...html.matchAll(/(?:href="#|data-target=")([^"]+)"/g)]
      .map(([, id]) => id)
      .filter((id) => !ids.has(id));
    expect(lost).toEqual([]);
    const rules = {
      'attribute-boolean-style': 'off',
      'attr-quotes': 'off',
      'void-style': 'off',
      'no-inline-style': 'off',
      'no-trailing-whitespace': 'off',
      'doctype-style': 'off',
      'long-title': 'off',
      'valid-id': ['error', { relaxed: true }],
    } as const;
    const { results } = await new HtmlValidate({
      extends: ['html-validate:recommended'],
      rules: rules as never,
    }).validateString(html);
    expect(results.flatMap((r) => r.messages.map((m) => `${m.ruleId}: ${m.message} ${m.selector ?? ''}`))).toEqual([]);
  });

  it('prints no character that no font has', () => {
    expect(printable('Jo Ashdown, Sørby, Größe, 2.5 ± 0.1 mm → ½')).toBe('Jo Ashdown, Sørby, Größe, 2.5 ± 0.1 mm → ½');
    expect(printable('a\u0007b\u200e 😀')).toBe('a‹U+0007›b‹U+200E› ‹U+1F600›');
  });
});
