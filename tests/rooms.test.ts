import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import {
  cruise,
  type ICruiseOptions,
  type ICruiseResult,
  type IFlattenedRuleSet,
  type IViolation,
} from 'dependency-cruiser';
import { describe, expect, it } from 'vitest';
import { scratch } from './print/fixtures.js';

/** The rooms of `src/`, and what each may import: itself and what is named here. An arrow only ever goes down. */
const rooms: Readonly<Record<string, readonly string[]>> = {
  commands: ['app', 'view', 'render', 'history', 'checks', 'project', 'calc', 'units', 'platform'],
  app: ['view', 'render', 'print', 'history', 'checks', 'project', 'calc', 'units', 'platform'],
  view: ['render', 'project', 'platform'],
  render: ['history', 'checks', 'project', 'calc', 'units', 'platform'],
  print: ['platform'],
  history: ['checks', 'project', 'units', 'platform'],
  'checks/kinds': ['checks/engine', 'checks/codes', 'project', 'calc', 'units', 'platform'],
  'checks/plan': ['checks/engine', 'checks/codes', 'project', 'calc', 'units', 'platform'],
  'checks/engine': ['checks/codes', 'project', 'calc', 'units', 'platform'],
  'checks/codes': ['project', 'calc', 'units', 'platform'],
  project: ['calc', 'units', 'platform'],
  calc: ['units', 'platform'],
  units: [],
  platform: [],
};

const rules: IFlattenedRuleSet = {
  forbidden: [
    { name: 'no circle of files', severity: 'error', from: {}, to: { circular: true } },
    {
      name: 'only known rooms',
      severity: 'error',
      from: {},
      to: { path: '^src/', pathNot: [`^src/(${Object.keys(rooms).join('|')})/`] },
    },
    ...Object.entries(rooms).map(([room, below]) => ({
      name: `${room} imports itself${below.length === 0 ? '' : ` and ${below.join(', ')}`}`,
      severity: 'error' as const,
      from: { path: `^src/${room}/` },
      to: { path: '^src/', pathNot: [room, ...below].map((name) => `^src/${name}/`) },
    })),
  ],
};

describe('imports of src/', () => {
  it('only go down, and never in a circle', async () => {
    const found = await broken('.');
    expect(found.files).toBeGreaterThan(400);
    expect(found.violations).toEqual([]);
  }, 120_000);

  it('are seen where they go up, round, or to a room that nobody named', async () => {
    const folder = scratch();
    write(folder, 'src/units/unit.ts', `import { run } from '../commands/check.js'; export const unit = run;`);
    write(folder, 'src/commands/check.ts', `export const run = 1;`);
    write(
      folder,
      'src/checks/engine/examine.ts',
      `import type { Kind } from '../kinds/brakes.js'; export type Known = Kind;`,
    );
    write(
      folder,
      'src/checks/kinds/brakes.ts',
      `import { more } from '../../cellar/wine.js'; export type Kind = typeof more;`,
    );
    write(folder, 'src/cellar/wine.ts', `export const more = 1;`);
    write(folder, 'src/calc/a.ts', `import { b } from './b.js'; export const a = b;`);
    write(folder, 'src/calc/b.ts', `export const b = async () => (await import('./a.js')).a;`);
    const { violations } = await broken(folder);
    expect(violations).toEqual([
      'src/calc/a.ts → src/calc/b.ts: no circle of files',
      'src/checks/engine/examine.ts → src/checks/kinds/brakes.ts: checks/engine imports itself and checks/codes, project, calc, units, platform',
      'src/checks/kinds/brakes.ts → src/cellar/wine.ts: checks/kinds imports itself and checks/engine, checks/codes, project, calc, units, platform',
      'src/checks/kinds/brakes.ts → src/cellar/wine.ts: only known rooms',
      'src/units/unit.ts → src/commands/check.ts: units imports itself',
    ]);
  }, 60_000);
});

/** What breaks the rules in the `src/` of a folder, one line an import, in order. */
async function broken(baseDir: string): Promise<{ files: number; violations: string[] }> {
  const options: ICruiseOptions = {
    baseDir,
    ruleSet: rules,
    validate: true,
    tsPreCompilationDeps: true,
    doNotFollow: { path: 'node_modules' },
    exclude: { path: 'node_modules' },
  };
  const { output } = await cruise(['src'], options);
  const { modules, summary } = output as ICruiseResult;
  const line = ({ from, to, rule }: IViolation) => `${from} → ${to}: ${rule.name}`;
  return { files: modules.length, violations: summary.violations.map(line).sort() };
}

function write(folder: string, path: string, text: string): void {
  mkdirSync(dirname(join(folder, path)), { recursive: true });
  writeFileSync(join(folder, path), text);
}
