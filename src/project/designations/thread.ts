import type { Source } from '../../calc/sheet.js';
import { Decimal } from '../../units/decimal.js';
import { toSI } from '../../units/unit.js';
import { type Read, type Refuse, reader } from './reading.js';
import { metricPitches, metricSource, pipe, pipeSource, unified, unifiedSource } from './thread-sizes.js';

/** A screw thread by its designation. Lengths in m. */
export interface Thread {
  /** In its one printed spelling: `M12x1.75`, `3/4-16 UNF LH`. */
  text: string;
  /** The form: ISO metric, Unified, or tapered pipe thread (NPT). */
  series: 'metric' | 'unified' | 'pipe';
  /** Within the form: coarse or fine; UNC, UNF, UNEF or special; NPT. */
  pitchSeries: 'coarse' | 'fine' | 'UNC' | 'UNF' | 'UNEF' | 'UNS' | 'NPT' | 'special';
  /** Nominal (major) diameter; of NPT, the outside diameter of the pipe. */
  diameter: number;
  pitch: number;
  hand: 'right' | 'left';
  /** Tolerance class, where it was written: `6g`, `2A`. */
  tolerance?: string;
  source: Source;
}

const HAND = /[\s-]+(LH|RH|left[\s-]?hand(?:ed)?|right[\s-]?hand(?:ed)?)$/iu;
const METRIC =
  /^M\s?(\d{1,3}(?:\.\d{1,2})?)(?:\s?x\s?(\d{1,2}(?:\.\d{1,3})?))?(?:\s?-?\s?(\d[a-z](?:\d[a-z])?))?(\s+special)?$/iu;
