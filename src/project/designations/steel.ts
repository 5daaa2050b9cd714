import type { Source } from '../../calc/sheet.js';
import { near } from '../../platform/near.js';
import { readQuantity } from '../../units/quantity.js';
import { toSI } from '../../units/unit.js';
import { type Read, reader } from './reading.js';
import { type Grade, grades } from './steels.js';

/** A steel by its grade. Strengths in Pa, thicknesses in m. */
export interface Steel {
  text: string;
  /** `unknown`: nobody knows; it may be high-strength or press-hardened, which is a question for the certifier. */
  known: 'grade' | 'certificate' | 'unknown';
  /** The least that is guaranteed up to a thickness of 16 mm, or as typed in from a certificate. */
  yield?: number;
  tensile?: number;
  /** Greatest yield strength that the standard allows. */
  yieldMost?: number;
  /** Guaranteed strengths by thickness, `upTo` included. */
  ranges: readonly { upTo: number; yield: number; tensile: number }[];
  remark?: string;
  source?: Source;
}

const CERTIFICATE = /^(.{2,40}?)\s?\(\s?([\d.]{1,8})\s?\/\s?([\d.]{1,8})\s?(MPa|N\/mm2|N\/mm²|ksi)\s?\)$/u;

/**
 * Reads `S355` (also `S355J2`, `S355J2H`), `C350L0`, `DC01` and the other grades of the list; `unknown`; and any steel
 * with its own strengths: `4130 (435/670 MPa)` is yield and tensile strength as its certificate gives them.
 */
export const readSteel = reader('a steel such as S355, C350L0, unknown', (body, refuse): Read<Steel> => {
  if (/^unknown$/iu.test(body)) return { ok: true, text: 'unknown', known: 'unknown', ranges: [] };
  const certificate = CERTIFICATE.exec(body);
  if (certificate) {
    const [, name, low, high, unit] = certificate;
    const [yield_, tensile] = [stress(`${low} ${unit}`), stress(`${high} ${unit}`)];
    if (yield_ === undefined || tensile === undefined || yield_ <= 0)
      return refuse('write yield/tensile with their unit: 4130 (435/670 MPa)', `${low}/${high}`);
    if (yield_ > tensile)
      return refuse('the yield strength comes first and is the smaller: 4130 (435/670 MPa)', `${low}/${high}`);
    return {
      ok: true,
      text: `${name} (${low}/${high} ${unit})`,
      known: 'certificate',
      yield: yield_,
      tensile,
      ranges: [],
    };
  }
  const base = body.replaceAll(' ', '').toUpperCase();
  const grade = grades.find(
    (g) => base === g.name || (base.startsWith(g.name) && SUFFIX.test(base.slice(g.name.length))),
  );
  if (grade) return { ok: true, text: base, known: 'grade', ...strengths(grade) };
  const [close] = near(
    base,
    grades.map((g) => g.name),
  );
  return refuse(
    close === undefined
      ? 'write its strengths from the certificate behind it, as 4130 (435/670 MPa), or unknown'
      : `did you mean ${close}? Another steel is written with its strengths from the certificate, as 4130 (435/670 MPa), or unknown`,
  );
});

/** Thickest part that a car has of plate or section, m. */
const USUAL = 0.016;

/** Quality and delivery condition, which do not change the strengths. */
const SUFFIX = /^(?:JR|J0|J2|K2)?(?:\+?(?:N|AR|M))?H?$|^L0$|^L15$/u;

function strengths({
  rows,
  yieldMost,
  source,
  remark,
}: Grade): Pick<Steel, 'yield' | 'tensile' | 'yieldMost' | 'ranges' | 'source' | 'remark'> {
  const ranges = rows.map((r) => ({
    upTo: toSI(r.upTo, 'mm'),
    yield: toSI(r.yield, 'MPa'),
    tensile: toSI(r.tensile, 'MPa'),
  }));
  const usual = ranges.filter((_, i) => i === 0 || ranges[i - 1]!.upTo < USUAL);
  return {
    yield: Math.min(...usual.map((r) => r.yield)),
    tensile: Math.min(...usual.map((r) => r.tensile)),
    ranges,
    source,
    ...(yieldMost !== undefined && { yieldMost: toSI(yieldMost, 'MPa') }),
    ...(remark !== undefined && { remark }),
  };
}

function stress(text: string): number | undefined {
  const read = readQuantity(text, 'MPa');
  return read.ok ? read.quantity.si : undefined;
}
