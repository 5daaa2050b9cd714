import type { Element } from 'hast';
import { describe, expect, it } from 'vitest';
import { sheets as axle } from '../../../src/calc/axle/index.js';
import { sheets as beams } from '../../../src/calc/beams/index.js';
import { sheets as brakes } from '../../../src/calc/brakes/index.js';
import { sheets as driveline } from '../../../src/calc/driveline/index.js';
import { sheets as links } from '../../../src/calc/links/index.js';
import { sheets as mass } from '../../../src/calc/mass/index.js';
import type { Run } from '../../../src/calc/run.js';
import { sheets as sections } from '../../../src/calc/sections/index.js';
import type { Example } from '../../../src/calc/sheet.js';
import { exactly, type Value } from '../../../src/calc/value.js';
import { sheets as welds } from '../../../src/calc/welds/index.js';
import { exactBound } from '../../../src/checks/codes/limit.js';
import type { Finding } from '../../../src/checks/engine/finding.js';
import { drawingForFinding, drawingsForFindings } from '../../../src/render/drawings/for-finding.js';
import { drawingsForRun, drawnSheets } from '../../../src/render/drawings/for-run.js';
import { textOf } from '../../../src/render/markdown.js';
import { work } from '../../calc/sheet-rules.js';
import { elementsOf, expectSound, textsOf } from './read-drawing.js';

const sheets = [...axle, ...beams, ...brakes, ...driveline, ...links, ...mass, ...sections, ...welds];
const sheetOf = (id: string) => sheets.find((s) => s.id === id)!;
const runOf = (id: string, sheet: string, given: Example['given'] = sheetOf(sheet).examples[0].given): Run => ({
  ...work(sheetOf(sheet), given),
  id,
});
const drawing = (figure: Element) => elementsOf(figure, 'svg')[0]!;
const textsIn = (run: Run, runs?: readonly Run[]) => drawingsForRun(run, runs).flatMap(textsOf);

/** Sheets whose drawing needs the runs beside them. */
const alone = drawnSheets.filter((id) => id !== 'equivalent-stiffness');
const examples = alone.flatMap((id) =>
  sheetOf(id).examples.map((example, i) => [`${id}, example ${i + 1}`, id, example.given] as const),
);

describe('the drawings of a run', () => {
  it('belong to sheets that exist', () => {
    for (const id of drawnSheets) expect(sheetOf(id), id).toBeDefined();
  });

  it.each(examples)('are sound for %s', (_, id, given) => {
    const [figure, ...more] = drawingsForRun(runOf(`030-note/ride/${id}`, id, given));
    expect(more).toEqual([]);
    expect(figure!.tagName).toBe('figure');
    expect(figure!.properties['id']).toBe(`figure-030-note/ride/${id}`);
    expect(textOf(elementsOf(figure!, 'figcaption')[0]!)).toMatch(new RegExp(`^Figure 030/ride/${id}: [A-Z].*\\.$`));
    expectSound(drawing(figure!));
    expect(drawingsForRun(runOf(`030-note/ride/${id}`, id, given))).toEqual([figure]);
  });

  it('are none where the inputs gave no number, or the sheet has none', () => {
    const parallel = {
      ...sheetOf('axle-side-view').examples[0].given,
      upperAxleZ: '480 mm',
      upperBodyZ: '480 mm',
      lowerAxleZ: '220 mm',
      lowerBodyZ: '220 mm',
    };
    expect(drawingsForRun(runOf('n/axle-side-view', 'axle-side-view', parallel))).toEqual([]);
    expect(drawingsForRun(runOf('n/utilisation', 'utilisation'))).toEqual([]);
  });

  it('show the numbers of the run', () => {
    expect(textsIn(runOf('n/ride/driveline-two-joints', 'driveline-two-joints'))).toEqual(
      expect.arrayContaining(['v₀ = 3°', 'v₁ = 7°', 'θ₁ = 4°', 'θ₂ = 2.5°', 'γ₁ = 0°']),
    );
    expect(textsIn(runOf('n/adjuster-range', 'adjuster-range'))).toEqual(
      expect.arrayContaining(['l = 620 mm', 'lmax = 626 mm', 'eA = 28 mm', 'eB,max = 22 mm', 'mA = 22 mm']),
    );
    expect(textsIn(runOf('n/weld-group', 'weld-group'))).toEqual(
      expect.arrayContaining(['Fy = −10 kN', '|Mz|/F = 120 mm', expect.stringMatching(/^v\* = 0.23\d\d kN\/mm$/)]),
    );
    expect(textsIn(runOf('n/axle-load-change', 'axle-load-change'))).toEqual(
      expect.arrayContaining(['mf,o = 780 kg', 'mr,n = 640 kg', 'L = 2600 mm']),
    );
    expect(textsIn(runOf('n/twist-test', 'twist-test'))).toEqual(
      expect.arrayContaining(['K = 4072 N·m/deg', 'hollow: load taken off']),
    );
    expect(textsIn(runOf('n/axle-travel', 'axle-travel'))).toEqual(
      expect.arrayContaining(['θp = 3°', 'b = 50 mm', 'r = 50 mm', 'xb = 2.295 mm']),
    );
  });

  it('show laden and unladen together, beside the first, whatever braking rates they were worked at', () => {
    const given = sheetOf('brake-distribution').examples[0].given;
    const runs = [
      runOf('070-brakes/laden/brake-distribution', 'brake-distribution', {
        ...given,
        frontMass: '850 kg',
        rearMass: '950 kg',
      }),
      runOf('070-brakes/laden-low/brake-distribution', 'brake-distribution', {
        ...given,
        frontMass: '850 kg',
        rearMass: '950 kg',
        rate: '0.3',
      }),
      runOf('070-brakes/unladen/brake-distribution', 'brake-distribution', given),
      runOf('080-other/unladen/brake-distribution', 'brake-distribution', given),
    ];
    const drawn = runs.map((r) => drawingsForRun(r, runs).length);
    expect(drawn).toEqual([1, 0, 0, 1]);
    expect(textsIn(runs[0]!, runs).filter((t) => t.startsWith('ideal, '))).toEqual(['ideal, laden', 'ideal, unladen']);
  });

  it('show the sections that a comparison of members rests on', () => {
    const hat = runOf('020-member/rail/was/section-top-hat', 'section-top-hat');
    const tube = runOf('020-member/rail/now/section-rhs', 'section-rhs', {
      depth: '50 mm',
      width: '30 mm',
      wall: '2.48 mm',
      nominalWall: '2.5 mm',
      corners: 'en-10219',
      loss: '0 mm',
    });
    const ratio = runOf('020-member/rail/equivalent-stiffness', 'equivalent-stiffness');
    expect(drawingsForRun(ratio, [ratio])).toEqual([]);
    const [figure] = drawingsForRun(ratio, [hat, tube, ratio]);
    expectSound(drawing(figure!));
    expect(textsOf(figure!)).toEqual(
      expect.arrayContaining([
        'As received: top-hat pressing',
        'As built: rectangular tube (RHS, SHS)',
        'b = 60 mm',
        'T = 2.48 mm',
        'ro = 5 mm',
      ]),
    );
    const planned = { ...tube, id: '020-member/rail/planned/section-rhs' };
    expect(textsOf(drawingsForRun(ratio, [hat, planned, ratio])[0]!)).toContain(
      'As planned: rectangular tube (RHS, SHS)',
    );
    expect(drawingsForRun(ratio, [hat, { ...tube, id: '020-member/rails/now/section-rhs' }, ratio])).toEqual([]);
  });
});

