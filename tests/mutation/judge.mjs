import { readFileSync } from 'node:fs';

/**
 * Judges a mutation run: prints the table of DEVELOPERS.md, and fails below a floor, for an equivalent that is no survivor
 * any more, and for more equivalents than the share allows.
 */

const OVERALL = 90;
const EQUIVALENT = 5;

const read = (name) => JSON.parse(readFileSync(name, 'utf8'));
const { files } = read(process.argv[2] ?? 'out/mutation/report.json');
const floors = read(new URL('floors.json', import.meta.url));
const equivalents = read(new URL('equivalents.json', import.meta.url));

const plain = (text) => text.replace(/\s+/g, ' ').trim();

/** What a mutant changes, in its line: the same however the file moves. */
function keyOf({ source }, { location: { start, end }, replacement }) {
  const lines = source.split('\n');
  const inside = lines.slice(start.line - 1, end.line);
  const code = inside
    .map((line, i) => line.slice(i === 0 ? start.column - 1 : 0, i === inside.length - 1 ? end.column - 1 : undefined))
    .join('\n');
  return { line: plain(lines[start.line - 1]), code: plain(code), becomes: plain(replacement) };
}

const against = [];
const used = new Set();
let whole = { mutants: 0, killed: 0, equivalent: 0 };
const rows = Object.entries(files).map(([name, file]) => {
  const valid = file.mutants.filter(({ status }) => status !== 'Ignored' && !status.endsWith('Error'));
  const killed = valid.filter(({ status }) => status === 'Killed' || status === 'Timeout').length;
  const equivalent = valid.filter((mutant) => {
    if (mutant.status !== 'Survived') return false;
    const { line, code, becomes } = keyOf(file, mutant);
    const known = equivalents.find(
      (e) => e.file === name && e.line === line && e.code === code && e.becomes === becomes,
    );
    if (known) used.add(known.id);
    return known !== undefined;
  }).length;
  const score = (100 * killed) / valid.length;
  const floor = floors[name];
  if (floor === undefined) against.push(`${name} has no floor`);
  else if (score < floor) against.push(`${name}: ${score.toFixed(1)} % killed, its floor is ${floor} %`);
  whole = {
    mutants: whole.mutants + valid.length,
    killed: whole.killed + killed,
    equivalent: whole.equivalent + equivalent,
  };
  return `| \`${name}\` | ${valid.length} | ${killed} | ${score.toFixed(1)} % | ${floor} % | ${equivalent} |`;
});

const score = (100 * whole.killed) / whole.mutants;
const share = (100 * whole.equivalent) / whole.mutants;
if (!(score >= OVERALL)) against.push(`${score.toFixed(1)} % killed in all, expected ${OVERALL} %`);
if (share > EQUIVALENT) against.push(`${share.toFixed(1)} % are listed as equivalent, at most ${EQUIVALENT} % may be`);
for (const name of Object.keys(floors)) if (!files[name]) against.push(`${name} has a floor and was not mutated`);
for (const { id } of equivalents) if (!used.has(id)) against.push(`the equivalent \`${id}\` is no survivor: take it out`);
if (new Set(equivalents.map(({ id }) => id)).size < equivalents.length) against.push('two equivalents have one id');

console.log(
  [
    '| file | mutants | killed | score | floor | equivalent |',
    '| --- | --- | --- | --- | --- | --- |',
    ...rows,
    `| in all | ${whole.mutants} | ${whole.killed} | ${score.toFixed(1)} % | ${OVERALL} % | ${whole.equivalent} |`,
  ].join('\n'),
);
for (const text of against) console.error(text);
process.exitCode = against.length > 0 ? 1 : 0;
