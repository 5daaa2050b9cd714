import { parse, stringify } from 'yaml';
import { papers } from '../papers/index.mjs';
import { firstReports } from '../papers/reports.mjs';
import { taken } from '../taken.mjs';
import { before } from './before.mjs';
import { closed, recorded } from './story.mjs';

/** Whether a picture was taken by the end of that day. */
export const isTaken = (name, day) => taken[name].slice(0, 10) <= day;

/** The paper of that name as it lay in the folder at the end of that day, or nothing. */
export function paperOn(name, day) {
  return [papers[name], firstReports[name]].find((paper) => paper && paper.date <= day);
}

/** The text of `build.md`, of the limits, of a note or of a query as it stood at the end of a day, or nothing. */
export function asItStood(path, text, day) {
  const then = (before[path] ?? []).filter((change) => day < change.until).reduce((whole, change) => swapped(whole, change, path), text);
  if (path === 'build.md') return beforeChecks(day < '2025-02-12' ? then.replace(/^    (agreed-with|agreed-on|source): .*\n/gm, '') : then, day);
  if (path === 'limits.yaml') return day < '2025-02-07' ? undefined : then;
  if (path.startsWith('queries/')) return query(then, day);
  return note(path, then, day);
}

/** Each change must find its place once: a note that was rewritten may not lose its past unseen. */
function swapped(text, { now, then }, path) {
  if (text.split(now).length !== 2) throw new Error(`${path}: expected once, found ${text.split(now).length - 1} times: ${now}`);
  return text.replace(now, () => then);
}

function note(path, text, day) {
  const { stages } = frontOf(text);
  const days = Object.values(stages);
  if (days[0] > day) return undefined;
  const record = recorded[path] ?? Object.entries(stages).filter(([stage]) => stage !== 'finished' && stage !== 'painted').at(-1)[1];
  return record > day ? baseline(text, day) : tidy(text, day);
}

/** What a photo of the work proves is named when the work is recorded. */
const unnamed = ({ proves, ...photo }) => (proves && photo.stage === 'as-received' ? { ...photo, proves } : photo);

/** What was entered before the work: the car as it came. */
function baseline(text, day) {
  const data = frontOf(tidy(text, day));
  const kept = asReceived(data);
  const front = { kind: data.kind, title: data.title, by: data.by, stages: data.stages, ...(data.test ? { test: data.test } : {}), ...kept, ...(data.photos ? { photos: data.photos.map(unnamed) } : {}) };
  return `---\n${stringify(front, { lineWidth: 0, collectionStyle: 'any', defaultStringType: 'PLAIN' })}---\n\nMeasured as it came, before anything was taken apart. The work is planned.\n`;
}

const names = ['id', 'place', 'to', 'lamp', 'side', 'end', 'region', 'load', 'role', 'system', 'takes', 'moves', 'near', 'point'];
const old = (key) => key === 'was' || key.endsWith('-was') || key.startsWith('original-');

/** Only what was measured before: `was` and its like, with the names that say of what. */
function asReceived(data) {
  if (Array.isArray(data)) return data.map(asReceived).filter((one) => one && Object.keys(one).some((key) => !names.includes(key)));
  if (typeof data !== 'object' || data === null) return undefined;
  const kept = Object.entries(data).flatMap(([key, value]) => {
    if (['photos', 'papers', 'answers', 'concessions', 'stages'].includes(key)) return [];
    if (old(key)) return [[key, value]];
    const inner = asReceived(value);
    return inner && Object.keys(inner).length > 0 ? [[key, inner]] : [];
  });
  if (kept.length === 0) return undefined;
  return Object.fromEntries([...Object.entries(data).filter(([key]) => names.includes(key) && typeof data[key] === 'string'), ...kept]);
}

/** Takes out the stages, photos and papers that are later than the day, and what points to them. */
function tidy(text, day) {
  const later = [...Object.keys(taken).filter((name) => !isTaken(name, day)), ...Object.keys(papers).filter((name) => !paperOn(name, day))];
  const lines = text.split('\n').filter((line) => {
    const [, name, kind] = line.match(/^ {2}- \{.*?file: ([\w-]+)\.(jpg|pdf)/) ?? [];
    const gone = kind === 'jpg' ? !isTaken(name, day) : kind === 'pdf' && !paperOn(name, day);
    if (gone) later.push(line.match(/id: ([\w-]+)/)?.[1] ?? name);
    return !gone;
  });
  const kept = lines.join('\n').replace(/^stages: \{(.*)\}$/m, (_, list) => `stages: {${list.split(',').filter((one) => one.split(': ')[1].trim() <= day).join(',').trimEnd()} }`);
  return later
    .reduce((whole, id) => whole.replace(new RegExp(`, (photo: ${id}|shown: "?(photo|paper) ${id}"?)(?=,| \\})`, 'g'), ''), kept)
    .replace(/^(photos|papers):\n(?! )/gm, '');
}

function query(text, day) {
  const { date, 'answered-on': answered } = frontOf(text);
  if (date > day) return undefined;
  if (answered > day) return `${text.slice(0, text.indexOf('\nanswer:'))}\nstate: open\n---\n`;
  return day < closed ? `${text.slice(0, text.indexOf('\nstate:'))}\nstate: answered\n---\n` : text;
}

const frontOf = (text) => parse(text.split(/^---$/m)[1], { schema: 'failsafe' });
/** An instrument is there before its last check, which then is not written down yet. */
const beforeChecks = (text, day) => text.replace(/, checked: (\d{4}-\d\d-\d\d)(?:, checked-by: (?:"[^"]*"|[^,}]*))?/g, (check, on) => (on > day ? '' : check));