const place = { file: 'notes/040-assembly.md', line: 1, column: 1, path: '' };
const uncertain = (si: number, expanded: number): Value => ({
  ...exactly(si, 'mm'),
  parts: new Map([['micrometer', expanded]]),
});
const finding = (subject: string, clearance: number, rest: Partial<Finding> = {}): Finding => ({
  id: `040-assembly/${subject}/assembly.oil-clearance`,
  note: '040-assembly',
  subject,
  item: 'assembly.oil-clearance',
  title: 'Oil clearance',
  of: 'requirement',
  outcome: 'conforms',
  form: 'limit',
  measured: uncertain(clearance, 4e-6),
  limit: { min: exactBound(25e-6), max: exactBound(64e-6), unit: 'mm', document: 'sheet of the maker', basis: 'maker' },
  basis: 'maker',
  says: '',
  marks: [],
  place,
  ...rest,
});

describe('the drawings of findings', () => {
  it('show a value in its limits with the word of its outcome', () => {
    const figure = drawingForFinding(finding('mains-1', 50e-6))!;
    expectSound(drawing(figure));
    expect(textsOf(figure)).toEqual(['conforms', '0.050 ± 0.004 mm', '≥ 0.025 mm', '≤ 0.064 mm']);
    expect(textOf(elementsOf(figure, 'figcaption')[0]!)).toBe(
      'Figure 040/mains-1/assembly.oil-clearance: Oil clearance (mains-1) against its limit.',
    );
  });

  it('are none without a number or a limit', () => {
    expect(drawingForFinding(finding('mains-1', 0, { measured: undefined, outcome: 'not-measured' }))).toBeUndefined();
    expect(drawingForFinding(finding('mains-1', 50e-6, { limit: undefined }))).toBeUndefined();
  });

  it('reach as far as the uncertainty of a reckoned limit does', () => {
    const bar = (limit: Finding['limit']) => JSON.stringify(drawingForFinding(finding('x', 50e-6, { limit })));
    const plain = { min: exactBound(25e-6), unit: 'mm', document: 'reckoned', basis: 'practice' as const };
    const uncertainLimit = { ...plain, min: { ...plain.min, parts: new Map([['bore gauge', 3e-6]]) } };
    expect(bar(uncertainLimit)).toContain('≥ 0.025 ± 0.003 mm');
    expect(bar(uncertainLimit)).not.toBe(bar(plain));
  });

  it('show three and more readings against one limit together', () => {
    const readings = [1, 2, 3, 4, 5].map((i) => finding(`mains-${i}`, (40 + 5 * i) * 1e-6));
    const [figure, ...more] = drawingsForFindings([
      ...readings,
      finding('end-float', 1e-4, { item: 'assembly.end-float' }),
    ]);
    expect(more).toEqual([]);
    expectSound(drawing(figure!));
    expect(textsOf(figure!)).toEqual(
      expect.arrayContaining(['mains 1', '0.045 mm', 'mains 5', '0.065 mm', '≥ 0.025 mm', '≤ 0.064 mm']),
    );
    expect(drawingsForFindings(readings.slice(0, 2))).toEqual([]);
    const ratio = { unit: '1', min: exactBound(1), document: 'x', basis: 'practice' as const };
    expect(drawingsForFindings(readings.map((f) => ({ ...f, limit: ratio })))).toEqual([]);
  });
});