const INCH =
  /^(?:#|No\.?\s?)?(\d{1,2}(?:[\s-]\d{1,2}\/\d{1,2}|\/\d{1,2})?)\s?"?(?:\s?-\s?(\d{1,2}(?:\.5)?)(?!\d|\/))?(?:[\s-]*(UNC|UNF|UNEF|UNS|NPTF?|BSPT?|BSPP|BSW|BSF|G|R))?(?:[\s-]*([123][AB]))?$/iu;

/**
 * Reads `M12x1.75`, `M12` (its coarse pitch), `M12x1.25-6g`, `3/4-16 UNF`, `3/4 UNF`, `#10-32`, `1-1/8-12 UNF-2A`,
 * `1/4-18 NPT`, each with `LH` behind for a left-hand thread. A pitch that the tables do not list is refused unless it
 * is marked: `M12x1.6 special`, `1-14 UNS`.
 */
export const readThread = reader('a thread such as M12x1.75 or 3/4-16 UNF', (body, refuse): Read<Thread> => {
  const handed = HAND.exec(body);
  const left = handed !== null && /^l/iu.test(handed[1]!);
  const size = handed ? body.slice(0, handed.index) : body;
  const thread = /^m/iu.test(size) ? metric(size, refuse) : inch(size, refuse);
  if ('ok' in thread) return thread;
  return { ok: true, ...thread, text: thread.text + (left ? ' LH' : ''), hand: left ? 'left' : 'right' };
});

type Handless = Omit<Thread, 'hand'>;

function metric(size: string, refuse: Refuse): Handless | ReturnType<Refuse> {
  const match = METRIC.exec(size);
  if (!match) return refuse('write M, diameter, x and pitch in mm: M12x1.75');
  const d = String(Number(match[1]));
  const listed = metricPitches[d];
  const given = match[2] === undefined ? undefined : String(Number(match[2]));
  const special = match[4] !== undefined;
  if (!listed && !special)
    return refuse(`M${d} is not in ISO 261; if it is really that, write M${d}x${given ?? '…'} special`);
  const P = given ?? listed?.[0];
  if (P === undefined) return refuse('a special thread needs its pitch', size);
  if (listed && !listed.includes(P) && !special) {
    return refuse(
      `pitches listed for M${d} are ${listed.join(', ')}; if it is really ${P}, write M${d}x${P} special`,
      match[2],
    );
  }
  if (Number(P) === 0 || Number(P) > Number(d) / 3)
    return refuse('the pitch cannot be that coarse: the form is diameter x pitch, M12x1.75', match[2]);
  return {
    text: `M${d}x${P}${listed?.includes(P) ? '' : ' special'}`,
    series: 'metric',
    pitchSeries: listed?.[0] === P ? 'coarse' : listed?.includes(P) ? 'fine' : 'special',
    diameter: toSI(d, 'mm'),
    pitch: toSI(P, 'mm'),
    ...(match[3] !== undefined && { tolerance: match[3] }),
    source: metricSource,
  };
}

function inch(size: string, refuse: Refuse): Handless | ReturnType<Refuse> {
  const match = INCH.exec(size);
  if (!match) return refuse('write size, threads for each inch and series: 3/4-16 UNF');
  const mark = match[3]?.toUpperCase();
  if (mark !== undefined && /^(?:BS|G$|R$)/u.test(mark))
    return refuse(
      'Whitworth and British pipe threads are not read here: give diameter and pitch as measured in the words of the note',
      match[3],
    );
  if (mark?.startsWith('NPT')) return npt(match, refuse);
  const whole = match[1]!.replace(' ', '-');
  const gauge = `#${Number(whole)}`;
  const listedAs = (name: string) =>
    Object.values(unified).some(
      (sizes) => sizes[name] !== undefined && (match[2] === undefined || sizes[name] === match[2]),
    );
  const numbered = /^(?:#|No)/iu.test(size) || (/^\d+$/u.test(whole) && !listedAs(whole) && listedAs(gauge));
  const name = numbered ? gauge : whole;
  const n =
    match[2] ?? (mark === undefined || mark === 'UNS' ? undefined : unified[mark as keyof typeof unified]?.[name]);
  const series = Object.entries(unified).filter(([, sizes]) => sizes[name] !== undefined);
  if (series.length === 0)
    return refuse('no Unified thread has that size; the form is 3/4-16 UNF, or #10-32 for gauge numbers', match[1]);
  const known = series.map(([s, sizes]) => `${name}-${sizes[name]} ${s}`).join(', ');
  if (n === undefined) return refuse(`say which thread: ${known}`);
  const found = series.find(([, sizes]) => sizes[name] === n)?.[0];
  if (mark !== 'UNS' && (found === undefined || (mark !== undefined && mark !== found)))
    return refuse(`threads listed are ${known}; if it is really that, write ${name}-${n} UNS`);
  const pitchSeries = (found ?? 'UNS') as Thread['pitchSeries'];
  const D = numbered ? toSI(Number(whole) * 13 + 60, 'thou') : inches(name);
  if (perInch(n) > D / 3)
    return refuse('the thread cannot be that coarse: the form is size-threads for each inch', match[2]);
  return {
    text: `${name}-${n} ${pitchSeries}`,
    series: 'unified',
    pitchSeries,
    diameter: D,
    pitch: perInch(n),
    ...(match[4] !== undefined && { tolerance: match[4].toUpperCase() }),
    source: unifiedSource,
  };
}

function npt(match: RegExpExecArray, refuse: Refuse): Handless | ReturnType<Refuse> {
  const name = match[1]!.replace(' ', '-');
  const [n, D] = pipe[name] ?? [];
  if (n === undefined || D === undefined) return refuse(`sizes of NPT are ${Object.keys(pipe).join(', ')}`, match[1]);
  if (match[2] !== undefined && match[2] !== n)
    return refuse(`${name} NPT has ${n} threads for each inch: write ${name}-${n} NPT`, match[2]);
  return {
    text: `${name}-${n} ${match[3]!.toUpperCase()}`,
    series: 'pipe',
    pitchSeries: 'NPT',
    diameter: toSI(D, 'in'),
    pitch: perInch(n),
    source: pipeSource,
  };
}

/** Pitch in m of so many threads for each inch. */
function perInch(n: string): number {
  return new Decimal('0.0254').div(n).toNumber();
}

/** `1-1/8` in m. */
function inches(size: string): number {
  const [, whole = '0', over = '0', under = '1'] = /^(?:(\d+)(?:-|$))?(?:(\d+)\/(\d+))?$/u.exec(size) ?? [];
  return toSI(Number(whole) + Number(over) / Number(under), 'in');
}
