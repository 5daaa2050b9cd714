import { appendFileSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { describe, it } from 'vitest';
import { parse, stringify } from 'yaml';
import { kinds } from '../../../../src/checks/kinds/index.js';
import { loadCodes } from '../../../../src/checks/codes/codes.js';
import { fieldTree, type Leaf, leaves } from '../../../../src/project/field-tree.js';
import { toUnit } from '../../../../src/units/unit.js';
import { examineNote } from '../bench.js';
import type { Plain } from '../../../../src/project/frontmatter.js';
import { typicalData, typicalEntry } from '../../../../src/project/typical.js';
import {
  type Base,
  differing,
  examined,
  fieldsOf,
  fileOf,
  moved,
  nameOf,
  type Outcomes,
  type Raw,
  rawOf,
  type Witness,
  witnessesOf,
} from './witness.js';

/**
 * Looks for witnesses of the fields that have none: `SEARCH_WITNESSES=<kind>,<kind> npx vitest run --config tests/vitest.config.ts
 * tests/checks/kinds/deciding/search`. Notes to start from are those of the file, and of `MORE_NOTES`, a file of JSON lines.
 */
const wanted = process.env['SEARCH_WITNESSES'];
const more = process.env['MORE_NOTES'];
const seconds = Number(process.env['SECONDS'] ?? 300);

const designations = [
  'M6x1.0', 'M10x1.25', 'M12x1.75 LH', 'M24x2.0', '1/4-18 NPT', '3/4-16 UNF', '5/16-18 UNC', '4.6', '8.8', '12.9', 'SAE 5',
  '155/80R13 79S', '245/45R17 99W', '205/65R15 80Q', '5Jx13 ET40', '9Jx17 ET0', 'RHS 20x20x1.6 (EN 10219)', 'RHS 100x50x5 (EN 10219)',
  'CHS 48.3x3.2', 'FL 60x2', 'HAT 60x40x20x2.0', 'unknown', 'S235', 'S690',
];
const swaps: readonly (readonly [RegExp, string])[] = [
  [/\bin$/, 'out'], [/\bout$/, 'in'], [/\bup\b/, 'down'], [/\bdown\b/, 'up'],
  [/\brear$/, 'front'], [/\bfront$/, 'rear'], [/\bleft$/, 'right'], [/\bright$/, 'left'],
];
const factors = [0.1, 0.5, 0.9, 1.1, 2, 10, 0.75, 1.3, 0.01, 100];

const number = (x: number): string => String(Number(x.toPrecision(6)).toFixed(12)).replace(/\.?0+$/, '') || '0';
const scale = (text: string, by: number): string =>
  text.replace(/(?<![A-Za-z\d.])(-?)(\d+(?:\.\d+)?)/, (_, sign: string, digits: string) => {
    const x = Number(`${sign}${digits}`) * by;
    return /^\d+$/.test(text) ? String(Math.round(x)) : number(x);
  });

/** What a field may be moved to. */
function moves({ field: { meta, key } }: Leaf, from: string): (string | undefined)[] {
  const other = (words: readonly (string | undefined)[]) => words.filter((w) => w !== from);
  if (meta.choices) return other(Object.keys(meta.choices));
  switch (meta.form) {
    case 'yes-no':
      return other(['yes', 'no']);
    case 'day':
      return other([undefined, '2019-01-01', '2026-03-15', '2027-01-01']);
    case 'designation':
      return other([...designations, typicalEntry(key, meta)]);
    case 'slope':
    case 'quantity': {
      const plain = from.replace(/^(-?[\d.]+):[\d.]+/, '$1');
      const swapped = swaps.filter(([word]) => word.test(from)).map(([word, to]) => from.replace(word, to));
      return other([...new Set([...factors.map((f) => scale(plain, f)), scale(plain, 0), scale(plain, -1), ...swapped, ...swapped.map((s) => scale(s, 10)), typicalEntry(key, meta)])]);
    }
    default:
      return [undefined, 'other words entirely', 'none', '025-other'];
  }
}

/** Where a field stands in a note, with what stands there. */
function placesOf(raw: Raw, path: readonly string[], before: string[] = []): { at: string; from: string }[] {
  const [key, ...rest] = path;
  if (key === undefined) {
    const here = raw as Plain;
    const plain = typeof here === 'object' && !Array.isArray(here) ? (here as Raw)['value'] : here;
    const from = typeof plain === 'string' ? plain : Array.isArray(plain) && typeof plain[0] === 'string' ? plain[0] : undefined;
    return from === undefined ? [] : [{ at: before.join('.'), from }];
  }
  if (raw === undefined || typeof raw !== 'object') return [];
  if (key === '[]') return Array.isArray(raw) ? raw.slice(0, 3).flatMap((one, i) => placesOf(one as Raw, rest, [...before, String(i)])) : [];
  const inner = (raw as Raw)[key];
  return inner === undefined ? [] : placesOf(inner as Raw, rest, [...before, key]);
}

/** What stands around the notes that are made up here. */
const rich = {
  vehicle: { seats: '5', 'derivative-of-passenger-car': 'no' },
  more: `people: [{ id: JO, name: J. Okoro, role: builder }]
instruments: [{ id: fine, what: fine, uncertainty: 0.1 %, checked: 2026-01-01 }]
load-cases:
${['crossmember-drop', 'link-pull', 'gearbox-drop', 'engine-torque'].map((id) => `  - { id: ${id}, says: made up, force: 4 kN, moment: 400 N·m, factor: '1.5', agreed-with: R. Ansell, agreed-on: 2026-01-10 }`).join('\n')}`,
};

/** What a note lacks is filled in from another of its kind. */
function filled(raw: Raw, from: Raw): Raw {
  const out: Raw = { ...raw };
  for (const [key, value] of Object.entries(from)) {
    const own = out[key];
    if (own === undefined) out[key] = value;
    else if (Array.isArray(own) && Array.isArray(value) && typeof value[0] === 'object')
      out[key] = own.map((one) => (typeof one === 'object' ? filled(one as Raw, { ...(value[0] as Raw), id: undefined }) : one)) as Plain;
    else if (typeof own === 'object' && !Array.isArray(own) && typeof value === 'object' && !Array.isArray(value)) out[key] = filled(own as Raw, value as Raw);
  }
  return out;
}
function setAll(raw: Raw, path: readonly string[], value: string): void {
  const [key, ...rest] = path as [string, ...string[]];
  if (key === '[]') { for (const one of raw as unknown as Raw[]) setAll(one, rest, value); return; }
  if (rest.length === 0) raw[key] = value;
  else if (raw[key] !== undefined) setAll(raw[key] as Raw, rest, value);
}
/** Figures of the builder's copy close around what was measured. */
async function tight(kind: string, { note, ...around }: Base): Promise<string | undefined> {
  try {
    const { findings } = await examineNote(kind, note, around);
    const codes = await loadCodes('AU');
    const figures = new Map<string, string>();
    for (const f of findings) {
      const item = codes.items.get(f.item);
      if (!f.measured || figures.has(f.item) || f.limit?.basis === 'maker' || (item?.kind !== 'limit' && item?.kind !== 'test')) continue;
      const m = toUnit(f.measured.si, item.unit);
      const half = m === 0 ? 1 : Math.abs(m) * 0.25;
      const unit = item.unit === '1' ? '' : ` ${item.unit}`;
      figures.set(f.item, `  - { item: ${f.item}, min: '${number(m - half)}${unit}', max: '${number(m + half)}${unit}', edition: '1', clause: '1', read-by: JO, on: 2026-01-01 }`);
    }
    return figures.size ? `figures:\n${[...figures.values()].join('\n')}\n` : undefined;
  } catch { return undefined; }
}

const size = (raw: unknown): number => JSON.stringify(raw).length;

describe.runIf(wanted)('a search for witnesses', () => {
  const harvest = more && existsSync(more) ? readFileSync(more, 'utf8').trim().split('\n').map((l) => JSON.parse(l)) : [];
  for (const kind of [...kinds.values()].filter((k) => wanted === 'all' || wanted!.split(',').includes(k.id)))
    it(kind.id, async () => {
      const until = Date.now() + seconds * 1000;
      const began = Date.now();
      const known = witnessesOf(kind.id);
      const fields = fieldsOf(kind);
      const found: Record<string, Witness> = Object.fromEntries(Object.entries(known.fields).filter(([f]) => fields.some((l) => nameOf(l) === f)));
      const notes: Record<string, Base> = { ...known.notes };
      const own = Object.entries(known.notes).map(([name, base]) => ({ name, base }));
      const tree = fieldTree(kind.shape);
      const typical = typicalData(tree) as Raw;
      for (const leaf of fields) if (leaf.path.at(-1) === 'load-case') setAll(typical, leaf.path, 'crossmember-drop');
      const ofKind: Base[] = harvest
        .filter((h: { kind: string }) => h.kind === kind.id)
        .map((h: { frontmatter: string; around: object }) => ({ note: h.frontmatter, ...h.around }));
      const richest = [...ofKind].sort((a, b) => size(rawSafe(b.note)) - size(rawSafe(a.note)));
      const text = (raw: Raw) => stringify(raw, { lineWidth: 0 });
      const whole: Base = { note: text(typical), ...rich };
      const merged = richest.slice(0, 12).map((b): Base => ({ ...rich, ...b, note: text(filled(rawSafe(b.note), typical)) }));
      const variants = [whole, ...merged.slice(0, 2)].flatMap((base) =>
        leaves(tree)
          .filter((l) => l.field.meta.choices || l.field.meta.form === 'yes-no' || l.path.length > 1)
          .flatMap((l) =>
            placesOf(rawOf(base.note), l.path).slice(0, 1).flatMap(({ at, from }) =>
              [undefined, ...(l.field.meta.choices || l.field.meta.form === 'yes-no' ? moves(l, from) : [])].map((to): Base => ({ ...base, note: text(moved(rawOf(base.note), at, to)) })),
            ),
          ),
      );
      const seen = new Set<string>();
      const others: Base[] = [...richest.slice(0, 150), whole, ...merged, ...variants].filter((b) => {
        const key = JSON.stringify(b);
        const is = !seen.has(key);
        seen.add(key);
        return is;
      });
      const withTight: Base[] = [];
      for (const b of [...richest.slice(0, 25), whole, ...merged]) {
        const limits = b.limits === undefined ? await tight(kind.id, b) : undefined;
        if (limits) withTight.push({ ...b, limits });
      }
      const queue = [...own, ...[...others.slice(0, richest.length), ...withTight, ...others.slice(richest.length)].map((base) => ({ name: undefined, base }))];
      const cap = new Map<string, number>();
      let n = 0;
      for (const { name, base } of queue) {
        if (Date.now() > until) break;
        const { note, ...around } = base;
        let raw: Raw, before: Outcomes;
        try {
          raw = rawOf(note);
          before = await examined(kind.id, raw, around);
        } catch { continue; }
        let used = name;
        for (const leaf of fields) {
          const field = nameOf(leaf);
          if (found[field] || (cap.get(field) ?? 0) > 400) continue;
          tries: for (const { at, from } of placesOf(raw, leaf.path)) {
            cap.set(field, (cap.get(field) ?? 0) + 1);
            for (const to of moves(leaf, from)) {
              if (Date.now() > until) break;
              n++;
              const tells = await examined(kind.id, moved(raw, at, to), around).then((after) => differing(before, after), () => (to === undefined ? ['refused'] : []));
              if (tells.length === 0) continue;
              if (!used) {
                used = String.fromCharCode(97 + Object.keys(notes).length % 26) + (Object.keys(notes).length >= 26 ? String(Math.floor(Object.keys(notes).length / 26)) : '');
                notes[used] = base;
              }
              found[field] = { in: used, ...(at === field.replaceAll('[]', '0') ? {} : { at }), ...(to === undefined ? {} : { to }), tells: tells[0]! };
              break tries;
            }
          }
        }
      }
      const inOrder = Object.fromEntries(fields.map(nameOf).filter((f) => found[f]).map((f) => [f, found[f]!]));
      const usedNotes = Object.fromEntries(Object.entries(notes).filter(([name]) => Object.values(inOrder).some((w) => w.in === name)));
      writeFileSync(fileOf(kind.id), stringify({ notes: usedNotes, fields: inOrder }, { lineWidth: 0, defaultStringType: 'PLAIN' }));
      const missing = fields.map(nameOf).filter((f) => !found[f]);
      appendFileSync(process.env['REPORT'] ?? 'out/witnesses.txt', `== ${kind.id} ${missing.length}/${fields.length} ${n} tried ${Math.round((Date.now() - until) / 1000 + seconds)} s\n${missing.map((m) => `   ${m}\n`).join('')}`);
    }, 7_200_000);
});
const rawSafe = (note: string): Raw => { try { return rawOf(note); } catch { return {}; } };
void parse;
